using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Tests.Sampling;

/// <summary>Runs that end with the test.</summary>
internal static class Sampled
{
    public static SampledRun Run(
        UncertainInputs inputs, SamplingPlan plan, BlockFunction function, IProgress<double>? progress = null, int cores = 0) =>
        SampledRun.Of(inputs, plan, function, progress, cores, TestContext.Current.CancellationToken);

    public static IReadOnlyList<InputShare> Shares(UncertainInputs inputs, SamplingPlan plan, BlockFunction function) =>
        Sensitivity.ByVariance(inputs, plan, function, cancellation: TestContext.Current.CancellationToken);
}
