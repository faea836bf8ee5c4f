namespace Spindlewright.Foundations.Tables;

/// <summary>One figure that stands alone: a tolerance, a ratio, a rule.</summary>
/// <param name="Key">Short name.</param>
/// <param name="Quantity">What it is, in words.</param>
/// <param name="Low">Lower value; null where there is none.</param>
/// <param name="Value">The value; null where only a range or a rule is known.</param>
/// <param name="High">Upper value; null where there is none.</param>
/// <param name="Unit">Unit of the three; 1 for a plain ratio, empty for a rule without a number.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record FactRow(
    string Key, string Quantity, double? Low, double? Value, double? High, string Unit, Citation Citation) : ITableRow
{
    /// <summary>Defines a table of facts.</summary>
    /// <param name="name">Name of the table.</param>
    /// <returns>The definition.</returns>
    public static TableDefinition<FactRow> Define(string name) => new(
        name, ["key", "quantity", "value_low", "value", "value_high", "unit"],
        line => new(
            line.Text("key"), line.Text("quantity"), line.NumberOrNull("value_low"), line.NumberOrNull("value"),
            line.NumberOrNull("value_high"), line.TextOrEmpty("unit"), line.Citation()));

    /// <summary>The value with where it comes from.</summary>
    /// <returns>The value, in <see cref="Unit"/>.</returns>
    /// <exception cref="InvalidOperationException">The fact has no single value.</exception>
    public Sourced<double> Required() => Value is { } value
        ? Citation.On(value)
        : throw new InvalidOperationException($"the fact '{Key}' has a range or words, but no single value.");

    /// <summary>The range with where it comes from.</summary>
    /// <returns>Lower to upper value, in <see cref="Unit"/>.</returns>
    /// <exception cref="InvalidOperationException">The fact has no range.</exception>
    public Sourced<Interval> Range() => Low is { } low && High is { } high
        ? Citation.On(Interval.Of(low, high))
        : throw new InvalidOperationException($"the fact '{Key}' has no range of two ends.");
}

/// <summary>A figure of hand strength, friction or reaction time.</summary>
/// <param name="Key">Short name.</param>
/// <param name="Quantity">What it is, in words.</param>
/// <param name="Mean">Mean.</param>
/// <param name="StandardDeviation">Standard deviation.</param>
/// <param name="Percentile5">5th percentile.</param>
/// <param name="Percentile95">95th percentile.</param>
/// <param name="Low">Lower value of a range.</param>
/// <param name="High">Upper value of a range.</param>
/// <param name="Unit">Unit of all of them; 1 for a plain ratio, empty for a law.</param>
/// <param name="Sample">Who was measured; may be empty.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record HandRow(
    string Key, string Quantity, double? Mean, double? StandardDeviation, double? Percentile5, double? Percentile95,
    double? Low, double? High, string Unit, string Sample, Citation Citation) : ITableRow
{
    /// <summary>The table of figures.</summary>
    public static TableDefinition<HandRow> Definition { get; } = new(
        "hand",
        ["key", "quantity", "mean", "standard_deviation", "percentile_5", "percentile_95", "value_low", "value_high",
            "unit", "sample"],
        line => new(
            line.Text("key"), line.Text("quantity"), line.PositiveOrNull("mean"),
            line.PositiveOrNull("standard_deviation"), line.PositiveOrNull("percentile_5"),
            line.PositiveOrNull("percentile_95"), line.PositiveOrNull("value_low"), line.PositiveOrNull("value_high"),
            line.TextOrEmpty("unit"), line.TextOrEmpty("sample"), line.Citation()));
}

/// <summary>A published figure that computed ones are compared with.</summary>
/// <param name="Key">Short name.</param>
/// <param name="Figure">What it is, in words.</param>
/// <param name="Low">Lower value.</param>
/// <param name="Value">Value or mean.</param>
/// <param name="High">Upper value.</param>
/// <param name="StandardDeviation">Standard deviation.</param>
/// <param name="Unit">Unit of all of them; empty where there is no number.</param>
/// <param name="Measures">What was measured.</param>
/// <param name="Sample">On whom or what; may be empty.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record InjuryRow(
    string Key, string Figure, double? Low, double? Value, double? High, double? StandardDeviation, string Unit,
    string Measures, string Sample, Citation Citation) : ITableRow
{
    /// <summary>The table of figures.</summary>
    public static TableDefinition<InjuryRow> Definition { get; } = new(
        "injury",
        ["key", "figure", "value_low", "value", "value_high", "standard_deviation", "unit", "measures", "sample"],
        line => new(
            line.Text("key"), line.Text("figure"), line.PositiveOrNull("value_low"), line.PositiveOrNull("value"),
            line.PositiveOrNull("value_high"), line.PositiveOrNull("standard_deviation"), line.TextOrEmpty("unit"),
            line.Text("measures"), line.TextOrEmpty("sample"), line.Citation()));
}

/// <summary>A requirement or a law in words.</summary>
/// <param name="Key">Short name.</param>
/// <param name="Text">What it asks or says.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record RequirementRow(string Key, string Text, Citation Citation) : ITableRow
{
    /// <summary>The table of requirements.</summary>
    public static TableDefinition<RequirementRow> Definition { get; } = new(
        "requirements", ["key", "text"], line => new(line.Text("key"), line.Text("text"), line.Citation()));
}
