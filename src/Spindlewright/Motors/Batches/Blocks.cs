using System.Runtime.Intrinsics;

namespace Spindlewright.Motors.Batches;

/// <summary>Runs blocks.</summary>
internal static class Blocks
{
    /// <summary>Runs them in the widest vectors that the hardware has.</summary>
    /// <param name="count">How many places.</param>
    /// <param name="run">How they are run.</param>
    /// <param name="work">What is done with each.</param>
    /// <param name="length">Places in a block.</param>
    internal static void Run<TWork>(int count, BatchRun run, TWork work, int length = BatchRun.BlockLength)
        where TWork : struct, IBlockWork
    {
        if (Vector512.IsHardwareAccelerated) Run<TWork, Lanes8>(count, run, work, length);
        else if (Vector256.IsHardwareAccelerated) Run<TWork, Lanes4>(count, run, work, length);
        else Run<TWork, Lanes2>(count, run, work, length);
    }

    /// <summary>Runs them in vectors of a width.</summary>
    internal static void Run<TWork, L>(int count, BatchRun run, TWork work, int length = BatchRun.BlockLength)
        where TWork : struct, IBlockWork
        where L : struct, ILanes<L>
    {
        var blocks = (int)(((long)count + length - 1) / length);
        var cores = Math.Min(blocks, run.Cores > 0 ? run.Cores : Environment.ProcessorCount);
        try
        {
            if (cores > 1) Parallel<TWork, L>(count, blocks, cores, run, work, length);
            else Serial<TWork, L>(count, blocks, run, work, length);
        }
        catch
        {
            work.Withdraw();
            throw;
        }
    }

    private static void Serial<TWork, L>(int count, int blocks, BatchRun run, TWork work, int length)
        where TWork : struct, IBlockWork
        where L : struct, ILanes<L>
    {
        for (var block = 0; block < blocks; block++)
        {
            run.Cancellation.ThrowIfCancellationRequested();
            work.Do<L>(block * length, Math.Min(length, count - block * length));
            run.Progress?.Report((block + 1.0) / blocks);
        }
    }

    private static void Parallel<TWork, L>(int count, int blocks, int cores, BatchRun run, TWork work, int length)
        where TWork : struct, IBlockWork
        where L : struct, ILanes<L>
    {
        var (done, telling) = (0, new Lock());
        var options = new ParallelOptions { CancellationToken = run.Cancellation, MaxDegreeOfParallelism = cores };
        System.Threading.Tasks.Parallel.For(0, blocks, options, block =>
        {
            // The loop itself asks only now and then.
            run.Cancellation.ThrowIfCancellationRequested();
            work.Do<L>(block * length, Math.Min(length, count - block * length));
            if (run.Progress is not { } progress)
                return;
            // Told under the lock, so that the share never seems to fall.
            lock (telling) progress.Report((double)++done / blocks);
        });
    }
}
