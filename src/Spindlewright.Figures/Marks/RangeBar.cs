using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>A level bar from one value of x to another, as in a chart of speed ranges.</summary>
public sealed record RangeBar : Mark
{
    /// <summary>Makes a bar.</summary>
    /// <param name="role">What it stands for.</param>
    /// <param name="at">Its middle, in the unit of the Y axis; 1 for the first of <see cref="Axis.Names"/>.</param>
    /// <param name="from">Left end, in the unit of the X axis.</param>
    /// <param name="to">Right end, above the left one.</param>
    /// <param name="thickness">Its height, in the unit of the Y axis.</param>
    /// <param name="showEnds">True to print both ends beside it.</param>
    /// <param name="series">What it belongs to.</param>
    /// <param name="label">Written beside it.</param>
    /// <param name="side">Which side of a paired default it uses.</param>
    /// <param name="legend">Legend entry; the role's words unless given.</param>
    /// <exception cref="PartException">Not finite, or the ends out of order.</exception>
    public RangeBar(
        Role role, double at, double from, double to, double thickness = 0.34, bool showEnds = true,
        string? series = null, string? label = null, Side? side = null, string? legend = null)
        : base(role, side, series, label, legend)
    {
        At = Guard.Finite(at, Part, "position");
        From = Guard.Finite(from, Part, "left end");
        To = Guard.Within(to, from, double.MaxValue, Part, "right end", "the ends stand in order");
        Thickness = Guard.Positive(thickness, Part, "thickness");
        ShowEnds = showEnds;
    }

    /// <summary>Its middle, in the unit of the Y axis.</summary>
    public double At { get; }

    /// <summary>Left end, in the unit of the X axis.</summary>
    public double From { get; }

    /// <summary>Right end, in the unit of the X axis.</summary>
    public double To { get; }

    /// <summary>Its height, in the unit of the Y axis.</summary>
    public double Thickness { get; }

    /// <summary>True where both ends are printed beside it.</summary>
    public bool ShowEnds { get; }

    internal override IEnumerable<(double X, double Y)> Extent =>
        [(From, At - Thickness / 2), (To, At + Thickness / 2)];
}
