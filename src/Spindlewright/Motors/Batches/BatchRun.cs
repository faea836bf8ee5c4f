using Spindlewright.Foundations;

namespace Spindlewright.Motors.Batches;

/// <summary>How a batch is run: on how many cores, with what progress, and until when.</summary>
/// <remarks>
/// Work is cut into blocks of <see cref="BlockLength"/> places whatever the number of cores, and a lane never sees another: the same bytes
/// on one core or many. A batch that is cancelled raises <see cref="OperationCanceledException"/> and leaves NaN in
/// every place of its results, never some of them.
/// </remarks>
public sealed record BatchRun
{
    /// <summary>Places in a block.</summary>
    public const int BlockLength = 4096;

    /// <summary>All cores, no progress, no end before the end.</summary>
    public static BatchRun AllCores { get; } = new();

    /// <summary>The calling thread alone: nothing whatever is allocated.</summary>
    public static BatchRun OneCore { get; } = new() { Cores = 1 };

    /// <summary>Most threads, 1 to 1024; 0 for one a core.</summary>
    public int Cores { get; init => field = (int)Guard.Within(value, 0, 1024, "batch", "number of cores"); }

    /// <summary>Told the share done, rising from above 0 to 1; null for nobody.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Ends the batch.</summary>
    public CancellationToken Cancellation { get; init; }
}

/// <summary>What is done with one block.</summary>
internal interface IBlockWork
{
    /// <summary>Does a block; called by many threads at once.</summary>
    void Do(int start, int length);

    /// <summary>Called once where the batch ends before its end.</summary>
    void Withdraw();
}

/// <summary>Runs blocks.</summary>
internal static class Blocks
{
    internal static void Run<TWork>(int count, BatchRun run, TWork work, int length = BatchRun.BlockLength)
        where TWork : struct, IBlockWork
    {
        var blocks = (int)(((long)count + length - 1) / length);
        var cores = Math.Min(blocks, run.Cores > 0 ? run.Cores : Environment.ProcessorCount);
        try
        {
            if (cores > 1) Parallel(count, blocks, cores, run, work, length);
            else Serial(count, blocks, run, work, length);
        }
        catch
        {
            work.Withdraw();
            throw;
        }
    }

    private static void Serial<TWork>(int count, int blocks, BatchRun run, TWork work, int length)
        where TWork : struct, IBlockWork
    {
        for (var block = 0; block < blocks; block++)
        {
            run.Cancellation.ThrowIfCancellationRequested();
            work.Do(block * length, Math.Min(length, count - block * length));
            run.Progress?.Report((block + 1.0) / blocks);
        }
    }

    private static void Parallel<TWork>(int count, int blocks, int cores, BatchRun run, TWork work, int length)
        where TWork : struct, IBlockWork
    {
        var (done, telling) = (0, new Lock());
        var options = new ParallelOptions { CancellationToken = run.Cancellation, MaxDegreeOfParallelism = cores };
        System.Threading.Tasks.Parallel.For(0, blocks, options, block =>
        {
            // The loop itself asks only now and then.
            run.Cancellation.ThrowIfCancellationRequested();
            work.Do(block * length, Math.Min(length, count - block * length));
            if (run.Progress is not { } progress)
                return;
            // Told under the lock, so that the share never seems to fall.
            lock (telling) progress.Report((double)++done / blocks);
        });
    }
}
