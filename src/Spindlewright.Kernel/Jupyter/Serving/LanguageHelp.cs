using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Completion, explanation and completeness of code; places are code points, as the protocol counts.</summary>
/// <param name="session">Knows the variables and the library.</param>
internal sealed class LanguageHelp(CellSession session)
{
    private const string Markdown = "text/markdown";

    /// <summary>Says what could stand at a place.</summary>
    internal async Task<JsonObject> CompleteAsync(JsonObject request)
    {
        var (code, units) = PlaceOf(request);
        var (line, column) = CodePoints.Place(code, units);
        var found = await session.AskAsync<CompletionsEvent>(id => new CompleteRequest(id, code, line, column))
            .ConfigureAwait(false) ?? new CompletionsEvent(0, [], units, units);
        var (start, end) = (CodePoints.FromUnits(code, found.Start), CodePoints.FromUnits(code, found.End));
        var items = found.Items.DistinctBy(item => item.Insert).ToList();
        return new JsonObject
        {
            ["status"] = "ok",
            ["matches"] = new JsonArray([.. items.Select(item => (JsonNode)item.Insert)]),
            ["cursor_start"] = start,
            ["cursor_end"] = end,
            ["metadata"] = new JsonObject
            {
                // The name is the clients': they show the kind of each match.
                ["_jupyter_types_experimental"] = new JsonArray([.. items.Select(item => (JsonNode)Typed(item, start, end))]),
            },
        };
    }

    /// <summary>Says what stands at a place, or how the call around it is made.</summary>
    internal async Task<JsonObject> InspectAsync(JsonObject request)
    {
        var (code, units) = PlaceOf(request);
        var told = await ExplainAsync(code, units, request.Number("detail_level") > 0).ConfigureAwait(false);
        return new JsonObject
        {
            ["status"] = "ok",
            ["found"] = told is not null,
            ["data"] = told ?? [],
            ["metadata"] = new JsonObject(),
        };
    }

    /// <summary>Says whether code is whole.</summary>
    internal async Task<JsonObject> IsCompleteAsync(JsonObject request)
    {
        var code = request.Text("code");
        var told = await session.AskAsync<CompletenessEvent>(id => new IsCompleteRequest(id, code)).ConfigureAwait(false);
        var answer = new JsonObject
        {
            ["status"] = told?.State switch
            {
                Completeness.Complete => "complete",
                Completeness.Incomplete => "incomplete",
                Completeness.Invalid => "invalid",
                _ => "unknown",
            },
        };
        if (told?.State == Completeness.Incomplete)
            answer["indent"] = told.Indent;
        return answer;
    }

    /// <summary>Explains what stands at a place; null when there is nothing to say.</summary>
    /// <param name="code">The code.</param>
    /// <param name="units">The place, UTF-16 units.</param>
    /// <param name="full">True to add the call around the place to the name at the place.</param>
    internal async Task<JsonObject?> ExplainAsync(string code, int units, bool full)
    {
        var (line, column) = CodePoints.Place(code, units);
        var hover = await session.AskAsync<HoverEvent>(id => new HoverRequest(id, code, line, column)).ConfigureAwait(false);
        // A client asks with the cursor behind the name as well as in it.
        if (hover is null && column > 0)
            hover = await session.AskAsync<HoverEvent>(id => new HoverRequest(id, code, line, column - 1)).ConfigureAwait(false);
        var call = hover is null || full
            ? await session.AskAsync<SignaturesEvent>(id => new SignatureRequest(id, code, line, column)).ConfigureAwait(false)
            : null;
        string?[] parts = [hover?.Data.Find(MimeBundle.PlainText), call is null ? null : Told(call)];
        var text = string.Join("\n\n", parts.Where(part => !string.IsNullOrWhiteSpace(part)));
        return text.Length == 0 ? null : new JsonObject { [MimeBundle.PlainText] = text, [Markdown] = InMarkdown(text) };
    }

    /// <summary>The ways to call, the one meant first, with the parameter at the cursor marked.</summary>
    private static string Told(SignaturesEvent call)
    {
        var text = new StringBuilder();
        var meant = Math.Clamp(call.Active, 0, call.Items.Count - 1);
        foreach (var (index, signature) in call.Items.Index().OrderBy(each => each.Index == meant ? 0 : 1))
        {
            text.Append(text.Length > 0 ? "\n\n" : "").Append(signature.Label);
            if (signature.Documentation.Length > 0)
                text.Append(CultureInfo.InvariantCulture, $"\n{signature.Documentation}");
            if (index == meant && call.ActiveParameter >= 0 && call.ActiveParameter < signature.Parameters.Count)
                text.Append(CultureInfo.InvariantCulture, $"\nHere: {signature.Parameters[call.ActiveParameter].Label}");
        }

        return text.ToString();
    }

    /// <summary>The first line is code, the rest prose.</summary>
    private static string InMarkdown(string text)
    {
        var end = text.IndexOf('\n');
        return end < 0 ? $"```csharp\n{text}\n```" : $"```csharp\n{text[..end]}\n```\n\n{text[(end + 1)..]}";
    }

    private static (string Code, int Units) PlaceOf(JsonObject request)
    {
        var code = request.Text("code");
        return (code, request.Number("cursor_pos") is { } points ? CodePoints.ToUnits(code, points) : code.Length);
    }

    private static JsonObject Typed(Completion item, int start, int end) => new JsonObject
    {
        ["text"] = item.Insert,
        ["type"] = item.Kind.ToLowerInvariant(),
        ["start"] = start,
        ["end"] = end,
    };
}
