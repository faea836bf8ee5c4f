namespace Spindlewright.Foundations.Sampling;

/// <summary>Computes results of many samples, block by block, on all cores.</summary>
internal static class SampleBlocks
{
    /// <summary>How many samples are computed at a time.</summary>
    internal const int Length = 1024;

    /// <summary>Computes.</summary>
    /// <param name="columns">One array an input, all of one length.</param>
    /// <param name="resultCount">How many results a sample has.</param>
    /// <param name="function">Computes; called for many blocks at once.</param>
    /// <param name="before">Called with the first sample and the number of samples of a block before it is computed.</param>
    /// <param name="done">Called with the share done.</param>
    /// <param name="cores">Most threads; 0 for all cores.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>One array a result, with one number a sample.</returns>
    internal static double[][] Compute(
        double[][] columns, int resultCount, BlockFunctions function, Action<int, int>? before = null, Action<double>? done = null,
        int cores = 0, CancellationToken cancellation = default)
    {
        var count = columns[0].Length;
        var results = Enumerable.Range(0, resultCount).Select(_ => new double[count]).ToArray();
        var blocks = (count + Length - 1) / Length;
        var finished = 0;
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = cores > 0 ? cores : Environment.ProcessorCount };
        try
        {
            Parallel.For(0, blocks, options, block =>
            {
                // The loop itself asks only now and then.
                cancellation.ThrowIfCancellationRequested();
                var start = block * Length;
                var length = Math.Min(Length, count - start);
                before?.Invoke(start, length);
                var inputs = Array.ConvertAll(columns, column => (ReadOnlyMemory<double>)column.AsMemory(start, length));
                function(inputs, Array.ConvertAll(results, result => result.AsMemory(start, length)));
                done?.Invoke((double)Interlocked.Increment(ref finished) / blocks);
            });
        }
        catch (AggregateException several) when (several.InnerExceptions.OfType<PartException>().FirstOrDefault() is { } fault)
        {
            throw fault;
        }

        return results;
    }
}
