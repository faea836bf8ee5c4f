using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Spindlewright.Figures;

/// <summary>Writes a gap as <c>null</c>: JSON has no NaN, and a string would be drawn as a name.</summary>
internal sealed class GapArrayConverter : JsonConverter<ImmutableArray<double>>
{
    public override ImmutableArray<double> Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
            throw new JsonException("an array of numbers and nulls was expected");
        var values = ImmutableArray.CreateBuilder<double>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
            values.Add(reader.TokenType == JsonTokenType.Null ? double.NaN : reader.GetDouble());
        return values.ToImmutable();
    }

    public override void Write(Utf8JsonWriter writer, ImmutableArray<double> value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        foreach (var number in value)
            if (double.IsNaN(number))
                writer.WriteNullValue();
            else
                writer.WriteNumberValue(number);
        writer.WriteEndArray();
    }
}
