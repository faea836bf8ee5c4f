using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of the studies, in the order in which a report shows them.</summary>
public static class StudyTables
{
    internal static readonly NumberFormat Whole = NumberFormat.Fixed(0);
    internal static readonly NumberFormat OneDecimal = NumberFormat.Fixed(1);
    internal static readonly NumberFormat TwoDecimals = NumberFormat.Fixed(2);

    /// <summary>Every table that the results allow; one without rows is left out.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The tables in order.</returns>
    public static ImmutableArray<Table> All(StudyResults results)
    {
        Table[] tables =
        [
            Speeds(results), SlowEnd(results), FrequencyTables.Standstill(results), FrequencyTables.Boosts(results), Holes(results), Hands(results), HeatTables.Continuous(results),
            HeatTables.Cases(results), HeatTables.TwiceBase(results), HeatTables.Tasks(results), SupplyTables.Levels(results),
            SupplyTables.Loads(results), SupplyTables.Switching(results), SupplyTables.Day(results),
            CuttingTables.Choices(results), WorkTables.Limits(results), WorkTables.AtArmFeed(results), WorkTables.Methods(results),
            WorkTables.StopsAndSpins(results), .. ContactTables.Of(results), CuttingTables.Largest(results), CuttingTables.Feeds(results), CuttingTables.Speeds(results),
            CuttingTables.Belts(results), CuttingTables.Design(results), UncertaintyTables.Speeds(results), UncertaintyTables.Chances(results), UncertaintyTables.Drivers(results), ChangesTable.Of(results),
            UncertaintyTables.Work(results), UncertaintyTables.Inputs(results), .. SizingTables.All(results), SlipCompensationTable.Of(results), AsFound(results), Bound(results),
            FitTables.Targets(results.Press.Motor.Fit), FitTables.Circuits(results.Press.Motor.Circuit),
            DefaultsTable.Of(results.Press.Defaults),
        ];
        return [.. tables.Where(table => table.Rows.Length > 0)];
    }

    /// <summary>Speeds of the belt positions, unloaded and at rated motor torque.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Speeds(StudyResults results)
    {
        var first = results.Speeds.Belts[0];
        string At(string what, double hertz) => FormattableString.Invariant($"{what} {hertz:0.#} Hz");
        return new(
            "speeds", "Speeds",
            [
                Name("belt position"), new("ratio", Format: new(Significant: 3)),
                new(At("unloaded at", first.AtLowest.Frequency.Hertz), "r/min", Format: Whole),
                new("at rated motor torque", "r/min", Format: Whole),
                new(At("unloaded at", first.AtBase.Frequency.Hertz), "r/min", Format: Whole),
                new("at rated motor torque", "r/min", Format: Whole),
                new(At("unloaded at", first.AtHighest.Frequency.Hertz), "r/min", Format: Whole),
                new("highest permitted frequency", "Hz", Format: OneDecimal),
            ],
            [.. results.Speeds.Belts.Select(belt => Row(
                belt.Belt.Name, belt.Belt.Ratio, belt.AtLowest.Synchronous.RevolutionsPerMinute, Loaded(belt.AtLowest),
                belt.AtBase.Synchronous.RevolutionsPerMinute, Loaded(belt.AtBase),
                belt.AtHighest.Synchronous.RevolutionsPerMinute,
                belt.Permitted.Frequency is { } permitted ? Math.Min(permitted.Hertz, belt.AtHighest.Frequency.Hertz) : "not determined"))],
            footnotes:
            [
                "Unloaded: synchronous speed over the ratio. At rated motor torque: capability side, lowest supply, slower of cold and hot winding.",
                "Highest permitted frequency: by the tightest limit of speed of what always turns (chuck and bearings, and each [[speed_limit]] that is not fitted at times only), or the highest frequency set where that is lower; the inverter cannot know the belt position.",
            ]);
    }

    private static Cell Loaded(Studies.Speeds.SpeedAt speed) =>
        speed.Loaded is { } loaded ? loaded.RevolutionsPerMinute : "stalls";

