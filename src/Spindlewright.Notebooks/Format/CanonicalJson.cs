using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>Writes JSON the way nbformat stores notebooks: keys sorted, indent 1, text unescaped, one final newline.</summary>
/// <remarks>
/// Written by hand because <see cref="Utf8JsonWriter"/> escapes characters outside the basic plane, whatever its
/// encoder, and a notebook that another program stored would then change its bytes when it passes through here.
/// Numbers keep the digits they were read with.
/// </remarks>
public static class CanonicalJson
{
    /// <summary>Writes a node and a final newline as UTF-8.</summary>
    /// <param name="node">The node; null is JSON's null.</param>
    /// <returns>The bytes, without a byte-order mark.</returns>
    public static byte[] ToBytes(JsonNode? node)
    {
        var text = new StringBuilder();
        Write(text, node, 0);
        text.Append('\n');
        return new UTF8Encoding(false).GetBytes(text.ToString());
    }

    private static void Write(StringBuilder text, JsonNode? node, int depth)
    {
        switch (node)
        {
            case JsonObject map:
                WriteObject(text, map, depth);
                break;
            case JsonArray list:
                WriteList(text, list, depth);
                break;
            case null:
                text.Append("null");
                break;
            default:
                WriteValue(text, node.AsValue());
                break;
        }
    }

    private static void WriteObject(StringBuilder text, JsonObject map, int depth)
    {
        if (map.Count == 0)
        {
            text.Append("{}");
            return;
        }

        var separator = "{";
        foreach (var (key, value) in map.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            text.Append(separator);
            Indent(text, depth + 1);
            WriteString(text, key);
            text.Append(": ");
            Write(text, value, depth + 1);
            separator = ",";
        }

        Indent(text, depth);
        text.Append('}');
    }

    private static void WriteList(StringBuilder text, JsonArray list, int depth)
    {
        if (list.Count == 0)
        {
            text.Append("[]");
            return;
        }

        var separator = "[";
        foreach (var value in list)
        {
            text.Append(separator);
            Indent(text, depth + 1);
            Write(text, value, depth + 1);
            separator = ",";
        }

        Indent(text, depth);
        text.Append(']');
    }

    private static void WriteValue(StringBuilder text, JsonValue value)
    {
        if (value.GetValueKind() == JsonValueKind.String)
            WriteString(text, value.GetValue<string>());
        else
            text.Append(value.ToJsonString());
    }

    private static void WriteString(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (var c in value)
        {
            _ = c switch
            {
                '"' => text.Append("\\\""),
                '\\' => text.Append("\\\\"),
                '\n' => text.Append("\\n"),
                '\r' => text.Append("\\r"),
                '\t' => text.Append("\\t"),
                '\f' => text.Append("\\f"),
                '\b' => text.Append("\\b"),
                < ' ' => text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}"),
                _ => text.Append(c),
            };
        }

        text.Append('"');
    }

    private static void Indent(StringBuilder text, int depth) => text.Append('\n').Append(' ', depth);
}
