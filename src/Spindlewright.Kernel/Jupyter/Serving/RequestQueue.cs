using Spindlewright.Kernel.Jupyter.Wire;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>A request that waits for its turn.</summary>
/// <param name="message">The request.</param>
internal sealed class QueuedRequest(WireMessage message)
{
    /// <summary>The request.</summary>
    internal WireMessage Message => message;

    /// <summary>True when an earlier one failed and this one is not to run any more.</summary>
    internal bool IsAborted { get; set; }
}

/// <summary>Requests of the shell in the order in which they came.</summary>
internal sealed class RequestQueue : IDisposable
{
    private readonly Lock guard = new();
    private readonly Queue<QueuedRequest> waiting = [];
    private readonly SemaphoreSlim count = new(0);

    /// <summary>Adds a request.</summary>
    internal void Add(WireMessage message)
    {
        lock (guard)
            waiting.Enqueue(new QueuedRequest(message));
        count.Release();
    }

    /// <summary>Waits for the next one.</summary>
    internal async Task<QueuedRequest> TakeAsync(CancellationToken cancellation)
    {
        await count.WaitAsync(cancellation).ConfigureAwait(false);
        lock (guard)
            return waiting.Dequeue();
    }

    /// <summary>Marks the cells that a client session still has waiting as not to be run.</summary>
    internal void Abort(string session)
    {
        lock (guard)
            foreach (var request in waiting)
                request.IsAborted |= request.Message.Session == session && request.Message.Type == RequestTypes.Execute;
    }

    /// <inheritdoc/>
    public void Dispose() => count.Dispose();
}
