using System.Text;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>Requests to a child and the events that answer them, in order, until the child is lost.</summary>
internal sealed class ChildConnection : IDisposable
{
    // Standard error is held until the cell ends, so that the runtime's last words can be told from the cell's;
    // beyond this it passes at once.
    private const int MostHeldChars = 1 << 20;

    private readonly ChildProcess process;
    private readonly RawOutput rawOutput;
    private readonly RawOutput rawError;
    private readonly Lock state = new();
    private readonly Lock handing = new();
    private readonly StringBuilder heldOutput = new();
    private readonly StringBuilder heldError = new();
    private Pending? pending;
    private long lastId;
    private EngineLoss? killed;
    private EngineLoss? loss;

    internal ChildConnection(ChildProcess process, long? memoryBytes)
    {
        (this.process, MemoryBytes) = (process, memoryBytes);
        rawOutput = new RawOutput(process.StandardOutput, "child output", TakeRawOutput);
        rawError = new RawOutput(process.StandardError, "child error", TakeRawError);
        new Thread(ReadEvents) { IsBackground = true, Name = "child events" }.Start();
    }

    /// <summary>The bound of memory the child was started with.</summary>
    internal long? MemoryBytes { get; }

    internal int ProcessId => process.Id;

    internal bool IsLost
    {
        get
        {
            lock (state)
                return loss is not null || killed is not null;
        }
    }

    /// <summary>Sends a request and waits for its end.</summary>
    /// <param name="makeRequest">Makes the request from its number.</param>
    /// <param name="onEvent">Receives its events, one at a time.</param>
    /// <param name="cancellation">Gives up waiting; the answer, when it comes, is dropped.</param>
    internal Task<Outcome> AskAsync(
        Func<long, EngineRequest> makeRequest, Action<EngineEvent>? onEvent, CancellationToken cancellation)
    {
        Pending mine;
        lock (state)
        {
            if (loss is not null)
                throw new EngineLostException(loss);
            if (pending is { Answer.Task.IsCompleted: false })
                throw new InvalidOperationException("A request is running; one runs at a time.");
            pending = mine = new Pending(++lastId, onEvent);
        }

        try
        {
            process.Channel.Send(makeRequest(mine.Id));
        }
        catch (Exception fault) when (fault is ProtocolException)
        {
            lock (state)
                pending = null;
            throw;
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException)
        {
            // The reading thread sees the same end, knows more of its cause and answers.
        }

        return mine.Answer.Task.WaitAsync(cancellation);
    }

    /// <summary>Asks what is running to stop.</summary>
    /// <returns>The end of the running request; null when none runs.</returns>
    internal Task<Outcome>? AskToStop()
    {
        Pending? target;
        long id;
        lock (state)
        {
            target = pending is { Answer.Task.IsCompleted: false } ? pending : null;
            id = ++lastId;
        }

        try
        {
            if (target is not null)
                process.Channel.Send(new CancelRequest(id, target.Id));
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException)
        {
            // As above.
        }

        return target?.Answer.Task;
    }

    internal async Task<bool> CancelAsync(TimeSpan grace)
    {
        if (AskToStop() is not { } end)
            return !IsLost;
        try
        {
            await end.WaitAsync(grace).ConfigureAwait(false);
            return true;
        }
        catch (TimeoutException)
        {
            Kill(new EngineLoss("Cancelled", "The code did not stop when asked; its process was ended, variables are lost."));
            return false;
        }
        catch (EngineLostException)
        {
            return false;
        }
    }

    internal void Kill(EngineLoss reason)
    {
        lock (state)
            killed ??= reason;
        process.Kill();
    }

    internal long MeasureMemory() => process.MeasureMemory();

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (state)
            killed ??= new EngineLoss("Closed", "The session was closed.");
        process.Dispose();
        rawOutput.Stop();
        rawError.Stop();
    }

    private void ReadEvents()
    {
        try
        {
            while (process.Channel.ReadEvent() is { } happened)
            {
                if (happened is FinishedEvent finished)
                    Finish(finished);
                else
                    HandOn(happened);
            }

            Lose(null);
        }
        catch (Exception fault) when (fault is IOException or ObjectDisposedException)
        {
            Lose(fault as ProtocolException);
        }
    }

    private void Finish(FinishedEvent finished)
    {
        rawOutput.Drain();
        rawError.Drain();
        ReleaseRawError(cut: null);
        Pending? done;
        lock (state)
            done = pending?.Id == finished.Request ? pending : null;
        done?.Answer.TrySetResult(finished.Outcome);
    }

    /// <summary>The child is gone: finds out why, sweeps up what it started, and answers whoever waits.</summary>
    private void Lose(ProtocolException? broken)
    {
        var exitCode = process.WaitForExit(TimeSpan.FromSeconds(killed is null && broken is null ? 2 : 0));
        process.Kill();
        rawOutput.Drain();
        rawError.Drain();
        string lastWords;
        lock (handing)
            lastWords = heldError.ToString();
        var crash = CrashReport.Read(lastWords);
        ReleaseRawError(crash?.Start);
        Pending? waiting;
        lock (state)
        {
            loss = killed ?? crash?.Loss ?? CrashReport.Of(exitCode, broken);
            waiting = pending;
        }

        rawOutput.Stop();
        rawError.Stop();
        waiting?.Answer.TrySetException(new EngineLostException(loss, broken));
    }

    private void TakeRawOutput(string text) => HandOnOrHold(text, StreamName.Stdout, heldOutput);

    private void TakeRawError(string text)
    {
        lock (handing)
        {
            heldError.Append(text);
            if (heldError.Length <= MostHeldChars)
                return;
        }

        ReleaseRawError(cut: null);
    }

    /// <summary>Text that arrives while nothing runs waits for the next request.</summary>
    private void HandOnOrHold(string text, StreamName stream, StringBuilder held)
    {
        lock (handing)
        {
            if (Current() is not { } current)
            {
                if (held.Length < MostHeldChars)
                    held.Append(text);
                return;
            }

            held.Append(text);
            var all = held.ToString();
            held.Clear();
            current.OnEvent?.Invoke(new StreamEvent(current.Id, stream, all, IsRaw: true));
        }
    }

    private void ReleaseRawError(int? cut)
    {
        lock (handing)
        {
            var text = heldError.ToString(0, cut ?? heldError.Length);
            if (heldOutput.Length > 0)
                HandOnOrHold("", StreamName.Stdout, heldOutput);
            heldError.Clear();
            if (text.Length > 0)
                HandOnOrHold(text, StreamName.Stderr, heldError);
        }
    }

    private void HandOn(EngineEvent happened)
    {
        lock (handing)
        {
            // What threads of an earlier cell still write belongs to the one that runs now.
            var current = Current();
            if (happened is StreamEvent late && current is not null)
                happened = late with { Request = current.Id };
            if (current?.Id == happened.Request)
                current.OnEvent?.Invoke(happened);
        }
    }

    private Pending? Current()
    {
        lock (state)
            return pending is { Answer.Task.IsCompleted: false } ? pending : null;
    }

    private sealed record Pending(long Id, Action<EngineEvent>? OnEvent)
    {
        public TaskCompletionSource<Outcome> Answer { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
