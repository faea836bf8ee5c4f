using Spindlewright.Foundations;

namespace Spindlewright.Cutting;

/// <summary>Tool life by Taylor's law, as a ratio: what slowing down gives.</summary>
/// <remarks>v Tⁿ = C, so T/T0 = (v0/v)^(1/n). Only ratios are given: C depends on far more than a table knows, and n itself is
/// wide, so that the answer is a span. Source of n: tool-materials.csv. Holds for the speed-worn edge; a drill that rubs at too
/// little feed, chips or wanders is not in it.</remarks>
public static class ToolLife
{
    private const string Part = "tool life";

    /// <summary>Life over life at the speed compared with.</summary>
    /// <param name="speedOverReference">Speed over that speed, above 0.</param>
    /// <param name="exponent">n, 0.02 to 1.</param>
    /// <returns>(1/ratio)^(1/n).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double Ratio(double speedOverReference, double exponent) => Math.Pow(
        1 / Guard.Positive(speedOverReference, Part, "speed over the speed compared with"),
        1 / Guard.Within(exponent, 0.02, 1, Part, "exponent n"));

    /// <summary>Span of life over life for a range of the exponent.</summary>
    /// <param name="speedOverReference">Speed over the speed compared with, above 0.</param>
    /// <param name="exponent">Range of n.</param>
    /// <returns>Least to most.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Interval Range(double speedOverReference, Interval exponent)
    {
        var (one, other) = (Ratio(speedOverReference, exponent.Least), Ratio(speedOverReference, exponent.Most));
        return new(Math.Min(one, other), Math.Max(one, other));
    }

    /// <summary>Exponent that two readings of speed and life give.</summary>
    /// <param name="speedOverReference">Speed of the second over that of the first, above 0 and not 1.</param>
    /// <param name="lifeOverReference">Life of the second over that of the first, above 0 and not 1.</param>
    /// <returns>n = −ln(v/v0)/ln(T/T0).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double Exponent(double speedOverReference, double lifeOverReference) =>
        -Math.Log(Guard.Positive(speedOverReference, Part, "speed over the speed compared with"))
        / Math.Log(Guard.Positive(lifeOverReference, Part, "life over the life compared with"));
}
