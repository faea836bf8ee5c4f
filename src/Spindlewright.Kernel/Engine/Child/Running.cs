using System.Runtime;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>The code that is running, and the way to stop it.</summary>
internal sealed class Running(long request, int cell, Action beforeCode, string directory) : IDisposable
{
    private readonly CancellationTokenSource stop = new();

    internal long Request => request;

    internal int Cell => cell;

    /// <summary>The current directory when it began, for taking paths out of messages.</summary>
    internal string Directory => directory;

    internal ErrorEvent? Failure { get; set; }

    internal bool WasCancelled { get; private set; }

    internal void Cancel() => stop.Cancel();

    /// <summary>
    /// Runs the code on this thread so that it can be stopped even in a loop that never looks up. Code that waits for
    /// something that never comes is not stopped by this; the parent then ends the process.
    /// </summary>
    internal void Run(Func<Task> code)
    {
        try
        {
#pragma warning disable SYSLIB0046 // Made for hosts of scripts; whatever the abort leaves behind is the session's own.
            ControlledExecution.Run(
                () =>
                {
                    beforeCode();
                    code().GetAwaiter().GetResult();
                },
                stop.Token);
#pragma warning restore SYSLIB0046
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            WasCancelled = true;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();
}
