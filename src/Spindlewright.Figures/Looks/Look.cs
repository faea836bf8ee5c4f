using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Looks;

/// <summary>Letters and their sizes.</summary>
public sealed record Lettering
{
    /// <summary>Type on pages and drawings: faces found on every system, of one set of widths.</summary>
    public string Stack { get; init; } = "Arimo, 'Liberation Sans', Arial, Helvetica, sans-serif";

    /// <summary>Type of code and plain text.</summary>
    public string MonoStack { get; init; } = "'Liberation Mono', 'DejaVu Sans Mono', Menlo, Consolas, monospace";

    /// <summary>Title of a figure or table, points.</summary>
    public double TitlePt { get; init; } = 11.5;

    /// <summary>Headings of axes, legend and labels in a drawing, points.</summary>
    public double LabelPt { get; init; } = 8.5;

    /// <summary>Numbers at ticks, points.</summary>
    public double TickPt { get; init; } = 8;

    /// <summary>Notes and sources, points.</summary>
    public double SmallPt { get; init; } = 7.2;

    /// <summary>Text of a page, points.</summary>
    public double BodyPt { get; init; } = 11;
}

/// <summary>Distances and hairline weights of a drawing.</summary>
public sealed record Spacing
{
    /// <summary>Between rows and parts, mm.</summary>
    public double GapMm { get; init; } = 2;

    /// <summary>Length of a legend's sample, mm.</summary>
    public double SampleMm { get; init; } = 12;

    /// <summary>Length of a major tick, mm; a minor one is half as long.</summary>
    public double TickMm { get; init; } = 1.6;

    /// <summary>Half the size of a point, mm.</summary>
    public double MarkerMm { get; init; } = 0.95;

    /// <summary>Between markers along a line, mm.</summary>
    public double MarkerPitchMm { get; init; } = 17;

    /// <summary>Weight of grid lines, points.</summary>
    public double GridPt { get; init; } = 0.4;

    /// <summary>Weight of axes, points.</summary>
    public double AxisPt { get; init; } = 0.7;
}

/// <summary>The look of everything drawn, as data: SVG, interactive charts and CSS read it alike.</summary>
public sealed record Look
{
    /// <summary>Millimetres in a point.</summary>
    public const double MmPerPt = 25.4 / 72;

    /// <summary>Pixels of CSS in a point.</summary>
    public const double PxPerPt = 96.0 / 72;

    /// <summary>The look of the house.</summary>
    public static Look House { get; } = new();

    /// <summary>Letters and their sizes.</summary>
    public Lettering Letters { get; init; } = new();

    /// <summary>Distances and hairlines.</summary>
    public Spacing Space { get; init; } = new();

    /// <summary>Shades.</summary>
    public Palette Shades { get; init; } = new();

    /// <summary>How a role is drawn.</summary>
    /// <param name="role">The role.</param>
    /// <param name="side">The side of a paired default, told by triangles: up the most, down the least.</param>
    /// <returns>Its look.</returns>
    /// <remarks>
    /// Every pair of roles differs in dash, in weight by 0.4 pt or more, or in marker. The bound is unbroken and
    /// heavier than any other.
    /// </remarks>
    public RoleLook For(Role role, Side? side = null)
    {
        var look = Plain(role);
        return side switch
        {
            Side.Capability => look with { LineMarker = Marker.TriangleDown, PointMarker = Marker.TriangleDown },
            Side.Hazard => look with { LineMarker = Marker.TriangleUp, PointMarker = Marker.TriangleUp },
            _ => look,
        };
    }

    private RoleLook Plain(Role role) => role switch
    {
        Role.Bound => Line(2.4, [], Marker.Square, Shades.Ink, bar: 1),
        Role.AsModelled => Line(1.1, [], Marker.Ring, Shades.Blue, bar: 0.75),
        Role.IdealBoost => Line(1.1, [6, 2.4], Marker.OpenDiamond, Shades.Blue, bar: 0.2),
        Role.CurrentLimited => Line(1, [7, 1.8, 1, 1.8], Marker.Cross, Shades.Plum, bar: 0.1),
        Role.Continuous => Line(1.3, [13, 2.2], Marker.Ring, Shades.Blue, bar: 0.55),
        Role.ShortTime => Line(1.3, [3.4, 1.8], Marker.OpenSquare, Shades.Blue, bar: 0.25),
        Role.LockedRotor => Line(1.3, [9, 2, 3, 2], Marker.Square, Shades.Blue, bar: 0.1),
        Role.Demand => Line(1.6, [4.6, 1.2], Marker.Cross, Shades.Plum, bar: 0.5),
        Role.Limit => Line(1.5, [11, 2, 1.5, 2, 1.5, 2], Marker.Plus, Shades.Ink, bar: 0.08),
        Role.Hand => Line(1.4, [2.2, 1.4, 2.2, 4.4], Marker.Diamond, Shades.Plum, bar: 0.3),
        Role.SetCurve => Line(1.7, [], Marker.Diamond, Shades.Blue, bar: 0.6),
        Role.AsFound => Line(1.1, [1.1, 2.2], Marker.OpenSquare, Shades.Muted, bar: 0),
        Role.Measured => Line(0.6, [], Marker.Circle, Shades.Ink, bar: 0.4) with { LineMarker = Marker.Circle },
        Role.Experience => Line(0.9, [2.4, 2.4], Marker.OpenDiamond, Shades.Plum, bar: 0.2)
            with { LineMarker = Marker.OpenDiamond },
        Role.Handbook => Line(0.8, [9, 4.5], Marker.Plus, Shades.Muted, bar: 0.25),
        Role.Uncertainty => Line(0.5, [1, 1], Marker.Ring, Shades.Blue, bar: 0.15),
        Role.Annotation => Line(0.4, [0.6, 1.4], Marker.Ring, Shades.Muted, bar: 0.1),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "no such role"),
    };

    private static RoleLook Line(
        double weightPt, ImmutableArray<double> dashPt, Marker point, Shade shade, double bar) =>
        new(weightPt, dashPt, Marker.None, point, shade, 0.16, bar);
}
