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
    /// <summary>Does a block in vectors of a width; called by many threads at once.</summary>
    void Do<L>(int start, int length) where L : struct, ILanes<L>;

    /// <summary>Called once where the batch ends before its end.</summary>
    void Withdraw();
}
