using System.Collections.Concurrent;
using Spindlewright.Kernel.Engine.Processes;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Engine;

/// <summary>Runs C# in child processes, each with the library imported.</summary>
/// <remarks>
/// A session has a child to itself. With <paramref name="reuse"/>, a child whose session ended well serves the next
/// one, which saves its start: for the project's own workbook, whose notebooks leave nothing behind that matters, and
/// a test compares. A user's notebook gets a fresh child.
/// </remarks>
/// <param name="command">How a child is started; null finds the program itself.</param>
/// <param name="reuse">Whether children serve more than one session.</param>
public sealed class ChildEngine(ChildCommand? command = null, bool reuse = false) : IExecutionEngine
{
    private readonly ChildCommand command = command ?? ChildCommand.Find();
    private readonly ConcurrentBag<ChildConnection> idle = [];

    /// <inheritdoc/>
    public async Task<IExecutionSession> OpenAsync(SessionSettings settings, CancellationToken cancellation = default)
    {
        var child = TakeIdle(settings.MemoryBytes) ?? Start(settings.MemoryBytes);
        try
        {
            await child.AskAsync(id => new OpenRequest(id, settings.Directory), null, cancellation).ConfigureAwait(false);
        }
        catch
        {
            child.Dispose();
            throw;
        }

        return new ChildSession(child, reuse ? idle.Add : null);
    }

    /// <summary>Ends the children that wait for a session; those of open sessions end with them.</summary>
    /// <returns>Done.</returns>
    public ValueTask DisposeAsync()
    {
        while (idle.TryTake(out var child))
            child.Dispose();
        return ValueTask.CompletedTask;
    }

    private ChildConnection? TakeIdle(long? memoryBytes)
    {
        while (idle.TryTake(out var child))
        {
            if (!child.IsLost && child.MemoryBytes == memoryBytes)
                return child;
            child.Dispose();
        }

        return null;
    }

    private ChildConnection Start(long? memoryBytes)
    {
        try
        {
            return new ChildConnection(ChildProcess.Start(command, memoryBytes), memoryBytes);
        }
        catch (Exception fault) when (fault is System.ComponentModel.Win32Exception or IOException
                                          or InvalidOperationException)
        {
            throw new EngineLostException(
                new EngineLoss("EngineNotStarted", $"The process for cells cannot be started: {fault.Message}"), fault);
        }
    }
}
