using System.Collections.Immutable;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Work;
using UnitsNet;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of the operations of the machine file.</summary>
public static class WorkTables
{
    /// <summary>What limits each operation at its best belt position.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Limits(StudyResults results) => new(
        "work-limits", "What gives out first",
        [
            Name("operation"), new("torque", "N·m", Format: OneDecimal), Name("belt position"), new("frequency", "Hz", Format: OneDecimal),
            new("short-time", "N·m", Format: OneDecimal), new("continuous", "N·m", Format: OneDecimal),
            new("at standstill", "N·m", Format: OneDecimal), new("belt slips from", "N·m", Format: OneDecimal),
            new("bound", "N·m", Format: OneDecimal), new("winding, hot side", "°C", Format: Whole), new("one takes", "s", Format: Whole),
            Name("how it stands"),
        ],
        [.. results.Work.Items.Select(item => Row(
            $"{item.Item.Name} ({item.Item.Kind.InWords()})", item.Torque.NewtonMeters, item.Best?.Belt.Name ?? "none reaches it",
            Or(item.Best?.Frequency?.Hertz), Or(item.Best?.Available?.NewtonMeters), Or(item.Best?.Continuous?.NewtonMeters),
            Or(item.Best?.Stall?.NewtonMeters), Or(item.Best?.Slip?.Least.NewtonMeters),
            (item.Best?.Bound ?? item.Belts.Max(belt => belt.Bound)).NewtonMeters,
            Celsius(item.Best), Or(item.Cut.Time?.Whole.Seconds), Sentence(item)))],
        footnotes:
        [
            "Winding: after the holes in a row with their pauses, from the temperature of the air. Belt: low tension and low friction; a belt that slips is no limit on what a hand could meet.",
            "Arm and column: thrust asked over the thrust that the arm keeps up, and over what the column bears where that is given.",
        ]);

    /// <summary>Torque and thrust by every method.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Methods(StudyResults results) => new(
        "methods", "Torque and thrust by independent methods",
        [
            Name("operation"), Name("method"), new("torque", "N·m", Format: TwoDecimals), new("thrust", "N", Format: Whole),
            Name("provenance of its constants"), new("at break-through, feed doubled", "N·m", Format: TwoDecimals),
        ],
        [.. results.Work.Items.SelectMany(item => (item.Cut.Load?.Methods ?? []).Select((method, index) => Row(
            item.Item.Name, method.Method, method.Torque.NewtonMeters,
            method.Thrust is { } thrust ? thrust.Newtons : Cell.Empty, method.Source.Provenance.InWords(),
            index == 0 && Operation.DrillsFromTable(item.Item.Kind) ? item.Cut.Load!.AtBreakThrough(2).NewtonMeters : Cell.Empty)))],
        footnotes:
        [
            "The first is the one used: for drills the handbook method, which stands on the high side. Nothing is averaged.",
            "Specific cutting force: constants of turning, without margins, chisel edge and wear. Power law: a sharp drill.",
            "Ease the feed as the point breaks through: the feed jumps, and torque with its power 0.8.",
        ]);

    /// <summary>Holes whose feed the arm decides.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table; empty where the arm gives every feed asked for.</returns>
    public static Table AtArmFeed(StudyResults results) => new(
        "arm-feed", "Holes whose feed the arm decides",
        [
            Name("hole"), new("feed asked", "mm/rev", Format: TwoDecimals), new("feed given", "mm/rev", Format: new(3)),
            new("torque then", "N·m", Format: OneDecimal), Name("belt position"), new("frequency", "Hz", Format: OneDecimal),
            new("short-time", "N·m", Format: OneDecimal), new("bound", "N·m", Format: OneDecimal), Name("how it stands"),
        ],
        [.. results.Work.Items.Where(ArmDecides).Select(item => item.AtArmFeed is { } fed
            ? Row(
                item.Item.Name, Or(item.Cut.Feed?.Millimeters), Or(fed.Cut.Feed?.Millimeters), fed.Torque.NewtonMeters,
                fed.Best?.Belt.Name ?? "none reaches it", Or(fed.Best?.Frequency?.Hertz), Or(fed.Best?.Available?.NewtonMeters),
                (fed.Best?.Bound ?? fed.Belts.Max(belt => belt.Bound)).NewtonMeters, fed.Words.WithCapital())
            : Row(
                item.Item.Name, Or(item.Cut.Feed?.Millimeters), "none", Cell.Empty, "", Cell.Empty, Cell.Empty,
                item.Belts.Max(belt => belt.Bound).NewtonMeters,
                FormattableString.Invariant($"The arm keeps up {item.Feed!.Thrust.Newtons:0} N; cutting begins at {item.Feed.LeastThrust.Newtons:0} N. A pilot hole takes the chisel edge out.")))],
        caption: FormattableString.Invariant($"The arm keeps up {results.Feeding.Thrust.Newtons:0} N of thrust."));

    /// <summary>What taps and mounted assemblies do at their speed.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table; empty where there are none.</returns>
    public static Table StopsAndSpins(StudyResults results) => new(
        "stops-and-spins", "Taps that stop at depth and assemblies that spin",
        [
            Name("operation"), Name("belt position"), new("frequency", "Hz", Format: OneDecimal), new("speed", "r/min", Format: Whole),
            new("bound", "N·m", Format: OneDecimal), Name("what to know"),
        ],
        [.. results.Work.Items.Where(item => item.Best is { TapStop: not null } or { Spin: not null }).Select(item => Row(
            item.Item.Name, item.Best!.Belt.Name, item.Best.Frequency!.Value.Hertz, item.Speed.RevolutionsPerMinute,
            item.Best.Bound.NewtonMeters, Know(item.Best)))]);

    private static string Know(WorkAtBelt at) => at.TapStop is { } stop
        ? FormattableString.Invariant($"On its ramp it stops in {stop.StopTime.Seconds:0.0} s, {stop.Revolutions:0.0} turns: a blind hole needs {stop.Travel.Millimeters:0.0} mm more than the thread. Reverse only from standstill; the quill must follow the tap.")
        : FormattableString.Invariant($"A step of 0.1 Hz is {at.Spin!.StepOfTenthHertz.RevolutionsPerMinute:0.0} r/min; slip under the spindle's drag takes {at.Spin.SlipLoss.RevolutionsPerMinute:0.0}, creep of the belt up to {at.Spin.CreepLoss.RevolutionsPerMinute:0.0}: measure the speed. Mounted work is a limit of speed of its own.");

    private static bool ArmDecides(WorkResult item) => item.AtArmFeed is not null || item.Feed is { Load: null };

    private static Cell Celsius(WorkAtBelt? best) => best?.Winding is not { } winding ? Cell.Empty
        : winding.Capability is { } hot ? hot.DegreesCelsius : "stalls when hot";

    private static string Sentence(WorkResult item) => item.Words.WithCapital();
}
