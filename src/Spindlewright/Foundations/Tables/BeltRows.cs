using UnitsNet;

namespace Spindlewright.Foundations.Tables;

/// <summary>A section of V-belts.</summary>
/// <param name="Id">Its letters, such as "A".</param>
/// <param name="Name">Words for a reader.</param>
/// <param name="TopWidth">Width at the top.</param>
/// <param name="Mass">Mass a length.</param>
/// <param name="LeastPulley">Least datum diameter of a pulley.</param>
/// <param name="SmallGroove">Groove angle up to <paramref name="GrooveStep"/>.</param>
/// <param name="LargeGroove">Groove angle above it.</param>
/// <param name="GrooveStep">Datum diameter at which the groove angle changes.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record BeltProfileRow(
    string Id, string Name, Length TopWidth, LinearDensity Mass, Length LeastPulley, Angle SmallGroove, Angle LargeGroove,
    Length GrooveStep, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => Id;

    /// <summary>The table of sections.</summary>
    public static TableDefinition<BeltProfileRow> Definition { get; } = new(
        "belt-profiles",
        ["id", "name", "top_width_mm", "mass_kg_per_m", "least_pulley_mm", "groove_small_deg", "groove_large_deg",
            "groove_step_mm"],
        line => new(
            line.Text("id"), line.Text("name"), Length.FromMillimeters(line.Positive("top_width_mm")),
            LinearDensity.FromKilogramsPerMeter(line.Positive("mass_kg_per_m")),
            Length.FromMillimeters(line.Positive("least_pulley_mm")), Angle.FromDegrees(line.Positive("groove_small_deg")),
            Angle.FromDegrees(line.Positive("groove_large_deg")), Length.FromMillimeters(line.Positive("groove_step_mm")),
            line.Citation()));

    /// <summary>Angle of the groove of a pulley.</summary>
    /// <param name="datumDiameter">Its datum diameter.</param>
    /// <returns>The full angle between the flanks.</returns>
    public Angle Groove(Length datumDiameter) => datumDiameter <= GrooveStep ? SmallGroove : LargeGroove;
}

/// <summary>A datum diameter in which grooved pulleys are sold.</summary>
/// <param name="Diameter">The diameter.</param>
/// <param name="Citation">Where it comes from.</param>
public sealed record PulleyDiameterRow(Length Diameter, Citation Citation) : ITableRow
{
    /// <inheritdoc/>
    public string Key => FormattableString.Invariant($"{Diameter.Millimeters:0}");

    /// <summary>The table of diameters.</summary>
    public static TableDefinition<PulleyDiameterRow> Definition { get; } = new(
        "pulley-diameters", ["diameter_mm"],
        line => new(Length.FromMillimeters(line.Positive("diameter_mm")), line.Citation()));
}
