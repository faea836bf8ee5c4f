using System.Runtime;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>The code that is running, and the way to stop it.</summary>
internal sealed class RunningCell(long request, int cell, Action beforeCode, string directory) : IDisposable
{
    private static readonly TimeSpan WakeAfter = TimeSpan.FromMilliseconds(200);

    private readonly CancellationTokenSource stop = new();
    private readonly Lock waking = new();
    private Thread? thread;

    internal long Request => request;

    internal int Cell => cell;

    /// <summary>The current directory when it began, for taking paths out of messages.</summary>
    internal string Directory => directory;

    internal ErrorEvent? Failure { get; set; }

    internal bool WasCancelled { get; private set; }

    /// <summary>Asks the code to stop; returns at once.</summary>
    /// <remarks>
    /// An abort reaches code that computes; code that sleeps or waits for a lock has to be woken first. Both are done
    /// elsewhere, since an abort blocks its caller until it takes effect.
    /// </remarks>
    internal void Cancel()
    {
        _ = Task.Run(stop.Cancel);
        _ = Task.Delay(WakeAfter).ContinueWith(_ => Wake(), TaskScheduler.Default);
    }

    /// <summary>
    /// Runs the code on this thread so that it can be stopped even in a loop that never looks up. Code that awaits
    /// something that never comes is not stopped by this; the parent then ends the process.
    /// </summary>
    internal void Run(Func<Task> code)
    {
        Task? task = null;
        lock (waking)
            thread = Thread.CurrentThread;
        try
        {
#pragma warning disable SYSLIB0046 // Made for hosts of scripts; whatever the abort leaves behind is the session's own.
            ControlledExecution.Run(
                () =>
                {
                    beforeCode();
                    task = code();
                    task.GetAwaiter().GetResult();
                },
                stop.Token);
#pragma warning restore SYSLIB0046
        }
        catch (Exception fault) when (stop.IsCancellationRequested
                                      && fault is OperationCanceledException or ThreadInterruptedException)
        {
            WasCancelled = true;
        }
        finally
        {
            SleepSoundly();
        }

        // The code awaits and would go on behind the back of the next cell.
        if (WasCancelled)
            task?.GetAwaiter().GetResult();
    }

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();

    private void Wake()
    {
        lock (waking)
            thread?.Interrupt();
    }

    /// <summary>From here on nobody wakes this thread, and a wake-up that came too late is used up.</summary>
    private void SleepSoundly()
    {
        lock (waking)
            thread = null;
        if (!stop.IsCancellationRequested)
            return;
        try
        {
            Thread.Sleep(1);
        }
        catch (ThreadInterruptedException)
        {
        }
    }
}
