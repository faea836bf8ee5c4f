using System.Diagnostics;
using System.Globalization;
using System.IO.Pipes;
using Spindlewright.Kernel.Engine.Child;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>A running child: its pipes, its tree, its end.</summary>
internal sealed class ChildProcess : IDisposable
{
    // Inheritable pipe ends exist only while a child is being started; another child started at that moment would
    // inherit them too and keep them open.
    private static readonly Lock Starting = new();

    private readonly Process process;
    private readonly ProcessTree? tree;
    private readonly Lock ending = new();
    private bool disposed;

    private ChildProcess(Process process, MessageChannel channel, string mark)
    {
        (this.process, Channel) = (process, channel);
        tree = OperatingSystem.IsLinux() ? new ProcessTree(process.Id, mark) : null;
    }

    /// <summary>The private connection.</summary>
    internal MessageChannel Channel { get; }

    /// <summary>The process's number.</summary>
    internal int Id => process.Id;

    /// <summary>Standard output of the child and of what it starts.</summary>
    internal Stream StandardOutput => process.StandardOutput.BaseStream;

    /// <summary>Standard error of the child and of what it starts.</summary>
    internal Stream StandardError => process.StandardError.BaseStream;

    /// <summary>Starts a child.</summary>
    /// <param name="command">How.</param>
    /// <param name="memoryBytes">Bound of the managed heap, bytes; null for none.</param>
    internal static ChildProcess Start(ChildCommand command, long? memoryBytes)
    {
        var mark = Guid.NewGuid().ToString("N");
        lock (Starting)
        {
            var toChild = new AnonymousPipeServerStream(PipeDirection.Out, HandleInheritability.Inheritable);
            var fromChild = new AnonymousPipeServerStream(PipeDirection.In, HandleInheritability.Inheritable);
            var start = Describe(command, memoryBytes, mark);
            start.ArgumentList.Add(toChild.GetClientHandleAsString());
            start.ArgumentList.Add(fromChild.GetClientHandleAsString());
            try
            {
                var process = Process.Start(start) ?? throw new InvalidOperationException("No process was started.");
                return new ChildProcess(process, new MessageChannel(fromChild, toChild), mark);
            }
            finally
            {
                toChild.DisposeLocalCopyOfClientHandle();
                fromChild.DisposeLocalCopyOfClientHandle();
            }
        }
    }

    /// <summary>Measures resident memory of the whole tree, bytes; 0 when unknown.</summary>
    internal long MeasureMemory()
    {
        if (tree is not null)
            return tree.MeasureMemory();
        process.Refresh();
        return process.HasExited ? 0 : process.WorkingSet64;
    }

    /// <summary>Ends the whole tree.</summary>
    internal void Kill()
    {
        lock (ending)
        {
            if (disposed)
                return;
            if (tree is not null)
                tree.Kill();
            else if (!process.HasExited)
                process.Kill(entireProcessTree: true);
        }
    }

    /// <summary>Waits for the end of the process.</summary>
    /// <param name="most">How long.</param>
    /// <returns>Its exit code; null when it still runs, or when whoever ended the session has let go of it.</returns>
    internal int? WaitForExit(TimeSpan most)
    {
        try
        {
            return process.WaitForExit(most) ? process.ExitCode : null;
        }
        catch (InvalidOperationException)
        {
            // Disposed by another thread. No lock holds that off, since killing must not wait for this.
            return null;
        }
    }

    /// <summary>Ends the whole tree and lets go of the pipes.</summary>
    public void Dispose()
    {
        Kill();
        lock (ending)
        {
            if (disposed)
                return;
            disposed = true;
            process.WaitForExit(TimeSpan.FromSeconds(5));
            Channel.Dispose();
            process.Dispose();
        }
    }

    private static ProcessStartInfo Describe(ChildCommand command, long? memoryBytes, string mark)
    {
        var start = new ProcessStartInfo(command.Program, command.Arguments)
        {
            // The lifeline: the child ends itself when this end closes, however this process ends.
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment[ProcessTree.MarkVariable] = mark;
        foreach (var name in ChildServer.OwnVariables)
            start.Environment.Remove(name);
        // A child lives for seconds: profiling its code costs more than it gains (a fifth of the processor time).
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_gcServer"] = "0";
        start.Environment["DOTNET_gcConcurrent"] = "0";
        if (memoryBytes is { } bytes)
            start.Environment["DOTNET_GCHeapHardLimit"] = bytes.ToString("X", CultureInfo.InvariantCulture);
        return start;
    }
}
