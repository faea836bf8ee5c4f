using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Runs the cells that clients send.</summary>
/// <param name="session">Where they run.</param>
/// <param name="history">Keeps them.</param>
/// <param name="help">Answers cells that are a question.</param>
/// <param name="drawing">Draws figures.</param>
internal sealed partial class CellExecution(
    CellSession session, InputHistory history, LanguageHelp help, IOutputTransformer drawing)
{
    private readonly string kernelName = Guid.NewGuid().ToString("N")[..8];
    private int count;

    /// <summary>Runs one cell and makes the answer.</summary>
    /// <param name="exchange">The request.</param>
    /// <returns>The answer, and whether the cells that wait behind this one are not to be run.</returns>
    /// <exception cref="RequestException">The request does not say what it must.</exception>
    internal async Task<(JsonObject Reply, bool StopOthers)> RunAsync(Exchange exchange)
    {
        var asked = Asked.Of(exchange.Content);
        var isBlank = string.IsNullOrWhiteSpace(asked.Code);
        var number = isBlank ? Math.Max(count, 1) : count + 1;
        var payload = new JsonArray();
        ErrorEvent? error = null;
        if (!isBlank)
        {
            Begin(exchange, asked, number);
            error = await RunAsync(exchange, asked, number, payload).ConfigureAwait(false);
        }

        var reply = error is null
            ? new JsonObject { ["status"] = "ok" }
            : Exchange.Refusal(error.Name, error.Message, error.Traceback);
        reply["execution_count"] = number;
        reply["payload"] = payload;
        reply["user_expressions"] = error is null ? await EvaluateAsync(asked.Expressions, number).ConfigureAwait(false) : [];
        return (reply, error is not null && asked.StopOnError);
    }

    /// <summary>The answer for a cell that is not run, because one before it failed.</summary>
    internal JsonObject Aborted() => new() { ["status"] = "aborted", ["execution_count"] = count };

    private void Begin(Exchange exchange, Asked asked, int number)
    {
        if (asked.IsStored)
        {
            count = number;
            history.Add(number, asked.Code);
        }

        if (!asked.IsSilent)
            exchange.Publish("execute_input", new JsonObject { ["code"] = asked.Code, ["execution_count"] = number });
    }

    private async Task<ErrorEvent?> RunAsync(Exchange exchange, Asked asked, int number, JsonArray payload)
    {
        if (asked.IsSilent)
            return await session.RunAsync(asked.Code, number, _ => { }).ConfigureAwait(false);
        using var relay = new OutputRelay(
            exchange, number, drawing, FormattableString.Invariant($"{kernelName}-{session.Generation}-"));
        if (Question().Match(asked.Code) is { Success: true } question)
        {
            await AnswerAsync(question.Groups["name"].Value, relay, payload).ConfigureAwait(false);
            return relay.Finish(null);
        }

        var error = relay.Finish(await session.RunAsync(asked.Code, number, relay.Take).ConfigureAwait(false));
        if (asked.IsStored)
            history.SetOutput(relay.Result);
        return error;
    }

    /// <summary>What is known of a name goes to the reader's pager, as the protocol calls it.</summary>
    private async Task AnswerAsync(string name, OutputRelay relay, JsonArray payload)
    {
        if (await help.ExplainAsync(name, name.Length, full: false).ConfigureAwait(false) is not { } told)
        {
            relay.Take(new StreamEvent(0, StreamName.Stderr, $"Nothing is known of \"{name}\".\n"));
            return;
        }

        payload.Add(new JsonObject { ["source"] = "page", ["data"] = told, ["start"] = 0 });
    }

    private async Task<JsonObject> EvaluateAsync(IReadOnlyDictionary<string, string> expressions, int number)
    {
        var values = new JsonObject();
        foreach (var (name, code) in expressions)
        {
            MimeBundle? value = null;
            var error = await session.RunAsync(code, number, happened => value = (happened as ReturnEvent)?.Data ?? value)
                .ConfigureAwait(false);
            if (error is null && value is null)
                error = new EngineLoss("NoValue", $"\"{code}\" has no value.").ToError(number);
            values[name] = error is null
                ? new JsonObject
                {
                    ["status"] = "ok",
                    ["data"] = OutputNodes.Data(drawing.Transform(value!), inLines: false),
                    ["metadata"] = new JsonObject(),
                }
                : Exchange.Refusal(error.Name, error.Message, error.Traceback);
        }

        return values;
    }

    /// <summary>A name with a question mark before or behind it, which is no C#.</summary>
    [GeneratedRegex(@"^\s*(?:\?\s*(?<name>[\p{L}_][\p{L}\p{N}_.]*)|(?<name>[\p{L}_][\p{L}\p{N}_.]*)\s*\?)\s*$")]
    private static partial Regex Question();

    /// <summary>What a request asks.</summary>
    private sealed record Asked(
        string Code, bool IsSilent, bool IsStored, bool StopOnError, IReadOnlyDictionary<string, string> Expressions)
    {
        internal static Asked Of(JsonObject content)
        {
            var isSilent = content.Flag("silent", missing: false);
            var expressions = content["user_expressions"] switch
            {
                null => [],
                JsonObject bag => bag.ToDictionary(each => each.Key, each => bag.Text(each.Key)),
                _ => throw new RequestException("\"user_expressions\" is not an object."),
            };
            return new(
                content.Text("code"), isSilent, !isSilent && content.Flag("store_history", missing: true),
                content.Flag("stop_on_error", missing: true), expressions);
        }
    }
}
