using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Words at a place in the drawing, such as a crossing that is worth naming.</summary>
public sealed record TextMark : Mark
{
    /// <summary>Makes a label.</summary>
    /// <param name="x">Where, in the unit of the X axis.</param>
    /// <param name="y">Where, in the unit of the Y axis.</param>
    /// <param name="label">The words.</param>
    /// <param name="role">What it remarks on.</param>
    /// <param name="series">What it belongs to.</param>
    /// <param name="side">Which side of a paired default it uses.</param>
    /// <param name="legend">Not drawn: words have no legend entry.</param>
    /// <exception cref="PartException">Not finite, or without words.</exception>
    public TextMark(
        double x, double y, string label, Role role = Role.Annotation, string? series = null, Side? side = null,
        string? legend = null)
        : base(role, side, series, Check.Words(label, "text", "label"), legend)
    {
        X = Guard.Finite(x, Part, "x");
        Y = Guard.Finite(y, Part, "y");
    }

    /// <summary>Where, in the unit of the X axis.</summary>
    public double X { get; }

    /// <summary>Where, in the unit of the Y axis.</summary>
    public double Y { get; }

    internal override IEnumerable<(double X, double Y)> Extent => [(X, Y)];
}
