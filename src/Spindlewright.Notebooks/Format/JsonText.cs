using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>What the reader says about pieces of JSON, and the check that every string in them is text.</summary>
internal static class JsonText
{
    internal static string KindOf(JsonNode? node) => node switch
    {
        null => "missing or null",
        JsonObject => "an object",
        JsonArray => "a list",
        _ => node.GetValueKind() switch
        {
            JsonValueKind.String => "a string",
            JsonValueKind.Number => $"the number {Shorten(node.ToJsonString())}",
            JsonValueKind.True => "true",
            _ => "false",
        },
    };

    internal static string Shorten(string text) => text.Length <= 40 ? text : $"{text[..37]}...";

    /// <summary>Touches every name and string: half a surrogate pair parses as JSON and only fails when it is used.</summary>
    internal static void CheckAll(JsonNode? node, string notebook)
    {
        try
        {
            Touch(node);
        }
        catch (Exception fault) when (fault is InvalidOperationException or ArgumentException)
        {
            throw new NotebookFormatException(notebook, "",
                "holds a string that is not text (half of a surrogate pair); accepted: Unicode text.", fault);
        }
    }

    private static void Touch(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject map:
                foreach (var (_, value) in map)
                    Touch(value);
                break;
            case JsonArray list:
                foreach (var value in list)
                    Touch(value);
                break;
            case JsonValue value when value.GetValueKind() == JsonValueKind.String:
                value.GetValue<string>();
                break;
        }
    }
}