    /// <summary>The three torques at the lowest and the base frequency.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table SlowEnd(StudyResults results)
    {
        var baseFrequency = results.Press.Inverter.Curve.BaseFrequency;
        return new(
            "torques", "Torque at the spindle",
            [
                Name("belt position"), new("frequency", "Hz", Format: OneDecimal), new("unloaded speed", "r/min", Format: Whole),
                new("bound", "N·m", Format: OneDecimal), new("ideal boost, hazard side", "N·m", Format: OneDecimal),
                new("as modelled, hazard side", "N·m", Format: OneDecimal),
                new("as modelled, capability side", "N·m", Format: OneDecimal),
                new("locked-rotor, capability side", "N·m", Format: OneDecimal),
                new("locked-rotor, hazard side", "N·m", Format: OneDecimal),
                new("short-time", "N·m", Format: OneDecimal), new("short-time power", "W", Format: Whole),
            ],
            [.. results.Torques.Spindle.SelectMany(spindle =>
                new[] { spindle.Points[0], spindle.Points.Last(point => point.Frequency <= baseFrequency) }.Select(at => Row(
                    spindle.Belt.Name, at.Frequency.Hertz, at.SynchronousSpeed.RevolutionsPerMinute,
                    spindle.Bound.NewtonMeters, at.IdealBoost.Hazard.NewtonMeters, at.PullOut.Hazard.NewtonMeters,
                    at.PullOut.Capability.NewtonMeters, at.LockedRotor.Capability.NewtonMeters,
                    at.LockedRotor.Hazard.NewtonMeters, at.ShortTime.NewtonMeters,
                    at.ShortTimePower is { } power ? (double)power.Watts : "stalls")))],
            footnotes:
            [
                "Bound, ideal boost and as modelled: the largest torque from standstill to synchronous speed.",
                "Short-time: the smallest of 1.6 times rated torque, 0.75 of pull-out torque and the torque at the inverter's current limit, capability side.",
            ]);
    }

    /// <summary>The holes of the machine file.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Holes(StudyResults results) => new(
        "holes", "Will it drill it?",
        [
            Name("hole"), Name("material"), new("drill", "mm", Format: OneDecimal), new("feed", "mm/rev", Format: TwoDecimals),
            new("speed", "r/min", Format: Whole), new("thrust", "N", Format: Whole), new("torque", "N·m", Format: OneDecimal),
            new("power at the drill", "W", Format: Whole), Name("belt position"), new("frequency", "Hz", Format: OneDecimal),
            new("short-time torque", "N·m", Format: OneDecimal), new("margin", Format: TwoDecimals),
            new("bound", "N·m", Format: OneDecimal),
        ],
        [.. results.Work.Items.Select(item => Row(
            item.Item.Name, item.Item.Material.Name, item.Item.Diameter.Millimeters, item.Item.FeedPerRevolution.Millimeters,
            item.Speed.RevolutionsPerMinute, item.Thrust is { } thrust ? thrust.Newtons : Cell.Empty, item.Torque.NewtonMeters,
            (double)item.Power.Watts, item.Best?.Belt.Name ?? "none reaches it", Or(item.Best?.Frequency?.Hertz),
            Or(item.Best?.Available?.NewtonMeters), Or(item.Best?.Margin), Or(item.Best?.Bound.NewtonMeters)))],
        footnotes:
        [
            "Torque, thrust and power by the first method of the table of methods, the handbook's for drills; on a hand-fed drill the feed is what the arm gives, not what is wished for.",
            "Margin: short-time torque over the torque needed, at the position where it is largest.",
        ]);

    /// <summary>Hands against the spindle.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table; reasons too long for a cell stand in its footnotes.</returns>
    public static Table Hands(StudyResults results) => HandsTable.Of(results);

    private static Table AsFound(StudyResults results) => new(
        "as-found", "The machine as found",
        [
            Name("belt position"), new("ratio", Format: new(Significant: 3)), new("speed at rated load", "r/min", Format: Whole),
            new("rated torque", "N·m", Format: OneDecimal), new("bound", "N·m", Format: OneDecimal),
        ],
        [.. (results.Before?.Belts ?? []).Select(belt => Row(
            belt.Belt.Name, belt.Belt.Ratio, belt.Speed.RevolutionsPerMinute, belt.RatedTorque.NewtonMeters,
            belt.Bound.NewtonMeters))],
        caption: results.Before?.Description ?? "Not described in the machine file.");

    private static Table Bound(StudyResults results)
    {
        var bound = results.Torques.Bound;
        return new(
            "bound", "How the bound comes about",
            [Name("step"), new("value", Format: new(Significant: 4)), Name("unit")],
            [
                Row("breakdown torque with R1 = 0 at rated volts per hertz", bound.WithoutResistance.NewtonMeters, "N·m"),
                Row("breakdown torque by nameplate or high default", Or(bound.ByNameplate?.NewtonMeters), "N·m"),
                Row("times (highest supply over nominal) squared", bound.SupplyFactor, ""),
                Row("largest volts per hertz set, over rated", bound.SetOverflux, ""),
                Row("times overflux counted, squared", bound.CountedOverflux * bound.CountedOverflux, ""),
                Row("bound at the motor shaft", bound.Motor.NewtonMeters, "N·m"),
            ],
            caption: "The larger of the first two, times the factors; at the spindle times the ratio of the belt position, with no loss.",
            emphasis: [5]);
    }

    internal static Column Name(string header) => new(header, Align: Alignment.Left);

    internal static ImmutableArray<Cell> Row(params ImmutableArray<Cell> cells) => cells;

    internal static Cell Or(double? value) => value is { } number ? number : Cell.Empty;
}
