using Spindlewright.Kernel.Engine.Processes;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Engine;

/// <summary>A session in a child process.</summary>
internal sealed class ChildSession(ChildConnection child, Action<ChildConnection>? giveBack) : IExecutionSession
{
    private static readonly TimeSpan CloseTime = TimeSpan.FromSeconds(10);
    private bool disposed;

    /// <summary>The child's process number.</summary>
    internal int ProcessId => child.ProcessId;

    /// <inheritdoc/>
    public async Task<Outcome> ExecuteAsync(
        string code, int cell, Action<EngineEvent> onEvent, CancellationToken cancellation = default)
    {
        var answer = child.AskAsync(id => new ExecuteRequest(id, code, cell), onEvent, CancellationToken.None);
        await using var _ = cancellation.Register(() => child.AskToStop()).ConfigureAwait(false);
        return await answer.ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<EngineEvent>> AskAsync(
        Func<long, EngineRequest> request, CancellationToken cancellation = default)
    {
        var answers = new List<EngineEvent>();
        await child.AskAsync(request, answers.Add, cancellation).ConfigureAwait(false);
        return answers;
    }

    /// <inheritdoc/>
    public Task<bool> CancelAsync(TimeSpan grace) => child.CancelAsync(grace);

    /// <inheritdoc/>
    public void Kill(EngineLoss reason) => child.Kill(reason);

    /// <inheritdoc/>
    public long MeasureMemory() => child.MeasureMemory();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (disposed)
            return;
        disposed = true;
        if (giveBack is not null && await CloseAsync().ConfigureAwait(false))
            giveBack(child);
        else
            child.Dispose();
    }

    private async Task<bool> CloseAsync()
    {
        if (child.IsLost)
            return false;
        try
        {
            using var patience = new CancellationTokenSource(CloseTime);
            await child.AskAsync(id => new CloseRequest(id), null, patience.Token).ConfigureAwait(false);
            return true;
        }
        catch (Exception fault) when (fault is EngineLostException or OperationCanceledException
                                          or InvalidOperationException)
        {
            return false;
        }
    }
}
