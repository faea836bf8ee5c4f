using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>The area between a lower and an upper curve.</summary>
public sealed record Band : Mark
{
    /// <summary>Makes a band.</summary>
    /// <param name="role">What it stands for.</param>
    /// <param name="xs">Abscissas, finite and rising, in the unit of the X axis.</param>
    /// <param name="lower">Lower edge, one for each x; NaN breaks the band.</param>
    /// <param name="upper">Upper edge, never below the lower.</param>
    /// <param name="series">What it belongs to.</param>
    /// <param name="label">Written beside it.</param>
    /// <param name="side">Which side of a paired default it uses.</param>
    /// <param name="legend">Legend entry; the role's words unless given.</param>
    /// <exception cref="PartException">Empty, of unequal length, not rising, or upside down.</exception>
    public Band(
        Role role, ImmutableArray<double> xs, ImmutableArray<double> lower, ImmutableArray<double> upper,
        string? series = null, string? label = null, Side? side = null, string? legend = null)
        : base(role, side, series, label, legend)
    {
        Xs = Check.AllFinite(xs, Part, "x");
        Lower = Check.WithGaps(lower, xs.Length, Part, "lower edge");
        Upper = Check.WithGaps(upper, xs.Length, Part, "upper edge");
        for (var i = 0; i < xs.Length; i++)
        {
            if (i > 0 && xs[i] <= xs[i - 1])
                throw new PartException(Part, $"x [{i}]", "not above the one before", "abscissas that rise");
            if (upper[i] < lower[i])
                throw new PartException(
                    Part, $"upper edge [{i}]", "below the lower edge", "an upper edge on or above it");
        }
    }

    /// <summary>Abscissas in the unit of the X axis, rising.</summary>
    public ImmutableArray<double> Xs { get; }

    /// <summary>Lower edge in the unit of the Y axis; NaN where the band is broken.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Lower { get; }

    /// <summary>Upper edge in the unit of the Y axis; NaN where the band is broken.</summary>
    [JsonConverter(typeof(GapArrayConverter))]
    public ImmutableArray<double> Upper { get; }

    internal override IEnumerable<(double X, double Y)> Extent => Xs.Zip(Lower).Concat(Xs.Zip(Upper));
}
