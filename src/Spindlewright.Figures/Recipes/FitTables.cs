using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using Spindlewright.Motors.Plates;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Tables of fitted motor circuits: what they reach, what they are, and what stood in for missing figures.</summary>
public static class FitTables
{
    /// <summary>Each target with what was reached, both sides.</summary>
    /// <param name="fits">One fit a side; null where a circuit was given.</param>
    /// <returns>The table; without rows where there are no fits.</returns>
    public static Table Targets(Sided<NameplateFit>? fits) => new(
        "fit", "What the fitted motor circuits reach",
        [
            Name("quantity"), new("wanted, capability side", Format: new(Significant: 4)), new("reached", Format: new(Significant: 4)),
            new("residual", "%", Format: OneDecimal), new("wanted, hazard side", Format: new(Significant: 4)),
            new("reached", Format: new(Significant: 4)), new("residual", "%", Format: OneDecimal), Name("unit"), Name("use"),
        ],
        [.. (fits is null ? [] : fits.Capability.Targets.Zip(fits.Hazard.Targets)).Select(pair => Row(
            pair.First.Quantity, pair.First.Wanted, pair.First.Reached, Percent(pair.First), pair.Second.Wanted, pair.Second.Reached,
            Percent(pair.Second), pair.First.Unit == "1" ? "" : pair.First.Unit, Use(pair.First)))],
        caption: "One circuit for each side: they differ where the nameplate is silent.");

    /// <summary>The circuits, a phase of the star, both sides.</summary>
    /// <param name="circuits">One circuit a side.</param>
    /// <returns>The table.</returns>
    public static Table Circuits(Sided<EquivalentCircuit> circuits)
    {
        ImmutableArray<Cell> Of(string name, string unit, Func<EquivalentCircuit, double?> value) =>
            Row(name, Value(value(circuits.Capability)), Value(value(circuits.Hazard)), unit);
        return new(
            "circuit", "The motor's equivalent circuit",
            [
                Name("element, a phase of the star"), new("capability side", Format: new(Significant: 4)),
                new("hazard side", Format: new(Significant: 4)), Name("unit"),
            ],
            [
                Of("stator resistance R1", "Ω", circuit => circuit.R1.Ohms), Of("stator leakage reactance X1", "Ω", circuit => circuit.X1.Ohms),
                Of("rotor resistance R2, low slip frequency", "Ω", circuit => circuit.R2.Ohms),
                Of("rotor leakage reactance X2, low slip frequency", "Ω", circuit => circuit.X2.Ohms),
                Of("magnetising reactance Xm, rated flux", "Ω", circuit => circuit.Xm.Ohms),
                Of("core-loss resistance", "Ω", circuit => circuit.CoreLossResistance?.Ohms),
                Of("rise of R2 at high slip frequency", "times", circuit => circuit.Cage.Rise),
                Of("share of X2 that goes with it", "", circuit => circuit.Cage.LeakageFall),
                Of("resistances stand at", "°C", circuit => circuit.ResistancesAt.DegreesCelsius),
            ],
            caption: "Reactances at rated frequency, referred to the stator, for the connection in use.");
    }

    /// <summary>What stood in for figures that the plate does not give.</summary>
    /// <param name="defaults">The defaults.</param>
    /// <returns>The table; without rows where nothing was missing.</returns>
    public static Table Defaults(IReadOnlyList<PlateDefault> defaults) => new(
        "plate-defaults", "What stands in for missing figures",
        [Name("figure"), Name("capability side"), Name("hazard side"), Name("how it reached us"), Name("why this pair")],
        [.. defaults.Select(each => Row(each.Meaning, each.Capability, each.Hazard, each.Provenance.InWords(), each.Reason))]);

    private static double Percent(FitTarget target) => 100 * target.Residual;

    private static string Use(FitTarget target) =>
        !target.Fitted ? "compared only" : target.Assumed ? "default, gives way" : "aimed at";

    private static Cell Value(double? value) => value is { } number ? number : Cell.Empty;
}
