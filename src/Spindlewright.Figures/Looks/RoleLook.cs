using System.Collections.Immutable;

namespace Spindlewright.Figures.Looks;

/// <summary>Shapes of points.</summary>
public enum Marker
{
    /// <summary>None.</summary>
    None,

    /// <summary>Filled circle.</summary>
    Circle,

    /// <summary>Open circle.</summary>
    Ring,

    /// <summary>Filled square.</summary>
    Square,

    /// <summary>Open square.</summary>
    OpenSquare,

    /// <summary>Filled diamond.</summary>
    Diamond,

    /// <summary>Open diamond.</summary>
    OpenDiamond,

    /// <summary>Upright cross.</summary>
    Plus,

    /// <summary>Diagonal cross.</summary>
    Cross,

    /// <summary>Filled triangle, point up: the hazard side, the most.</summary>
    TriangleUp,

    /// <summary>Open triangle, point down: the capability side, the least.</summary>
    TriangleDown,
}

/// <summary>How a role is drawn.</summary>
/// <param name="WeightPt">Width of its line in points.</param>
/// <param name="DashPt">Lengths of dash and gap in points; empty for an unbroken line.</param>
/// <param name="LineMarker">Shape set along its lines.</param>
/// <param name="PointMarker">Shape of its points.</param>
/// <param name="Shade">Its shade.</param>
/// <param name="BandOpacity">How dense its bands are filled, 0 to 1.</param>
/// <param name="BarOpacity">How dense its bars are filled, 0 to 1.</param>
public sealed record RoleLook(
    double WeightPt, ImmutableArray<double> DashPt, Marker LineMarker, Marker PointMarker, Shade Shade,
    double BandOpacity, double BarOpacity);
