using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Foundations;

/// <summary>Writes JSON whose bytes do not change from run to run.</summary>
/// <remarks>
/// Keys sorted by ordinal order, indent 2, LF, numbers with 12 significant digits, a final newline. A number that is
/// not finite becomes null: a reader then sees that it is missing.
/// </remarks>
public static class StableJson
{
    private const int SignificantDigits = 12;

    // Text stays readable; it is escaped for HTML where HTML is written, not here.
    private static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes a tree.</summary>
    /// <param name="node">The tree.</param>
    /// <returns>UTF-8 text without a byte order mark.</returns>
    public static byte[] Write(JsonNode node)
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream, Options))
            Write(writer, node);
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>A number rounded to what is written, or null where it is not finite.</summary>
    /// <param name="value">The number.</param>
    /// <returns>A node.</returns>
    public static JsonNode? Number(double? value) =>
        value is { } number && double.IsFinite(number) ? JsonNode.Parse(Text(number)) : null;

    private static string Text(double value)
    {
        var text = value.ToString($"G{SignificantDigits}", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    private static void Write(Utf8JsonWriter writer, JsonNode? node)
    {
        switch (node)
        {
            case JsonObject members:
                writer.WriteStartObject();
                foreach (var (key, value) in members.OrderBy(member => member.Key, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(key);
                    Write(writer, value);
                }
                writer.WriteEndObject();
                break;
            case JsonArray items:
                writer.WriteStartArray();
                foreach (var item in items) Write(writer, item);
                writer.WriteEndArray();
                break;
            case JsonValue value when value.GetValueKind() == JsonValueKind.Number:
                writer.WriteRawValue(Encoding.UTF8.GetBytes(value.ToJsonString()));
                break;
            case null:
                writer.WriteNullValue();
                break;
            default:
                node.WriteTo(writer);
                break;
        }
    }
}
