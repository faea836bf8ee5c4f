using CsCheck;
using MathNet.Numerics.Statistics;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Tests.Sampling;

public sealed class SummaryTests
{
    /// <summary>
    /// Clopper–Pearson intervals at 95 %: no hit in 10 has the upper end 1 − 0.025^(1/10) = 0.3085 by its definition; 1 in 10
    /// is 0.0025 to 0.4450 in tables of binomial intervals (from memory).
    /// </summary>
    [Theory]
    [InlineData(0, 0, 0.308497)]
    [InlineData(1, 0.002529, 0.445016)]
    [InlineData(10, 0.691503, 1)]
    public void The_doubt_of_a_share_is_the_exact_binomial_interval(int hits, double least, double most)
    {
        double[] results = [.. Enumerable.Range(0, 10).Select(i => i < hits ? 2.0 : 0)];
        var share = new SampleSummary(results).Exceeding(1);
        Assert.Equal(hits / 10.0, share.Estimate);
        Assert.Equal(least, share.Doubt.Least, 1e-6);
        Assert.Equal(most, share.Doubt.Most, 1e-6);
        Assert.Equal(1 - share.Estimate, new SampleSummary(results).AtMost(1).Estimate, 1e-12);
    }

    /// <summary>Conover, Practical Nonparametric Statistics, table of ranks for the median of 10: 2nd and 9th (from memory).</summary>
    [Fact]
    public void The_doubt_of_a_median_of_ten_reaches_from_the_second_to_the_ninth()
    {
        var median = new SampleSummary([3, 1, 4, 10, 5, 9, 2, 6, 8, 7]).Quantile(0.5);
        Assert.Equal((5.5, new Interval(2, 9)), (median.Estimate, median.Doubt));
    }

    [Fact]
    public void The_doubt_of_a_quantile_covers_it_as_often_as_it_says()
    {
        var truth = new Distribution.Lognormal(60, 1.2).Quantile(0.9);
        var inputs = new UncertainInputs([new("speed", new Distribution.Lognormal(60, 1.2))]);
        var covered = Enumerable.Range(0, 1000).Count(seed => new SampleSummary(
            Sampled.Run(inputs, new SamplingPlan(200, (ulong)seed, SamplingDesign.Plain), First).Results)
            .Quantile(0.9).Doubt.Contains(truth));
        // At least 950 in the mean; 930 is three standard deviations below.
        Assert.InRange(covered, 930, 1000);
    }

    [Fact]
    public void What_is_never_reached_is_counted_and_stands_above_every_number()
    {
        double[] results = [double.PositiveInfinity, 40, 60, double.PositiveInfinity, 50];
        var summary = new SampleSummary(results);
        Assert.Equal(0.6, summary.Reached().Estimate);
        Assert.Equal(60, summary.Quantile(0.5).Estimate);
        Assert.Equal(double.PositiveInfinity, summary.Quantile(0.7).Estimate);
        Assert.Equal(double.PositiveInfinity, summary.Middle().Most);
    }

    /// <summary>MathNet.Numerics has the same definition for finite numbers.</summary>
    [Fact]
    public void Quantiles_are_those_of_a_reference_library() =>
        Gen.Select(Gen.Double[-100, 100].Array[1, 40], Gen.Double[0.001, 0.999]).Sample((results, share) =>
            Assert.Equal(
                results.QuantileCustom(share, QuantileDefinition.R8), new SampleSummary(results).Quantile(share).Estimate, 1e-7));

    [Fact]
    public void Convergence_doubles_the_samples_up_to_all_of_them_and_narrows_its_error()
    {
        var inputs = new UncertainInputs([new("speed", new Distribution.Normal(60, 5))]);
        var results = Sampled.Run(inputs, new SamplingPlan(10_000, 4, SamplingDesign.Plain), First).Results;
        var steps = new SampleSummary(results).Convergence();
        Assert.Equal([64, 128, 256, 512, 1024, 2048, 4096, 8192, 10_000], steps.Select(step => step.Count));
        Assert.Equal(60, steps[^1].Median, 0.3);
        Assert.Equal(2 * 1.959964 * 5, steps[^1].Range.Width, 0.5);
    }

