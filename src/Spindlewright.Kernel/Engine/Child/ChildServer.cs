using System.Collections.Concurrent;
using Spindlewright.Kernel.Engine.Processes;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Answers the parent's requests, one after the other; cancelling comes in between.</summary>
internal sealed class ChildServer : IDisposable
{
    /// <summary>Settings of the runtime that are for this process, not for those that cells start.</summary>
    internal static readonly string[] OwnVariables =
        ["DOTNET_TieredPGO", "DOTNET_GCHeapHardLimit", "DOTNET_gcServer", "DOTNET_gcConcurrent", "DOTNET_NOLOGO"];

    private readonly BlockingCollection<EngineRequest> waiting = [];
    private readonly MessageChannel channel;
    private readonly IReadOnlyList<IChildFormatters> formatters;
    private readonly ProcessTree tree;
    private readonly ProcessState state;
    private readonly CellConsole output;
    private readonly CellConsole error;
    private long current;
    private CodeSession? session;

    internal ChildServer(MessageChannel channel, IReadOnlyList<IChildFormatters> formatters, ProcessTree tree)
    {
        (this.channel, this.formatters, this.tree) = (channel, formatters, tree);
        foreach (var name in OwnVariables)
            Environment.SetEnvironmentVariable(name, null);
        state = new ProcessState();
        output = new CellConsole(StreamName.Stdout, SendText);
        error = new CellConsole(StreamName.Stderr, SendText);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => FlushConsole();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        session?.Dispose();
        output.Dispose();
        error.Dispose();
        waiting.Dispose();
    }

    /// <summary>Serves until the connection ends.</summary>
    internal void Serve()
    {
        var worker = new Thread(Work) { IsBackground = true, Name = "cells" };
        worker.Start();
        try
        {
            while (channel.ReadRequest() is { } request)
            {
                if (request is CancelRequest cancel)
                    session?.Cancel(cancel.Target);
                else
                    waiting.Add(request);
            }
        }
        catch (IOException)
        {
            // The parent is gone, or what it says cannot be trusted: in both cases this process has no purpose left.
        }
    }

    private void Work()
    {
        foreach (var request in waiting.GetConsumingEnumerable())
        {
            Interlocked.Exchange(ref current, request.Id);
            var outcome = Answer(request);
            FlushConsole();
            Interlocked.Exchange(ref current, 0);
            Send(new FinishedEvent(request.Id, outcome));
        }
    }

    private Outcome Answer(EngineRequest request)
    {
        try
        {
            return AnswerAsync(request).GetAwaiter().GetResult();
        }
        catch (Exception fault) when (fault is not IOException)
        {
            Send(Traceback.Of(request.Id, fault, ""));
            return Outcome.Failed;
        }
    }

    private async Task<Outcome> AnswerAsync(EngineRequest request)
    {
        if (request is OpenRequest open)
        {
            await OpenAsync(open).ConfigureAwait(false);
            return Outcome.Done;
        }

        var at = session ?? throw new InvalidOperationException("No session is open; \"open\" comes first.");
        switch (request)
        {
            case ExecuteRequest execute:
                output.BeginCell();
                error.BeginCell();
                ProcessState.RestoreCulture();
                return await at.ExecuteAsync(execute, TakeConsole).ConfigureAwait(false);
            case CompleteRequest complete:
                await at.CompleteAsync(complete).ConfigureAwait(false);
                break;
            case HoverRequest hover:
                await at.HoverAsync(hover).ConfigureAwait(false);
                break;
            case SignatureRequest signature:
                await at.SignatureAsync(signature).ConfigureAwait(false);
                break;
            case IsCompleteRequest isComplete:
                at.IsComplete(isComplete);
                break;
            case ValueRequest value:
                at.Value(value);
                break;
            case CloseRequest:
                Close();
                break;
        }

        return Outcome.Done;
    }

    private async Task OpenAsync(OpenRequest open)
    {
        Close();
        state.Restore(open.Directory);
        TakeConsole();
        Values.Reset(formatters);
        session = await CodeSession.OpenAsync(Send).ConfigureAwait(false);
    }

    private void Close()
    {
        session?.Dispose();
        session = null;
        if (OperatingSystem.IsLinux())
            tree.Kill(spareRoot: true);
    }

    /// <summary>The kernel package, and cells, put writers of their own in place.</summary>
    private void TakeConsole()
    {
        Console.SetIn(TextReader.Null);
        Console.SetOut(output);
        Console.SetError(error);
    }

    private void FlushConsole()
    {
        output.Flush();
        error.Flush();
    }

    private void SendText(StreamName stream, string text) =>
        Send(new StreamEvent(Interlocked.Read(ref current), stream, text));

    private void Send(EngineEvent happened)
    {
        // Stopping a cell aborts its thread anywhere but in a finally block: no message may be left half written.
        try
        {
        }
        finally
        {
            try
            {
                channel.Send(happened);
            }
            catch (Exception fault) when (fault is IOException or ObjectDisposedException)
            {
                // Nobody listens any more; the lifeline ends this process.
            }
        }
    }
}
