using MathNet.Numerics.Statistics;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Tests.Sampling;

public sealed class SampledRunTests
{
    private static UncertainInputs Three { get; } = new(
    [
        new("a", new Distribution.Normal(10, 1)),
        new("b", new Distribution.Lognormal(2, 1.3)),
        new("c", new Distribution.Uniform(0, 1)),
    ]);

    [Theory]
    [InlineData(SamplingDesign.Plain)]
    [InlineData(SamplingDesign.LatinHypercube)]
    public void The_same_seed_gives_the_same_bytes_on_one_core_or_many(SamplingDesign design)
    {
        var plan = new SamplingPlan(50_001, 7, design);
        var one = Sampled.Run(Three, plan, Sum, cores: 1);
        var many = Sampled.Run(Three, plan, Sum);
        var other = Sampled.Run(Three, plan with { Seed = 8 }, Sum);
        Assert.True(one.Results.SequenceEqual(many.Results));
        Assert.False(one.Results.SequenceEqual(other.Results));
        Assert.True(one.Draws("b").SequenceEqual(many.Draws("b")));
    }

    [Fact]
    public void A_Latin_hypercube_draws_once_from_each_share_of_each_input()
    {
        var run = Sampled.Run(Three, new SamplingPlan(1000, 3), Sum);
        foreach (var (name, distribution) in Three.Inputs)
        {
            var shares = run.Draws(name).ToArray().Select(draw => (int)(distribution.ShareBelow(draw) * 1000 + 1e-7)).Order();
            Assert.Equal(Enumerable.Range(0, 1000), shares);
        }
    }

    /// <summary>
    /// McKay, Beckman, Conover (1979), theorem: for a result that is monotone in each input the variance of an estimate from a
    /// Latin hypercube is no larger than from plain samples.
    /// </summary>
    [Fact]
    public void A_Latin_hypercube_beats_plain_samples_in_the_variance_of_a_threshold()
    {
        // The threshold speed of a motor whose torque goes with (volts − drop)² and meets a hand: monotone in each input.
        var inputs = new UncertainInputs(
        [
            new("volts", new Distribution.Normal(230, 8)),
            new("drop", new Distribution.Triangular(3, 6, 12)),
            new("hand", new Distribution.Truncated(new Distribution.Normal(12, 3), 1, 40)),
        ]);
        double Variance(SamplingDesign design, double share) => Enumerable.Range(0, 200)
            .Select(seed => new SampleSummary(
                Sampled.Run(inputs, new SamplingPlan(256, (ulong)seed, design), Threshold).Results).Quantile(share).Estimate)
            .Variance();
        foreach (var share in new[] { 0.05, 0.5, 0.95 })
        {
            var (plain, hypercube) = (Variance(SamplingDesign.Plain, share), Variance(SamplingDesign.LatinHypercube, share));
            Assert.True(hypercube < 0.8 * plain, $"{share}: {hypercube} against {plain}");
        }

        static void Threshold(ReadOnlySpan<ReadOnlyMemory<double>> columns, Span<double> results)
        {
            var volts = columns[0].Span;
            var drop = columns[1].Span;
            var hand = columns[2].Span;
            for (var i = 0; i < results.Length; i++)
                results[i] = 100 * Math.Sqrt(hand[i]) * 60 / (volts[i] - 3 * drop[i]);
        }
    }

    [Fact]
    public void Correlated_inputs_keep_their_distributions_and_have_the_rank_correlation_of_their_coefficient()
    {
        // Spearman's coefficient of a normal pair with coefficient r is (6/π) asin(r/2): Pearson (1907), from memory.
        var inputs = new UncertainInputs(Three.Inputs, [new("a", "b", 0.7), new("c", "b", -0.4)]);
        var run = Sampled.Run(inputs, new SamplingPlan(200_000, 11), Sum);
        double Ranked(string first, string second) =>
            Correlation.Spearman(run.Draws(first).ToArray(), run.Draws(second).ToArray());
        // Four standard errors, 1/√n.
        const double Error = 0.009;
        Assert.Equal(6 / Math.PI * Math.Asin(0.35), Ranked("a", "b"), Error);
        Assert.Equal(-6 / Math.PI * Math.Asin(0.2), Ranked("b", "c"), Error);
        Assert.Equal(0, Ranked("a", "c"), Error);
        Assert.Equal(2 * Math.Pow(1.3, 1.959963984540), new SampleSummary(run.Draws("b")).Quantile(0.975).Estimate, 0.02);
    }

    [Fact]
    public void Progress_rises_to_the_end()
    {
        var told = new List<double>();
        Sampled.Run(Three, new SamplingPlan(40_000, 1), Sum, new Told(told), cores: 1);
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.True(told.Count >= 9);
    }

    [Fact]
    public void A_run_that_is_cancelled_hands_out_nothing()
    {
        using var source = new CancellationTokenSource();
        var blocks = 0;
        Assert.ThrowsAny<OperationCanceledException>(() => SampledRun.Of(
            Three, new SamplingPlan(10_000_000, 1), (_, _) =>
            {
                if (Interlocked.Increment(ref blocks) == 3) source.Cancel();
            },
            cancellation: source.Token));
        Assert.InRange(blocks, 3, 3 + Environment.ProcessorCount);
    }

    [Fact]
    public void What_cannot_be_sampled_is_refused_with_the_reason()
    {
        string Refusal(Action make) => Assert.Throws<PartException>(make).Message;
        Assert.Contains("accepted: 1 or more", Refusal(() => _ = new UncertainInputs([])));
        Assert.Contains("\"a\" twice", Refusal(() => _ = new UncertainInputs([Three.Inputs[0], Three.Inputs[0]])));
        Assert.Contains("accepted: \"a\", \"b\", \"c\"", Refusal(() => _ = new UncertainInputs(Three.Inputs, [new("a", "dd", 0.1)])));
        Assert.Contains("above -1 and below 1", Refusal(() => _ = new UncertainInputs(Three.Inputs, [new("a", "b", 1)])));
        Assert.Contains("each pair once", Refusal(
            () => _ = new UncertainInputs(Three.Inputs, [new("a", "b", 0.1), new("b", "a", 0.2)])));
        Assert.Contains("hold together", Refusal(() => _ = new UncertainInputs(
            Three.Inputs, [new("a", "b", 0.9), new("b", "c", 0.9), new("a", "c", -0.9)])));
        Assert.Contains("number of samples is 0", Refusal(() => _ = new SamplingPlan(0, 1)));
        var message = Refusal(() => Sampled.Run(Three, new SamplingPlan(10, 1), (_, results) => results[4] = double.NaN));
        Assert.Contains("result of sample 4 is NaN", message);
        Assert.Contains("b ", message);
    }

    private static void Sum(ReadOnlySpan<ReadOnlyMemory<double>> columns, Span<double> results)
    {
        for (var i = 0; i < results.Length; i++)
            results[i] = columns[0].Span[i] + columns[1].Span[i] + columns[2].Span[i];
    }

    private sealed class Told(List<double> list) : IProgress<double>
    {
        public void Report(double value) => list.Add(value);
    }
}