    /// <summary>
    /// Ishigami, Homma (1990), f = sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1 over ±π. Shares of variance in closed form:
    /// 0.3139, 0.4424, 0 of first order, 0.5576, 0.4424, 0.2437 total, as printed in Saltelli and others, Global Sensitivity
    /// Analysis: The Primer (2008), from memory; computed here from the closed form as well.
    /// </summary>
    [Fact]
    public void The_shares_of_the_Ishigami_function_are_the_published_ones()
    {
        const double A = 7, B = 0.1;
        var pi4 = Math.Pow(Math.PI, 4);
        var first = 0.5 * Math.Pow(1 + B * pi4 / 5, 2);
        var second = A * A / 8;
        var both = B * B * pi4 * pi4 * (1.0 / 18 - 1.0 / 50);
        var variance = first + second + both;
        (string Name, double First, double Total, double Printed, double PrintedTotal)[] known =
        [
            ("x1", first / variance, (first + both) / variance, 0.3139, 0.5576),
            ("x2", second / variance, second / variance, 0.4424, 0.4424),
            ("x3", 0, both / variance, 0, 0.2437),
        ];
        var angle = new Distribution.Uniform(-Math.PI, Math.PI);
        var inputs = new UncertainInputs([new("x1", angle), new("x2", angle), new("x3", angle)]);
        var shares = Sampled.Shares(inputs, new SamplingPlan(65_536, 12, SamplingDesign.Plain), Ishigami);
        Assert.Equal(["x2", "x1", "x3"], shares.Select(share => share.Input));
        foreach (var (name, order, total, printed, printedTotal) in known)
        {
            Assert.Equal(printed, order, 5e-5);
            Assert.Equal(printedTotal, total, 5e-5);
            var found = shares.Single(share => share.Input == name);
            Assert.Equal(order, found.FirstOrder, 4 * found.FirstOrderError);
            Assert.Equal(total, found.Total, 4 * found.TotalError);
            Assert.InRange(found.FirstOrderError, 1e-6, 0.01);
            Assert.InRange(found.TotalError, 1e-6, 0.01);
        }
    }

    [Fact]
    public void Standard_errors_of_shares_are_as_large_as_the_scatter_over_seeds()
    {
        var angle = new Distribution.Uniform(-Math.PI, Math.PI);
        var inputs = new UncertainInputs([new("x1", angle), new("x2", angle), new("x3", angle)]);
        var runs = Enumerable.Range(0, 40).Select(seed => Sampled.Shares(
            inputs, new SamplingPlan(2048, (ulong)seed, SamplingDesign.Plain), Ishigami).Single(share => share.Input == "x1")).ToList();
        // A standard deviation from 40 runs is known to a tenth or so; the errors themselves come from 16 parts.
        Assert.Equal(1, runs.Average(run => run.FirstOrderError) / runs.Select(run => run.FirstOrder).StandardDeviation(), 0.35);
        Assert.Equal(1, runs.Average(run => run.TotalError) / runs.Select(run => run.Total).StandardDeviation(), 0.35);
    }

    [Fact]
    public void Ranks_see_a_curved_rise_whole_and_what_does_not_matter_as_nothing()
    {
        var inputs = new UncertainInputs([new("idle", new Distribution.Uniform(0, 1)), new("speed", new Distribution.Normal(0, 1))]);
        var run = Sampled.Run(inputs, new SamplingPlan(5000, 1), (columns, results) =>
        {
            for (var i = 0; i < results.Length; i++)
                results[i] = -Math.Exp(columns[1].Span[i]);
        });
        var ranks = Sensitivity.ByRank(run);
        Assert.Equal(("speed", -1.0), (ranks[0].Input, Math.Round(ranks[0].Coefficient, 12)));
        Assert.Equal(0, ranks[1].Coefficient, 0.06);
    }

    [Fact]
    public void Shares_of_variance_refuse_what_they_have_no_meaning_for()
    {
        UncertainInput[] two = [new("a", new Distribution.Uniform(0, 1)), new("b", new Distribution.Uniform(0, 1))];
        string Refusal(Action make) => Assert.Throws<PartException>(make).Message;
        Assert.Contains("use the rank correlation", Refusal(() => Sampled.Shares(
            new UncertainInputs(two, [new("a", "b", 0.5)]), new SamplingPlan(1000, 1), First)));
        Assert.Contains("accepted: 256 to", Refusal(
            () => Sampled.Shares(new UncertainInputs(two), new SamplingPlan(100, 1), First)));
        Assert.Contains("may never be reached", Refusal(() => Sampled.Shares(
            new UncertainInputs(two), new SamplingPlan(1000, 1), (_, results) => results.Fill(double.PositiveInfinity))));
    }

    private static void First(ReadOnlySpan<ReadOnlyMemory<double>> columns, Span<double> results) => columns[0].Span.CopyTo(results);

    private static void Ishigami(ReadOnlySpan<ReadOnlyMemory<double>> columns, Span<double> results)
    {
        for (var i = 0; i < results.Length; i++)
        {
            var (x, y, z) = (columns[0].Span[i], columns[1].Span[i], columns[2].Span[i]);
            results[i] = Math.Sin(x) + 7 * Math.Pow(Math.Sin(y), 2) + 0.1 * Math.Pow(z, 4) * Math.Sin(x);
        }
    }
}
