using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Points, not joined, with an upright interval at each where one is known.</summary>
public sealed record Points : Mark
{
    /// <summary>Makes points.</summary>
    /// <param name="role">What they stand for.</param>
    /// <param name="xs">Abscissas, finite, in the unit of the X axis.</param>
    /// <param name="ys">Ordinates, one for each x; NaN leaves a point out.</param>
    /// <param name="series">What they belong to.</param>
    /// <param name="label">Written at the last point.</param>
    /// <param name="side">Which side of a paired default they use.</param>
    /// <param name="legend">Legend entry; the role's words unless given.</param>
    /// <param name="lower">Lower ends of the intervals; none where unknown.</param>
    /// <param name="upper">Upper ends of the intervals; none where unknown.</param>
    /// <exception cref="PartException">Empty, of unequal length, not finite, or one end without the other.</exception>
    public Points(
        Role role, ImmutableArray<double> xs, ImmutableArray<double> ys, string? series = null, string? label = null,
        Side? side = null, string? legend = null, ImmutableArray<double> lower = default,
        ImmutableArray<double> upper = default)
        : base(role, side, series, label, legend)
    {
        Xs = Check.AllFinite(xs, Part, "x");
        Ys = Check.WithGaps(ys, xs.Length, Part, "y");
        (Lower, Upper) = (Check.OrEmpty(lower), Check.OrEmpty(upper));
        if (Lower.Length == 0 && Upper.Length == 0)
            return;
        Check.WithGaps(Lower, xs.Length, Part, "lower end");
        Check.WithGaps(Upper, xs.Length, Part, "upper end");
    }

    /// <summary>Abscissas in the unit of the X axis.</summary>
    public ImmutableArray<double> Xs { get; }

    /// <summary>Ordinates in the unit of the Y axis; NaN where a point is left out.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Ys { get; }

    /// <summary>Lower ends of the intervals; empty where unknown.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Lower { get; }

    /// <summary>Upper ends of the intervals; empty where unknown.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Upper { get; }

    internal override IEnumerable<(double X, double Y)> Extent =>
        Xs.Zip(Ys).Concat(Xs.Zip(Lower)).Concat(Xs.Zip(Upper));
}
