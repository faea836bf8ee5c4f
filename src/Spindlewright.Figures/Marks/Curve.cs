using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>A line through points in order; broken where y is NaN.</summary>
public sealed record Curve : Mark
{
    /// <summary>Makes a curve.</summary>
    /// <param name="role">What it stands for.</param>
    /// <param name="xs">Abscissas, finite, in the unit of the X axis.</param>
    /// <param name="ys">Ordinates, one for each x, in the unit of the Y axis; NaN breaks the line.</param>
    /// <param name="series">What it belongs to.</param>
    /// <param name="label">Written at its end.</param>
    /// <param name="side">Which side of a paired default it uses.</param>
    /// <param name="legend">Legend entry; the role's words unless given.</param>
    /// <exception cref="PartException">Empty, of unequal length, or not finite.</exception>
    public Curve(
        Role role, ImmutableArray<double> xs, ImmutableArray<double> ys, string? series = null, string? label = null,
        Side? side = null, string? legend = null)
        : base(role, side, series, label, legend)
    {
        Xs = Check.AllFinite(xs, Part, "x");
        Ys = Check.WithGaps(ys, xs.Length, Part, "y");
    }

    /// <summary>Abscissas in the unit of the X axis.</summary>
    public ImmutableArray<double> Xs { get; }

    /// <summary>Ordinates in the unit of the Y axis; NaN where the line is broken.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Ys { get; }

    internal override IEnumerable<(double X, double Y)> Extent => Xs.Zip(Ys);
}
