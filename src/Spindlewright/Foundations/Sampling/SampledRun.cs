namespace Spindlewright.Foundations.Sampling;

/// <summary>How the samples of a run are spread over the inputs.</summary>
public enum SamplingDesign
{
    /// <summary>Every sample on its own.</summary>
    Plain,

    /// <summary>
    /// Latin hypercube: each input is cut into as many equal shares as there are samples, and each share is drawn from once.
    /// </summary>
    /// <remarks>
    /// McKay, Beckman, Conover, Technometrics 21(2):239–245 (1979). Of correlated inputs only the first keeps its shares.
    /// </remarks>
    LatinHypercube,
}

/// <summary>Computes one result of each sample of a block.</summary>
/// <param name="inputs">One array an input, in the order of the inputs; as many numbers as <paramref name="results"/>.</param>
/// <param name="results">Receives one number a sample. Positive infinity stands for "never reached"; NaN is refused.</param>
public delegate void BlockFunction(ReadOnlySpan<ReadOnlyMemory<double>> inputs, Span<double> results);

/// <summary>Computes several results of each sample of a block.</summary>
/// <param name="inputs">One array an input, in the order of the inputs.</param>
/// <param name="results">One array a result, each as long as an input's. Infinity and NaN as in <see cref="BlockFunction"/>.</param>
public delegate void BlockFunctions(ReadOnlySpan<ReadOnlyMemory<double>> inputs, ReadOnlySpan<Memory<double>> results);

/// <summary>How samples are drawn.</summary>
/// <param name="Count">How many, 1 to 100 million.</param>
/// <param name="Seed">The same seed gives the same samples.</param>
/// <param name="Design">How they are spread.</param>
public sealed record SamplingPlan(int Count, ulong Seed, SamplingDesign Design = SamplingDesign.LatinHypercube)
{
    private const int MostSamples = 100_000_000;

    /// <summary>How many.</summary>
    public int Count { get; } = (int)Guard.Within(Count, 1, MostSamples, "sampling", "number of samples");
}

/// <summary>Samples of the inputs, and what came out of them.</summary>
public sealed class SampledRun
{
    private readonly double[][] columns;
    private readonly IReadOnlyList<string> names;
    private readonly double[][] results;

    private SampledRun(
        UncertainInputs inputs, SamplingPlan plan, double[][] columns, IReadOnlyList<string> names, double[][] results) =>
        (Inputs, Plan, this.columns, this.names, this.results) = (inputs, plan, columns, names, results);

    /// <summary>The inputs.</summary>
    public UncertainInputs Inputs { get; }

    /// <summary>How they were drawn.</summary>
    public SamplingPlan Plan { get; }

    /// <summary>The result, or the first of several, one a sample.</summary>
    public ReadOnlySpan<double> Results => results[0];

    /// <summary>One of several results.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>One number a sample.</returns>
    /// <exception cref="PartException">There is no such result.</exception>
    public ReadOnlySpan<double> ResultsOf(string name)
    {
        for (var place = 0; place < names.Count; place++)
            if (names[place] == name)
                return results[place];
        throw new PartException("sampling", "name of a result", $"\"{name}\"", string.Join(", ", names));
    }

    /// <summary>The draws of one input, one a sample.</summary>
    /// <param name="name">Name of the input.</param>
    /// <returns>The draws.</returns>
    public ReadOnlySpan<double> Draws(string name) => columns[Inputs.Place(name)];

    /// <summary>Draws samples and computes one result of each, on all cores.</summary>
    /// <inheritdoc cref="Of(UncertainInputs, SamplingPlan, IReadOnlyList{string}, BlockFunctions, IProgress{double}?, int, CancellationToken)"/>
    public static SampledRun Of(
        UncertainInputs inputs, SamplingPlan plan, BlockFunction function, IProgress<double>? progress = null,
        int cores = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(function);
        return Of(inputs, plan, ["result"], (block, results) => function(block, results[0].Span), progress, cores, cancellation);
    }

    /// <summary>Draws samples and computes several results of each, on all cores.</summary>
    /// <param name="inputs">What is uncertain.</param>
    /// <param name="plan">How many samples, and which.</param>
    /// <param name="names">Names of the results, one or more.</param>
    /// <param name="function">Computes; called for many blocks at once.</param>
    /// <param name="progress">Told the share done, 0 to 1, now and then.</param>
    /// <param name="cores">Most threads; 0 for all cores. The results do not depend on it.</param>
    /// <param name="cancellation">Ends the run; nothing of it is handed out then.</param>
    /// <returns>Samples and results.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="PartException">A result is not a number.</exception>
    public static SampledRun Of(
        UncertainInputs inputs, SamplingPlan plan, IReadOnlyList<string> names, BlockFunctions function,
        IProgress<double>? progress = null, int cores = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(function);
        var rows = new SampleRows(inputs, plan);
        var columns = inputs.Inputs.Select(_ => new double[plan.Count]).ToArray();
        var results = SampleBlocks.Compute(
            columns, names.Count, function, (start, length) => rows.Fill(start, length, columns),
            progress is null ? null : progress.Report, cores, cancellation);
        for (var place = 0; place < results.Length; place++)
            if (Array.FindIndex(results[place], double.IsNaN) is var wrong and >= 0)
                throw new PartException(
                    "sampling", $"{names[place]} of sample {wrong}", "NaN", "a number, or infinity for what is never reached",
                    Row(inputs, columns, wrong));
        return new SampledRun(inputs, plan, columns, names, results);
    }

    private static string Row(UncertainInputs inputs, double[][] columns, int sample) => string.Join(
        ", ", inputs.Inputs.Select((input, place) => FormattableString.Invariant($"{input.Name} {columns[place][sample]:G6}")));
}
