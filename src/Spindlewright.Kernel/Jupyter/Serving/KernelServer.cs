using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Spindlewright.Kernel.Jupyter.Wire;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Serves Jupyter clients until one of them asks it to end, or whoever started it is gone.</summary>
internal sealed class KernelServer : IAsyncDisposable
{
    private readonly Action<string> log;
    private readonly WireFormat format;
    private readonly RequestQueue shellRequests = new();
    private readonly Channel<WireMessage> controlRequests = Channel.CreateUnbounded<WireMessage>();
    private readonly CancellationTokenSource ending = new();
    private readonly CellSession session;
    private readonly CellExecution execution;
    private readonly InputHistory history = new();
    private readonly LanguageHelp help;
    private readonly KernelSockets sockets;

    /// <summary>Listens, and starts the process for cells.</summary>
    /// <param name="at">Where.</param>
    /// <param name="engine">Runs cells.</param>
    /// <param name="drawing">Draws figures.</param>
    /// <param name="log">Receives what a person who looks for a fault wants to know.</param>
    internal KernelServer(ConnectionFile at, IExecutionEngine engine, IOutputTransformer drawing, Action<string> log)
    {
        this.log = log;
        format = new WireFormat(new Signer(at.Key));
        sockets = new KernelSockets(
            at, frames => Read(frames, shellRequests.Add), frames => Read(frames, message => controlRequests.Writer.TryWrite(message)));
        session = new CellSession(engine);
        help = new LanguageHelp(session);
        execution = new CellExecution(session, history, help, drawing);
    }

    /// <summary>Serves.</summary>
    /// <param name="cancellation">Ends it.</param>
    internal async Task ServeAsync(CancellationToken cancellation)
    {
        await using var _ = cancellation.Register(ending.Cancel).ConfigureAwait(false);
        var starting = new JsonObject { ["execution_state"] = "starting" };
        sockets.Publish(format.Write([Encoding.UTF8.GetBytes("status")], "status", null, starting));
        var control = UntilEndAsync(ServeControlAsync);
        await UntilEndAsync(ServeShellAsync).ConfigureAwait(false);
        await control.ConfigureAwait(false);
    }

    /// <summary>Ends the process for cells and lets go of the ports.</summary>
    public async ValueTask DisposeAsync()
    {
        await ending.CancelAsync().ConfigureAwait(false);
        await session.DisposeAsync().ConfigureAwait(false);
        sockets.Dispose();
        shellRequests.Dispose();
        ending.Dispose();
    }

    private void Read(List<byte[]> frames, Action<WireMessage> take)
    {
        if (format.TryRead(frames, out var message, out var fault))
            take(message);
        else
            log($"A message was dropped: {fault}.");
    }

