using MathNet.Numerics.Distributions;

namespace Spindlewright.Foundations.Sampling;

/// <summary>A share of samples, with the doubt that their number leaves.</summary>
/// <param name="Estimate">Share of the samples, 0 to 1.</param>
/// <param name="Doubt">Interval of the share at the level asked for.</param>
public readonly record struct SampledShare(double Estimate, Interval Doubt);

/// <summary>A quantile of samples, with the doubt that their number leaves.</summary>
/// <param name="Share">Which, such as 0.975.</param>
/// <param name="Estimate">The value; infinite for "never reached".</param>
/// <param name="Doubt">Interval of the value at the level asked for; an end may be infinite.</param>
public readonly record struct SampledQuantile(double Share, double Estimate, Interval Doubt);

/// <summary>What is known of a result after so many samples.</summary>
/// <param name="Count">How many.</param>
/// <param name="Median">Their median.</param>
/// <param name="Range">The middle 95 %.</param>
public readonly record struct SampledStep(int Count, double Median, Interval Range);

/// <summary>The results of a run, as a reader wants them: how likely, between what, and how sure after so many samples.</summary>
/// <remarks>
/// The doubt is that of independent samples. A Latin hypercube leaves no more than that for what rises or falls with
/// each input, and mostly less.
/// </remarks>
public sealed class SampleSummary
{
    private const string Part = "summary of samples";
    private readonly double[] inOrder;
    private readonly double[] rising;

    /// <summary>Summarises results.</summary>
    /// <param name="results">One or more; positive infinity stands for "never reached".</param>
    /// <exception cref="PartException">There are none, or one is NaN.</exception>
    public SampleSummary(ReadOnlySpan<double> results)
    {
        if (results.Length == 0) throw new PartException(Part, "number of results", "0", "1 or more");
        foreach (var result in results)
            if (double.IsNaN(result)) throw new PartException(Part, "result", "NaN", "numbers");
        inOrder = results.ToArray();
        rising = results.ToArray();
        Array.Sort(rising);
    }

    /// <summary>How many results.</summary>
    public int Count => rising.Length;

    /// <summary>Share of the results that were reached at all.</summary>
    /// <param name="level">Level of the doubt, above 0 and below 1.</param>
    /// <returns>The share that is finite.</returns>
    public SampledShare Reached(double level = 0.95) => Share(rising.Count(double.IsFinite), level);

    /// <summary>Share of the results above a limit.</summary>
    /// <param name="limit">The limit; not NaN.</param>
    /// <param name="level">Level of the doubt, above 0 and below 1.</param>
    /// <returns>The share, with the interval of Clopper and Pearson.</returns>
    /// <remarks>Clopper, Pearson, Biometrika 26(4):404–413 (1934): exact, never narrower than the level.</remarks>
    public SampledShare Exceeding(double limit, double level = 0.95) => Share(rising.Count(result => result > limit), level);

    /// <summary>Share of the results at or below a limit.</summary>
    /// <inheritdoc cref="Exceeding"/>
    public SampledShare AtMost(double limit, double level = 0.95) => Share(rising.Count(result => result <= limit), level);

    /// <summary>The value below which a share of the results lies.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <param name="level">Level of the doubt, above 0 and below 1.</param>
    /// <returns>The value, with an interval between two of the results.</returns>
    /// <remarks>
    /// Estimate: median-unbiased (definition 8 of Hyndman, Fan, The American Statistician 50(4):361–365, 1996). Interval: the
    /// results whose ranks enclose the share by the binomial law, whatever the distribution. Where there are too few results
    /// to enclose it, an end is infinite.
    /// </remarks>
    public SampledQuantile Quantile(double share, double level = 0.95)
    {
        CheckedShare(share, "share");
        CheckedShare(level, "level");
        var tail = (1 - level) / 2;
        // Result number k is below the quantile with the binomial chance of k or more results below it.
        var low = LargestRank(share, tail);
        var high = Count + 1 - LargestRank(1 - share, tail);
        return new(share, Estimate(rising, share), new(
            low < 1 ? double.NegativeInfinity : rising[low - 1],
            high > Count ? double.PositiveInfinity : rising[high - 1]));
    }

    /// <summary>The middle part of the results.</summary>
    /// <param name="level">Its share, above 0 and below 1; 0.95 leaves out 2.5 % on each side.</param>
    /// <returns>From one quantile to the other; an end is infinite where "never reached" is among them.</returns>
    public Interval Middle(double level = 0.95)
    {
        var tail = (1 - CheckedShare(level, "level")) / 2;
        return new(Estimate(rising, tail), Estimate(rising, 1 - tail));
    }

    /// <summary>The interval of a probability that one more result would lie inside, whatever the number of samples.</summary>
    /// <param name="level">Above 0 and below 1.</param>
    /// <returns>Between two results: ranks (n + 1)(1 − level)/2 from either end, rounded outwards.</returns>
    /// <remarks>One more result falls in each of the n + 1 gaps between results with the same chance.</remarks>
    public Interval Prediction(double level = 0.95)
    {
        var rank = (int)Math.Floor((Count + 1) * (1 - CheckedShare(level, "level")) / 2);
        return rank < 1
            ? new(double.NegativeInfinity, double.PositiveInfinity)
            : new(rising[rank - 1], rising[^rank]);
    }

    /// <summary>Median and middle 95 % after 2ᵏ samples and after all, in the order in which they were drawn.</summary>
    /// <param name="first">Number of samples of the first step, 8 or more.</param>
    /// <returns>One step for each doubling.</returns>
    public IReadOnlyList<SampledStep> Convergence(int first = 64)
    {
        Guard.Within(first, 8, int.MaxValue / 2, Part, "samples of the first step");
        var steps = new List<SampledStep>();
        for (long count = first; ; count *= 2)
        {
            var length = (int)Math.Min(count, Count);
            var part = inOrder[..length];
            Array.Sort(part);
            steps.Add(new(length, Estimate(part, 0.5), new(Estimate(part, 0.025), Estimate(part, 0.975))));
            if (length == Count) return steps;
        }
    }

    /// <summary>Chance by share and number of results, exact, without a table.</summary>
    private int LargestRank(double share, double tail)
    {
        // The largest k for which fewer than k results below the quantile is no likelier than the tail.
        var (low, high) = (0, Count);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (Binomial.CDF(share, Count, middle - 1) <= tail) low = middle;
            else high = middle - 1;
        }

        return low;
    }

    private SampledShare Share(int hits, double level)
    {
        var tail = (1 - CheckedShare(level, "level")) / 2;
        return new((double)hits / Count, new(
            hits == 0 ? 0 : Beta.InvCDF(hits, Count - hits + 1, tail),
            hits == Count ? 1 : Beta.InvCDF(hits + 1, Count - hits, 1 - tail)));
    }

    /// <summary>Definition 8, which MathNet has too, but not where results are infinite.</summary>
    private static double Estimate(double[] rising, double share)
    {
        const double Third = 1.0 / 3, Rounding = 1e-9;
        var place = Math.Clamp((rising.Length + Third) * share + Third, 1, rising.Length);
        var before = (int)(place + Rounding);
        var part = Math.Max(0, place - before);
        var low = rising[before - 1];
        // From the last result reached to "never reached" is never reached.
        return part <= Rounding || double.IsInfinity(low) ? low : low + part * (rising[before] - low);
    }

    private static double CheckedShare(double share, string what) => share is > 0 and < 1
        ? share
        : throw new PartException(Part, what, FormattableString.Invariant($"{share:G6}"), "above 0 and below 1");
}
