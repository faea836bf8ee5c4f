using System.Text.Json;
using System.Text.Json.Serialization;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Figures and tables as JSON, so that one process can make a record and another draw it.</summary>
/// <remarks>Gaps are <c>null</c>. What is read is checked as if it had been made here.</remarks>
public static class FigureJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter() },
        MaxDepth = 32,
    };

    /// <summary>Writes a figure.</summary>
    /// <param name="figure">The figure.</param>
    /// <returns>One line of JSON.</returns>
    public static string Write(Figure figure) => JsonSerializer.Serialize(figure, Options);

    /// <summary>Writes a table.</summary>
    /// <param name="table">The table.</param>
    /// <returns>One line of JSON.</returns>
    public static string Write(Table table) => JsonSerializer.Serialize(table, Options);

    /// <summary>Reads a figure.</summary>
    /// <param name="json">What <see cref="Write(Figure)"/> wrote.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="FormatException">Not such JSON; the message says where.</exception>
    /// <exception cref="PartException">A figure that cannot be drawn truthfully.</exception>
    public static Figure ReadFigure(string json) => Read<Figure>(json, "figure");

    /// <summary>Reads a table.</summary>
    /// <param name="json">What <see cref="Write(Table)"/> wrote.</param>
    /// <returns>The table.</returns>
    /// <exception cref="FormatException">Not such JSON; the message says where.</exception>
    /// <exception cref="PartException">A table whose rows do not fit its columns.</exception>
    public static Table ReadTable(string json) => Read<Table>(json, "table");

    private static T Read<T>(string json, string what)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(json, Options) ?? throw new FormatException(
                $"This JSON is null, no {what}.");
        }
        catch (Exception fault) when (fault is JsonException or NotSupportedException or NullReferenceException)
        {
            throw new FormatException($"This JSON is no {what}: {fault.Message}", fault);
        }
    }
}
