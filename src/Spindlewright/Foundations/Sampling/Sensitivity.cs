using MathNet.Numerics.Statistics;

namespace Spindlewright.Foundations.Sampling;

/// <summary>How much of the spread of a result one input brings in.</summary>
/// <param name="Input">Its name.</param>
/// <param name="FirstOrder">Share of the variance that would go if this input alone were known; 0 to 1 but for noise.</param>
/// <param name="FirstOrderError">Standard error of that share.</param>
/// <param name="Total">Share of the variance that would stay if everything but this input were known.</param>
/// <param name="TotalError">Standard error of that share.</param>
public sealed record InputShare(string Input, double FirstOrder, double FirstOrderError, double Total, double TotalError);

/// <summary>How a result goes with one input, by rank.</summary>
/// <param name="Input">Its name.</param>
/// <param name="Coefficient">Spearman's, −1 to 1.</param>
public sealed record RankCorrelation(string Input, double Coefficient);

/// <summary>Which inputs a result depends on.</summary>
public static class Sensitivity
{
    private const string Part = "sensitivity";

    /// <summary>Runs are cut into so many parts, whose scatter gives the standard errors.</summary>
    private const int Parts = 16;

    /// <summary>Spearman's rank correlation of a result with each input, strongest first.</summary>
    /// <param name="run">The samples, two or more.</param>
    /// <param name="result">Name of one of several results; the first where left out.</param>
    /// <returns>One row an input; 0 for an input or a result that does not vary.</returns>
    /// <exception cref="PartException">There is only one sample, or no such result.</exception>
    public static IReadOnlyList<RankCorrelation> ByRank(SampledRun run, string? result = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Plan.Count < 2) throw new PartException(Part, "number of samples", "1", "2 or more");
        var results = (result is null ? run.Results : run.ResultsOf(result)).ToArray();
        return
        [
            .. run.Inputs.Inputs
                .Select(input => new RankCorrelation(input.Name, Spearman(run.Draws(input.Name).ToArray(), results)))
                .OrderByDescending(row => Math.Abs(row.Coefficient)),
        ];
    }

    /// <summary>Shares of variance, by changing one input at a time between two sets of samples.</summary>
    /// <param name="inputs">Independent inputs.</param>
    /// <param name="plan">Samples of each set, 256 or more; (inputs + 2) times as many results are computed.</param>
    /// <param name="function">Computes; its results have to be finite.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends the run.</param>
    /// <returns>One row an input, largest first-order share first.</returns>
    /// <exception cref="PartException">Inputs are correlated, samples are too few, or a result is not finite.</exception>
    /// <remarks>
    /// First order: Saltelli and others, Computer Physics Communications 181(2):259–270 (2010), table 2 (b); total: Jansen,
    /// Computer Physics Communications 117:35–43 (1999). Results are taken less their mean first, which takes most of the noise
    /// of the first-order shares away. A result that does not vary has shares of 0.
    /// </remarks>
    public static IReadOnlyList<InputShare> ByVariance(
        UncertainInputs inputs, SamplingPlan plan, BlockFunction function, IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(function);
        if (inputs.Correlations.Count > 0)
            throw new PartException(
                Part, "inputs", "correlated", "independent ones",
                "shares of variance have no meaning for inputs that go together; use the rank correlation");
        Guard.Within(plan.Count, 16 * Parts, int.MaxValue, Part, "number of samples");
        var pickFreeze = new PickFreeze(inputs, plan, function, cancellation);
        var rows = new List<InputShare>();
        for (var place = 0; place < inputs.Inputs.Count; place++)
        {
            rows.Add(Row(inputs.Inputs[place].Name, pickFreeze, pickFreeze.Replacing(place)));
            progress?.Report((place + 1.0) / inputs.Inputs.Count);
        }

        return [.. rows.OrderByDescending(row => row.FirstOrder)];
    }

    private static InputShare Row(string name, PickFreeze sets, double[] mixed)
    {
        var whole = Shares(sets, mixed, 0, mixed.Length);
        var parts = Enumerable.Range(0, Parts)
            .Select(part => Shares(sets, mixed, Edge(part), Edge(part + 1))).ToList();
        double Error(Func<(double First, double Total), double> which) =>
            parts.Select(which).StandardDeviation() / Math.Sqrt(Parts);
        return new(name, whole.First, Error(each => each.First), whole.Total, Error(each => each.Total));
        int Edge(int part) => (int)((long)mixed.Length * part / Parts);
    }

    private static (double First, double Total) Shares(PickFreeze sets, double[] mixed, int from, int to)
    {
        if (sets.Variance == 0) return (0, 0);
        var (first, total) = (0.0, 0.0);
        for (var i = from; i < to; i++)
        {
            var change = mixed[i] - sets.A[i];
            first += sets.B[i] * change;
            total += change * change;
        }

        return (first / (to - from) / sets.Variance, total / (2 * (to - from)) / sets.Variance);
    }

    private static double Spearman(double[] draws, double[] results)
    {
        var coefficient = Correlation.Spearman(draws, results);
        return double.IsNaN(coefficient) ? 0 : coefficient;
    }

    /// <summary>Two independent sets of samples, and the first with one input taken from the second.</summary>
    private sealed class PickFreeze
    {
        private readonly UncertainInputs inputs;
        private readonly BlockFunction function;
        private readonly CancellationToken cancellation;
        private readonly double[][] first, second;
        private readonly double mean;

        internal PickFreeze(UncertainInputs inputs, SamplingPlan plan, BlockFunction function, CancellationToken cancellation)
        {
            (this.inputs, this.function, this.cancellation) = (inputs, function, cancellation);
            first = Drawn(inputs, plan, 0);
            second = Drawn(inputs, plan, (uint)inputs.Inputs.Count);
            A = Computed(first);
            B = Computed(second);
            Check(A);
            Check(B);
            mean = A.Concat(B).Mean();
            Variance = A.Concat(B).PopulationVariance();
            Centre(A);
            Centre(B);
        }

        /// <summary>Results of the first set, less the mean of both.</summary>
        internal double[] A { get; }

        /// <summary>Results of the second set, less the mean of both.</summary>
        internal double[] B { get; }

        /// <summary>Variance of both sets together.</summary>
        internal double Variance { get; }

        /// <summary>Results of the first set with one input of the second, less the mean.</summary>
        internal double[] Replacing(int place)
        {
            var columns = (double[][])first.Clone();
            columns[place] = second[place];
            var mixed = Computed(columns);
            Check(mixed);
            Centre(mixed);
            return mixed;
        }

        private static double[][] Drawn(UncertainInputs inputs, SamplingPlan plan, uint firstStream)
        {
            var columns = inputs.Inputs.Select(_ => new double[plan.Count]).ToArray();
            var rows = new SampleRows(inputs, plan, firstStream);
            rows.Fill(0, plan.Count, columns);
            return columns;
        }

        private double[] Computed(double[][] columns) => SampleBlocks.Compute(
            columns, 1, (block, results) => function(block, results[0].Span), cancellation: cancellation)[0];

        private void Centre(double[] results)
        {
            for (var i = 0; i < results.Length; i++)
                results[i] -= mean;
        }

        private static void Check(double[] results)
        {
            if (Array.FindIndex(results, result => !double.IsFinite(result)) is var wrong and >= 0)
                throw new PartException(
                    Part, $"result of sample {wrong}", FormattableString.Invariant($"{results[wrong]}"), "a finite number",
                    "ask for the share that exceeds a limit where a result may never be reached");
        }
    }
}
