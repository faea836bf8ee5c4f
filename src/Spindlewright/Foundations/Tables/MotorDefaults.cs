using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>A default for one side of a question, for some powers and poles.</summary>
/// <param name="Item">What it is, such as "breakdown torque".</param>
/// <param name="Side">The side that it serves.</param>
/// <param name="Poles">The pole number it holds for; null for any.</param>
/// <param name="PowerAbove">Rated powers above this; null from zero.</param>
/// <param name="PowerUpTo">Rated powers up to this; null for any.</param>
/// <param name="Value">The value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">Its unit; pu is per unit of the rated value, 1 a plain ratio.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record MotorDefaultRow(
    string Item, Side Side, int? Poles, Power? PowerAbove, Power? PowerUpTo, double Value, string Unit,
    Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key =>
        Item + (Side == Side.Capability ? ", capability" : ", hazard")
        + (Poles is { } poles ? FormattableString.Invariant($", {poles} poles") : "")
        + (PowerUpTo is { } most ? FormattableString.Invariant($", to {most.Kilowatts:G6} kW") : "");

    /// <summary>The table of defaults.</summary>
    public static TableDefinition<MotorDefaultRow> Definition { get; } = new(
        "motor-defaults", ["item", "side", "poles", "power_above_kw", "power_up_to_kw", "value", "unit"],
        line => new(
            line.Text("item"), line.OneOf("side", ("capability", Side.Capability), ("hazard", Side.Hazard)),
            line.WholeNumberOrNull("poles"), Kilowatts(line.PositiveOrNull("power_above_kw")),
            Kilowatts(line.PositiveOrNull("power_up_to_kw")), line.NumberIn("value"), line.Text("unit"),
            line.Citation()));

    /// <summary>Whether the row holds for a motor.</summary>
    /// <param name="poles">Its pole number; null where unknown.</param>
    /// <param name="ratedPower">Its rated power; null where unknown.</param>
    /// <returns>True where it does; a row for one pole number or band never holds for an unknown one.</returns>
    public bool HoldsFor(int? poles, Power? ratedPower) =>
        (Poles is null || Poles == poles)
        && (PowerAbove is not { } least || (ratedPower is { } above && above > least))
        && (PowerUpTo is not { } most || (ratedPower is { } upTo && upTo <= most));

    private static Power? Kilowatts(double? kilowatts) => kilowatts is { } given ? Power.FromKilowatts(given) : null;
}

/// <summary>Defaults as pairs, one value for "will it drill", one for "what could a hand meet". Immutable.</summary>
/// <param name="Rows">The rows, one a side.</param>
public sealed record MotorDefaults(Table<MotorDefaultRow> Rows)
{
    /// <summary>The names of the defaults.</summary>
    public IReadOnlyList<string> Items => [.. Rows.Select(row => row.Item).Distinct()];

    /// <summary>Both sides of a default.</summary>
    /// <param name="item">Its name.</param>
    /// <param name="poles">Pole number of the motor, where the default depends on it.</param>
    /// <param name="ratedPower">Rated power of the motor, where the default depends on it.</param>
    /// <returns>The pair, each with its provenance, in the unit that <see cref="UnitOf"/> names.</returns>
    /// <exception cref="UnknownRowException">No such default.</exception>
    /// <exception cref="PartException">No row holds for such a motor.</exception>
    public Sided<Sourced<double>> Pair(string item, int? poles = null, Power? ratedPower = null) =>
        new(On(item, Side.Capability, poles, ratedPower), On(item, Side.Hazard, poles, ratedPower));

    /// <summary>One side of a default.</summary>
    /// <param name="item">Its name.</param>
    /// <param name="side">The side.</param>
    /// <param name="poles">Pole number of the motor, where the default depends on it.</param>
    /// <param name="ratedPower">Rated power of the motor, where the default depends on it.</param>
    /// <returns>The value with its provenance, in the unit that <see cref="UnitOf"/> names.</returns>
    /// <exception cref="UnknownRowException">No such default.</exception>
    /// <exception cref="PartException">No row holds for such a motor.</exception>
    public Sourced<double> On(string item, Side side, int? poles = null, Power? ratedPower = null)
    {
        RequireKnown(item);
        var row = Rows.FirstOrDefault(row => row.Item == item && row.Side == side && row.HoldsFor(poles, ratedPower));
        if (row is not null) return row.Citation.On(row.Value);
        var poleWords = poles is { } known ? FormattableString.Invariant($"{known} poles") : "poles unknown";
        var powerWords = ratedPower is { } rated
            ? FormattableString.Invariant($"{rated.Kilowatts:G4} kW")
            : "power unknown";
        throw new PartException(
            "motor defaults", item, $"asked for {poleWords}, {powerWords}",
            "a motor and a side that a row of data/motor-defaults.csv covers");
    }

    /// <summary>The unit of a default.</summary>
    /// <param name="item">Its name.</param>
    /// <returns>The unit; pu is per unit of the rated value, 1 a plain ratio.</returns>
    /// <exception cref="UnknownRowException">No such default.</exception>
    public string UnitOf(string item)
    {
        RequireKnown(item);
        return Rows.First(row => row.Item == item).Unit;
    }

    private void RequireKnown(string item)
    {
        if (!Items.Contains(item)) throw new UnknownRowException(Rows.Name, item, Items);
    }
}
