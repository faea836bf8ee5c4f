using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>Checks the shape of a notebook of nbformat 4; the first fault is raised with its cell and field.</summary>
internal sealed class NotebookCheck
{
    private readonly string notebook;
    private string where = "";

    private NotebookCheck(string notebook) => this.notebook = notebook;

    internal static void Check(JsonObject root, string notebook, NotebookLimits limits)
    {
        var check = new NotebookCheck(notebook);
        check.Want(root, "nbformat_minor", IsCount, "a whole number of 0 or more");
        check.Want(root, "metadata", node => node is null or JsonObject, "an object");
        check.Want(root, "cells", node => node is JsonArray, "a list of cells");
        var cells = root["cells"]!.AsArray();
        if (cells.Count > limits.MostCells)
            throw check.Fault("cells", string.Create(CultureInfo.InvariantCulture, $"has {cells.Count} cells"),
                string.Create(CultureInfo.InvariantCulture, $"up to {limits.MostCells}"));
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var index = 0; index < cells.Count; index++)
            check.Cell(cells[index], index + 1, places);
    }

    private void Cell(JsonNode? node, int number, Dictionary<string, int> places)
    {
        where = string.Create(CultureInfo.InvariantCulture, $"cell {number}");
        if (node is not JsonObject cell)
            throw Fault("", $"is {JsonText.KindOf(node)}", "an object");
        if (cell.ContainsKey("id"))
            Id(cell, number, places);
        Want(cell, "cell_type", node => IsOneOf(node, "code", "markdown", "raw"), "\"code\", \"markdown\" or \"raw\"");
        Want(cell, "source", node => node is null || MultilineText.Is(node), "a string or a list of strings");
        Want(cell, "metadata", node => node is null or JsonObject, "an object");
        Want(cell, "attachments", node => node is null || IsBundles(node), "an object of objects by MIME type");
        if (cell["metadata"] is JsonObject metadata && metadata.ContainsKey("tags"))
            Want(metadata, "tags", node => node is JsonArray && MultilineText.Is(node), "a list of strings");
        if (IsOneOf(cell["cell_type"], "code"))
            Code(cell);
    }

    private void Id(JsonObject cell, int number, Dictionary<string, int> places)
    {
        Want(cell, "id", node => IsString(node) && CellIds.IsValid(node!.GetValue<string>()), CellIds.Accepted);
        var id = cell["id"]!.GetValue<string>();
        where = string.Create(CultureInfo.InvariantCulture, $"cell {number} (id \"{id}\")");
        if (!places.TryAdd(id, number))
            throw Fault("id", string.Create(CultureInfo.InvariantCulture, $"is the same as that of cell {places[id]}"),
                "an id of its own for each cell");
    }

    private void Code(JsonObject cell)
    {
        Want(cell, "execution_count", node => node is null || IsWhole(node), "a whole number or null");
        Want(cell, "outputs", node => node is null or JsonArray, "a list of outputs");
        if (cell["outputs"] is not JsonArray outputs)
            return;
        var cellWhere = where;
        for (var index = 0; index < outputs.Count; index++)
        {
            where = string.Create(CultureInfo.InvariantCulture, $"{cellWhere}, output {index + 1}");
            Output(outputs[index]);
        }
    }

    private void Output(JsonNode? node)
    {
        if (node is not JsonObject output)
            throw Fault("", $"is {JsonText.KindOf(node)}", "an object");
        Want(output, "output_type", kind => IsOneOf(kind, "stream", "display_data", "execute_result", "error"),
            "\"stream\", \"display_data\", \"execute_result\" or \"error\"");
        switch (output["output_type"]!.GetValue<string>())
        {
            case "stream":
                Want(output, "name", IsString, "a string");
                Want(output, "text", MultilineText.Is, "a string or a list of strings");
                break;
            case "error":
                Want(output, "ename", IsString, "a string");
                Want(output, "evalue", IsString, "a string");
                Want(output, "traceback", lines => lines is JsonArray && MultilineText.Is(lines), "a list of strings");
                break;
            default:
                Want(output, "data", IsBundle, "an object by MIME type, of strings, lists of strings or JSON");
                Want(output, "metadata", data => data is null or JsonObject, "an object");
                Want(output, "execution_count", count => count is null || IsWhole(count), "a whole number or null");
                break;
        }
    }

    private void Want(JsonObject owner, string field, Func<JsonNode?, bool> holds, string accepted)
    {
        if (!holds(owner[field]))
            throw Fault(field, $"is {Found(owner[field])}", accepted);
    }

    private NotebookFormatException Fault(string field, string found, string accepted)
    {
        var place = (where, field) switch
        {
            ("", _) => $"field \"{field}\"",
            (_, "") => where,
            _ => $"{where}, field \"{field}\"",
        };
        return new NotebookFormatException(notebook, place, $"{found}; accepted: {accepted}.");
    }

    private static string Found(JsonNode? node) =>
        IsString(node) ? $"\"{JsonText.Shorten(node!.GetValue<string>())}\"" : JsonText.KindOf(node);

    private static bool IsString(JsonNode? node) => node is JsonValue && node.GetValueKind() == JsonValueKind.String;

    private static bool IsOneOf(JsonNode? node, params ReadOnlySpan<string> words) =>
        IsString(node) && words.Contains(node!.GetValue<string>());

    private static bool IsWhole(JsonNode node) => node is JsonValue value && value.TryGetValue(out int _);

    private static bool IsCount(JsonNode? node) => node is JsonValue value && value.TryGetValue(out int count) && count >= 0;

    private static bool IsBundles(JsonNode node) => node is JsonObject map && map.All(pair => IsBundle(pair.Value));

    private static bool IsBundle(JsonNode? node) => node is JsonObject map
        && map.All(pair => pair.Key.EndsWith("json", StringComparison.Ordinal) || MultilineText.Is(pair.Value));
}
