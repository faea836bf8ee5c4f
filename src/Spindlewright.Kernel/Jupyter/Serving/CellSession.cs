using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>The session in which the cells of one kernel run; when its process is lost, the next one is already starting.</summary>
/// <remarks>Everything is called from one thread at a time, except <see cref="InterruptAsync"/>.</remarks>
internal sealed class CellSession : IAsyncDisposable
{
    /// <summary>What an interrupted cell shows as the kind of error.</summary>
    internal const string InterruptedName = "Interrupted";

    private const string StateLost = "The variables of this session are lost: run the cells above again.";

    // A request to stop that comes before the code has begun is not heard; it is repeated once.
    private static readonly TimeSpan AskAgainAfter = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(3);

    private readonly IExecutionEngine engine;
    private readonly CancellationTokenSource closing = new();
    private readonly Lock guard = new();
    private Task<IExecutionSession> opening;
    private EngineLoss? untold;
    private Run? current;

    /// <summary>Begins at once, so that the process is ready when the first cell comes.</summary>
    internal CellSession(IExecutionEngine engine)
    {
        this.engine = engine;
        opening = OpenAsync();
    }

    /// <summary>How many processes there were; a name that one of them gave to an output means nothing to the next.</summary>
    internal int Generation { get; private set; } = 1;

    /// <summary>Runs code.</summary>
    /// <param name="code">The code.</param>
    /// <param name="cell">The number by which tracebacks name it.</param>
    /// <param name="onEvent">Receives what it shows; not its error.</param>
    /// <returns>The error; null when the code ran to its end.</returns>
    internal async Task<ErrorEvent?> RunAsync(string code, int cell, Action<EngineEvent> onEvent)
    {
        if (untold is { } loss)
        {
            untold = null;
            return Lost(loss).ToError(cell);
        }

        using var run = new Run();
        lock (guard)
            current = run;
        try
        {
            return await RunAsync(run, code, cell, onEvent).ConfigureAwait(false);
        }
        catch (EngineLostException lost)
        {
            await ReopenAsync().ConfigureAwait(false);
            return (run.IsInterrupted ? Stopped : Lost(lost.Loss)).ToError(cell);
        }
        finally
        {
            lock (guard)
                current = null;
            run.Ended.SetResult();
        }
    }

    /// <summary>Asks anything but to run code.</summary>
    /// <typeparam name="T">The answer.</typeparam>
    /// <param name="request">Makes the request from its number.</param>
    /// <returns>The answer; null when there is none.</returns>
    internal async Task<T?> AskAsync<T>(Func<long, EngineRequest> request) where T : EngineEvent
    {
        try
        {
            var session = await opening.ConfigureAwait(false);
            return (await session.AskAsync(request).ConfigureAwait(false)).OfType<T>().FirstOrDefault();
        }
        catch (EngineLostException lost)
        {
            // Whoever runs the next cell has to know that it would run without what came before.
            untold = opening.IsCompletedSuccessfully ? lost.Loss : null;
            await ReopenAsync().ConfigureAwait(false);
            return null;
        }
    }

    /// <summary>Stops what is running: asks first, and then ends the process. Returns when it has stopped.</summary>
    internal async Task InterruptAsync()
    {
        Run run;
        lock (guard)
        {
            if (current is not { IsInterrupted: false } running)
                return;
            run = running;
            run.IsInterrupted = true;
            run.Stop.Cancel();
        }

        await Task.WhenAny(run.Ended.Task, Task.Delay(AskAgainAfter)).ConfigureAwait(false);
        if (!run.Ended.Task.IsCompleted && run.Session is { } session)
            await session.CancelAsync(Grace).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync().ConfigureAwait(false);
        await CloseAsync().ConfigureAwait(false);
        closing.Dispose();
    }

    private async Task<ErrorEvent?> RunAsync(Run run, string code, int cell, Action<EngineEvent> onEvent)
    {
        var session = run.Session = await opening.ConfigureAwait(false);
        if (run.IsInterrupted)
            return StoppedInTime.ToError(cell);
        ErrorEvent? error = null;
        var outcome = await session.ExecuteAsync(
            code, cell,
            happened =>
            {
                if (happened is ErrorEvent failed)
                    error ??= failed;
                else
                    onEvent(happened);
            },
            run.Stop.Token).ConfigureAwait(false);
        return outcome == Outcome.Cancelled ? StoppedInTime.ToError(cell) : error;
    }

    private static EngineLoss StoppedInTime { get; } =
        new(InterruptedName, "The cell was stopped. The variables of earlier cells are kept.");

    private static EngineLoss Stopped { get; } =
        new(InterruptedName, $"The cell did not stop when asked, so its process was ended. {StateLost}");

    private static EngineLoss Lost(EngineLoss loss) => loss with { Message = $"{loss.Message} {StateLost}" };

    private async Task<IExecutionSession> OpenAsync()
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(closing.Token);
        patience.CancelAfter(RunLimits.Default.OpenTime);
        try
        {
            var settings = new SessionSettings(MemoryBytes: RunLimits.Default.MemoryBytes);
            return await engine.OpenAsync(settings, patience.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException late)
        {
            throw new EngineLostException(
                new EngineLoss("EngineNotStarted", "The process for cells did not get ready in time."), late);
        }
    }

    private async Task ReopenAsync()
    {
        await CloseAsync().ConfigureAwait(false);
        if (closing.IsCancellationRequested)
            return;
        Generation++;
        opening = OpenAsync();
    }

    private async Task CloseAsync()
    {
        try
        {
            await (await opening.ConfigureAwait(false)).DisposeAsync().ConfigureAwait(false);
        }
        catch (EngineLostException)
        {
            // It never started; there is nothing to close.
        }
    }

    /// <summary>One run of code, and the way to stop it.</summary>
    private sealed class Run : IDisposable
    {
        private volatile bool isInterrupted;

        internal CancellationTokenSource Stop { get; } = new();

        internal TaskCompletionSource Ended { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        internal IExecutionSession? Session { get; set; }

        internal bool IsInterrupted { get => isInterrupted; set => isInterrupted = value; }

        public void Dispose() => Stop.Dispose();
    }
}
