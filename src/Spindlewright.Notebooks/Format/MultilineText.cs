using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>Text as notebooks store it: one string, or a list of lines that keep their line ends.</summary>
public static class MultilineText
{
    /// <summary>Says whether a node is a string or a list of strings.</summary>
    /// <param name="node">The node.</param>
    /// <returns>True for a string or a list of nothing but strings.</returns>
    public static bool Is(JsonNode? node) =>
        IsString(node) || (node is JsonArray list && list.All(IsString));

    /// <summary>Joins the lines.</summary>
    /// <param name="node">A string or a list of strings.</param>
    /// <returns>The text.</returns>
    public static string Join(JsonNode? node) => node switch
    {
        JsonArray list => string.Concat(list.Select(line => line!.GetValue<string>())),
        null => "",
        _ => node.GetValue<string>(),
    };

    /// <summary>Splits text into the list of lines that is stored.</summary>
    /// <param name="text">The text.</param>
    /// <returns>Lines with their line feeds; an empty list for empty text.</returns>
    public static JsonArray Split(string text)
    {
        var lines = new JsonArray();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[start..end]);
            start = end;
        }

        return lines;
    }

    private static bool IsString(JsonNode? node) => node is JsonValue && node.GetValueKind() == JsonValueKind.String;
}
