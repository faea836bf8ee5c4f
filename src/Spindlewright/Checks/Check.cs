using System.Globalization;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Checks;

/// <summary>One published number and what leads to it.</summary>
/// <param name="Id">Name of the check.</param>
/// <param name="Area">motor, inverter, drilling, belt, hazard, heat or supply.</param>
/// <param name="Subject">Circuit, table or topic that it is about.</param>
/// <param name="Method">What the source computed with, such as "exact circuit"; may be empty.</param>
/// <param name="Inputs">What was put in.</param>
/// <param name="Quantity">What came out; an evaluator of this name computes it.</param>
/// <param name="Value">The published number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit; 1 for a plain ratio.</param>
/// <param name="Tolerance">How far a computed number may lie from it.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record Check(
    string Id, string Area, string Subject, string Method, CheckInputs Inputs, string Quantity, double Value,
    string Unit, CheckTolerance Tolerance, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>True where the number was read in the source or in a transcription of it.</summary>
    public bool CountsAsPublished => Citation.Provenance.CountsAsPublished();

    /// <summary>The table of checks.</summary>
    public static TableDefinition<Check> Definition { get; } = new(
        "checks",
        ["id", "area", "subject", "method", "inputs", "quantity", "value", "unit", "tolerance_relative",
            "tolerance_absolute", "tolerance_reason"],
        line => new(
            line.Text("id"),
            line.OneOf(
                "area", ("motor", "motor"), ("inverter", "inverter"), ("drilling", "drilling"), ("belt", "belt"),
                ("hazard", "hazard"), ("heat", "heat"), ("supply", "supply")),
            line.Text("subject"), line.TextOrEmpty("method"), CheckInputs.Parse(line), line.Text("quantity"),
            line.NumberIn("value"), line.Text("unit"), CheckTolerance.Read(line), line.Citation()));

    /// <summary>Reads the library's own checks.</summary>
    /// <param name="references">The bibliography that they cite.</param>
    /// <returns>The checks, in the order of their file.</returns>
    public static Table<Check> FromEmbedded(References references) =>
        TableReader.Read(Definition, EmbeddedTables.Read(Definition.File), references);
}

/// <summary>How far a computed number may lie from a published one, and why.</summary>
/// <param name="Relative">Share of the published number; null where the tolerance is absolute.</param>
/// <param name="Absolute">In the unit of the number; null where the tolerance is relative.</param>
/// <param name="Reason">Printed digits, the book's approximation, scatter of readings and the like.</param>
public sealed record CheckTolerance(double? Relative, double? Absolute, string Reason)
{
    /// <summary>The largest deviation from a number that still passes.</summary>
    /// <param name="value">The published number.</param>
    /// <returns>In the unit of the number.</returns>
    public double Allowed(double value) => Absolute ?? Math.Abs(value) * Relative!.Value;

    internal static CheckTolerance Read(TableLine line)
    {
        var relative = line.PositiveOrNull("tolerance_relative");
        var absolute = line.PositiveOrNull("tolerance_absolute");
        if (relative is null == absolute is null)
            throw line.Error("tolerance_relative", "exactly one of tolerance_relative and tolerance_absolute is given");
        return new(relative, absolute, line.Text("tolerance_reason"));
    }
}

/// <summary>What is put into a check: names with a number or a word. Immutable.</summary>
public sealed class CheckInputs
{
    private readonly Dictionary<string, string> values;

    private CheckInputs(Dictionary<string, string> values) => this.values = values;

    /// <summary>The names, in the order of the file.</summary>
    public IReadOnlyList<string> Names => [.. values.Keys];

    /// <summary>Whether a name is given.</summary>
    /// <param name="name">Such as "slip".</param>
    /// <returns>True where it is.</returns>
    public bool Has(string name) => values.ContainsKey(name);

    /// <summary>A word.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>The word.</returns>
    /// <exception cref="ArgumentException">The input is not given.</exception>
    public string Word(string name) => values.TryGetValue(name, out var word)
        ? word
        : throw new ArgumentException(
            $"the input '{name}' is not given; given: {string.Join(", ", values.Keys)}.", nameof(name));

    /// <summary>A number, in the unit that its name ends with.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>The number.</returns>
    /// <exception cref="ArgumentException">The input is not given or no number.</exception>
    public double Number(string name) =>
        double.TryParse(Word(name), NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new ArgumentException($"the input '{name}' is '{Word(name)}', which is no number.", nameof(name));

    /// <summary>A number that may be left out.</summary>
    /// <param name="name">Its name.</param>
    /// <returns>The number; null where it is not given.</returns>
    /// <exception cref="ArgumentException">The input is given but no number.</exception>
    public double? NumberOrNull(string name) => Has(name) ? Number(name) : null;

    /// <summary>The inputs as the file writes them.</summary>
    /// <returns>Such as "slip=0.05; frequency_hz=10".</returns>
    public override string ToString() => string.Join("; ", values.Select(pair => $"{pair.Key}={pair.Value}"));

    internal static CheckInputs Parse(TableLine line)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        var parts = line.TextOrEmpty("inputs").Split(
            ';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        foreach (var part in parts)
        {
            var equals = part.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || equals == part.Length - 1)
                throw line.Error("inputs", $"'{part}' is no name=value");
            if (!values.TryAdd(part[..equals].Trim(), part[(equals + 1)..].Trim()))
                throw line.Error("inputs", $"'{part[..equals]}' is given twice");
        }
        return new(values);
    }
}
