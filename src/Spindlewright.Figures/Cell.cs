using System.Text.Json;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>One cell of a table: a number, words, or nothing.</summary>
/// <remarks>A number keeps its digits; the column decides how many are printed.</remarks>
[JsonConverter(typeof(CellConverter))]
public readonly record struct Cell
{
    private Cell(double? number, string? words) => (Number, Words) = (number, words);

    /// <summary>The empty cell.</summary>
    public static Cell Empty => default;

    /// <summary>The number, in the column's unit; null where there is none.</summary>
    public double? Number { get; }

    /// <summary>The words; null where there are none.</summary>
    public string? Words { get; }

    /// <summary>A number; NaN gives the empty cell.</summary>
    /// <param name="number">Finite, in the column's unit.</param>
    /// <returns>The cell.</returns>
    /// <exception cref="PartException">Infinite.</exception>
    public static Cell Of(double number) =>
        double.IsNaN(number) ? Empty : new(Guard.Finite(number, "cell", "number"), null);

    /// <summary>Words.</summary>
    /// <param name="words">Such as "not determined".</param>
    /// <returns>The cell.</returns>
    public static Cell Of(string? words) => string.IsNullOrEmpty(words) ? Empty : new(null, words);

    /// <summary>A number as a cell.</summary>
    /// <param name="number">Finite, in the column's unit.</param>
    public static implicit operator Cell(double number) => Of(number);

    /// <summary>Words as a cell.</summary>
    /// <param name="words">The words.</param>
    public static implicit operator Cell(string? words) => Of(words);

    private sealed class CellConverter : JsonConverter<Cell>
    {
        public override Cell Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions options) =>
            reader.TokenType switch
            {
                JsonTokenType.Null => Empty,
                JsonTokenType.Number => Of(reader.GetDouble()),
                JsonTokenType.String => Of(reader.GetString()),
                _ => throw new JsonException("a cell is a number, a string or null"),
            };

        public override void Write(Utf8JsonWriter writer, Cell value, JsonSerializerOptions options)
        {
            if (value.Number is { } number)
                writer.WriteNumberValue(number);
            else if (value.Words is { } words)
                writer.WriteStringValue(words);
            else
                writer.WriteNullValue();
        }

        public override bool HandleNull => true;
    }
}