    /// <summary>Whichever of the two loops ends takes the other with it.</summary>
    private async Task UntilEndAsync(Func<Task> loop)
    {
        try
        {
            await loop().WaitAsync(ending.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (ending.IsCancellationRequested)
        {
        }
        finally
        {
            await ending.CancelAsync().ConfigureAwait(false);
        }
    }

    private async Task ServeShellAsync()
    {
        while (true)
        {
            var queued = await shellRequests.TakeAsync(ending.Token).ConfigureAwait(false);
            var exchange = new Exchange(queued.Message, format, sockets, OnControl: false);
            await BusyAsync(exchange, () => queued.IsAborted
                ? Reply(exchange, execution.Aborted())
                : AnswerAsync(exchange)).ConfigureAwait(false);
        }
    }

    private async Task ServeControlAsync()
    {
        await foreach (var request in controlRequests.Reader.ReadAllAsync(ending.Token).ConfigureAwait(false))
        {
            var exchange = new Exchange(request, format, sockets, OnControl: true);
            await BusyAsync(exchange, () => AnswerAsync(exchange)).ConfigureAwait(false);
        }
    }

    private async Task BusyAsync(Exchange exchange, Func<Task> answer)
    {
        exchange.PublishState("busy");
        try
        {
            await answer().ConfigureAwait(false);
        }
        catch (RequestException wrong)
        {
            var message = $"{exchange.Request.Type}: {wrong.Message}";
            exchange.Reply(Exchange.Refusal("InvalidRequest", message, [message]));
        }
#pragma warning disable CA1031 // Whatever goes wrong with one request is told to its client, and the kernel goes on.
        catch (Exception fault) when (fault is not OperationCanceledException)
#pragma warning restore CA1031
        {
            log($"{exchange.Request.Type} failed: {fault}");
            exchange.Reply(Exchange.Refusal(fault.GetType().Name, fault.Message, [fault.Message]));
        }

        exchange.PublishState("idle");
        if (exchange.Request.Type == RequestTypes.Shutdown)
            await ending.CancelAsync().ConfigureAwait(false);
    }

    private async Task AnswerAsync(Exchange exchange)
    {
        var content = exchange.Content;
        await (exchange.Request.Type switch
        {
            RequestTypes.KernelInfo => Reply(exchange, KernelFacts.Answer()),
            RequestTypes.Execute when !exchange.OnControl => ExecuteAsync(exchange),
            RequestTypes.IsComplete when !exchange.OnControl => ReplyAsync(exchange, help.IsCompleteAsync(content)),
            RequestTypes.Complete when !exchange.OnControl => ReplyAsync(exchange, help.CompleteAsync(content)),
            RequestTypes.Inspect when !exchange.OnControl => ReplyAsync(exchange, help.InspectAsync(content)),
            RequestTypes.History when !exchange.OnControl => Reply(exchange, history.Answer(content)),
            RequestTypes.CommInfo => Reply(exchange, new JsonObject { ["status"] = "ok", ["comms"] = new JsonObject() }),
            RequestTypes.CommOpen => RefuseComm(exchange),
            RequestTypes.Interrupt => Interrupt(exchange),
            RequestTypes.Shutdown => Shutdown(exchange),
            var other => Ignore(other),
        }).ConfigureAwait(false);
    }

    private async Task ExecuteAsync(Exchange exchange)
    {
        var (reply, stopOthers) = await execution.RunAsync(exchange).ConfigureAwait(false);
        if (stopOthers)
        {
            // What the client had sent before it could know of the failure is not run; what it sends afterwards is.
            var received = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            sockets.AfterReceiving(() =>
            {
                shellRequests.Abort(exchange.Request.Session);
                received.SetResult();
            });
            await received.Task.ConfigureAwait(false);
        }

        exchange.Reply(reply);
    }

    private static async Task ReplyAsync(Exchange exchange, Task<JsonObject> answer) =>
        exchange.Reply(await answer.ConfigureAwait(false));

    private static Task Reply(Exchange exchange, JsonObject answer)
    {
        exchange.Reply(answer);
        return Task.CompletedTask;
    }

    /// <summary>This kernel has no widgets: whoever opens a channel for one is told that it is closed.</summary>
    private static Task RefuseComm(Exchange exchange)
    {
        exchange.Publish("comm_close", new JsonObject { ["comm_id"] = exchange.Content.Text("comm_id"), ["data"] = new JsonObject() });
        return Task.CompletedTask;
    }

    /// <summary>Answers at once; a cell that does not stop when asked must not keep a shutdown waiting.</summary>
    private Task Interrupt(Exchange exchange)
    {
        _ = session.InterruptAsync().ContinueWith(
            failed => log(string.Create(CultureInfo.InvariantCulture, $"Interrupting failed: {failed.Exception?.InnerException?.Message}")),
            CancellationToken.None, TaskContinuationOptions.OnlyOnFaulted, TaskScheduler.Default);
        return Reply(exchange, new JsonObject { ["status"] = "ok" });
    }

    private static Task Shutdown(Exchange exchange)
    {
        var answer = new JsonObject { ["status"] = "ok", ["restart"] = exchange.Content.Flag("restart", missing: false) };
        exchange.Publish("shutdown_reply", answer.DeepClone().AsObject());
        return Reply(exchange, answer);
    }

    private Task Ignore(string type)
    {
        log($"A message of the kind \"{type}\" was ignored.");
        return Task.CompletedTask;
    }
}
