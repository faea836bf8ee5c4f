using System.Collections.Immutable;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Work;
using UnitsNet;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of speeds, feeds, largest drills and belts.</summary>
public static class CuttingTables
{
    /// <summary>For wanted speeds, the position with most continuous torque and the one with least bound.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Choices(StudyResults results) => new(
        "speed-choices", "One speed, two ways to it",
        [
            new("wanted speed", "r/min", Format: Whole), Name("most continuous torque"), new("frequency", "Hz", Format: OneDecimal),
            new("continuous", "N·m", Format: OneDecimal), new("its bound", "N·m", Format: OneDecimal), Name("least bound"),
            new("frequency", "Hz", Format: OneDecimal), new("continuous", "N·m", Format: TwoDecimals),
            new("its bound", "N·m", Format: OneDecimal),
        ],
        [.. results.Chart.Choices.Select(each => each is { MostContinuous: { } most, LeastBound: { } least }
            ? Row(
                each.Speed.RevolutionsPerMinute, most.Belt.Name, most.Frequency.Hertz, most.Continuous.NewtonMeters,
                most.Bound.NewtonMeters, least.Belt.Name, least.Frequency.Hertz, least.Continuous.NewtonMeters, least.Bound.NewtonMeters)
            : Row(
                each.Speed.RevolutionsPerMinute, "none reaches it", Cell.Empty, Cell.Empty, Cell.Empty, "", Cell.Empty, Cell.Empty, Cell.Empty))],
        caption: "The belt multiplies torque, and with it what a hand could meet: the two answers are mostly opposite.",
        footnotes:
        [
            FormattableString.Invariant($"Frequencies with {100 * SpeedChart.StatedShare:0} % of rated motor torque at the shaft. {Overlaps(results)}"),
        ]);

    /// <summary>The largest drills by material and position.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Largest(StudyResults results) => new(
        "largest-drills", "Largest drill into the full, in mm: continuous / short-time",
        [
            Name("material"), .. results.Torques.Spindle.Select(each => Name(FormattableString.Invariant($"position {each.Belt.Name}, bound {each.Bound.NewtonMeters:0.0} N·m"))),
            new("by the arm, into the full", "mm", Format: OneDecimal), new("by the arm, with a pilot", "mm", Format: OneDecimal),
        ],
        [.. results.LargestDrills.Materials.Select(row => (ImmutableArray<Cell>)[
            row.Material.Name, .. row.Belts.Select(at => (Cell)Sizes(at)), Or(row.ByArm?.Millimeters), Or(row.ByArmWithPilot?.Millimeters)])],
        footnotes:
        [
            "At the middle of the cutting speeds and the handbook's feed for the material (the lower one in hard materials), normal wear, standard point. A dash: no drill that the position turns at its speed.",
            "Handbook feeds are those of a power-fed machine: at the smaller feed that an arm gives, a larger drill goes, slower.",
            "By the arm: largest drill that the thrust kept up at the lever feeds at the low end of the handbook's feeds.",
        ]);

    /// <summary>What gives out first when a drill is fed by hand.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Feeds(StudyResults results) => new(
        "hand-feeds", "Feed as the outcome of the arm",
        [
            Name("material"), new("drill", "mm", Format: OneDecimal), new("handbook, low end", "mm/rev", Format: TwoDecimals),
            new("arm, into the full", "mm/rev", Format: new(3)), new("pilot hole", "mm", Format: OneDecimal),
            new("arm, with the pilot", "mm/rev", Format: new(3)), Name("pilot needed"), Name("gives out at the handbook's feed, with the pilot"),
        ],
        [.. results.Feeding.Rows.Select(row => Row(
            row.Material.Name, row.Diameter.Millimeters, row.HandbookFeed.Millimeters, Feed(row.Solid.FeedPerRevolution),
            row.Pilot.Millimeters, Feed(row.Piloted.FeedPerRevolution), row.Solid.FeedPerRevolution is null ? "yes: nothing is cut without" : row.NeedsPilot ? "yes" : "no",
            row.GivesOut))],
        caption: FormattableString.Invariant($"The arm keeps up {results.Feeding.Thrust.Newtons:0} N of thrust; normal wear, standard point."));

    /// <summary>Cutting speeds against the machine's slowest speeds.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Speeds(StudyResults results)
    {
        var study = results.CuttingSpeeds;
        return new(
            "cutting-speeds", "Cutting speeds, and the drill for which the slowest speed is too fast",
            [
                Name("material"), new("drilling, low", "m/min", Format: OneDecimal), new("drilling, high", "m/min", Format: OneDecimal),
                new("reaming", "m/min", Format: OneDecimal), new("hole saw", "m/min", Format: OneDecimal),
                new(FormattableString.Invariant($"too fast from, at {study.SlowestFixed.RevolutionsPerMinute:0} r/min"), "mm", Format: OneDecimal),
                new(FormattableString.Invariant($"too fast from, at {study.Slowest.RevolutionsPerMinute:0} r/min"), "mm", Format: OneDecimal),
                new("your own", "m/min", Format: OneDecimal),
            ],
            [.. study.Materials.Select(row => Row(
                row.Material.Name, row.Material.SlowestSpeed.Value.MetersPerMinutes, row.Material.FastestSpeed.Value.MetersPerMinutes,
                Middle(row, OperationKind.Reaming), Middle(row, OperationKind.HoleSawing), row.TooFastFromFixed.Millimeters,
                row.TooFastFrom.Millimeters, Or(row.Experience?.Middle.MetersPerMinutes)))],
            footnotes:
            [
                $"Drills of high-speed steel. {(study.SlowestFixedIsOwn ? "The first of the two slowest speeds is that of the machine as found." : "The first of the two slowest speeds is that of many bench drills (common practice).")}",
            ]);
    }

    /// <summary>Belts: geometry and grip.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Belts(StudyResults results) => new(
        "belts", "What the belts hold",
        [
            Name("belt position"), Name("pulleys, motor first"), Name("belt length"), Name("wrap of the smaller"),
            new("slips from, low", "N·m", Format: OneDecimal), new("slips from, high", "N·m", Format: OneDecimal),
            new("short-time torque", "N·m", Format: OneDecimal), new("slip over short-time", Format: TwoDecimals),
            new("bound", "N·m", Format: OneDecimal), new("creep up to", "r/min", Format: OneDecimal),
        ],
        [.. results.Ratios.Belts.Select(row => Row(
            row.Belt.Name, Each(row.Belt.Pulleys, pair => FormattableString.Invariant($"{pair.Driving.Millimeters:0.#} on {pair.Driven.Millimeters:0.#} mm")),
            Each(row.Slip?.Layouts ?? [], layout => FormattableString.Invariant($"{layout.DatumLength.Millimeters:0} mm")),
            Each(row.Slip?.Layouts ?? [], layout => FormattableString.Invariant($"{layout.WrapOfSmaller.Degrees:0}°")),
            Or(row.Slip?.Least.NewtonMeters), Or(row.Slip?.Most.NewtonMeters), row.ShortTime.NewtonMeters, Or(row.SlipOverShortTime),
            row.Bound.NewtonMeters, row.Creep.Most.RevolutionsPerMinute))],
        footnotes:
        [
            "Torques at the spindle at base frequency. Low: low tension and friction; high: the reverse. The bound credits no belt: a belt may grip better than thought.",
            results.Ratios.ForceForShortTime is { } force
                ? FormattableString.Invariant($"For the short-time torque of every position, at the low end, {force.Newtons:0} N should be needed to push the middle of a span 1/64 of its length aside, in place of {results.Press.Belting!.DeflectionForce.Newtons:0} N; over-tight belts cost bearings.")
                : "Slip is not determined: no [belting] is described.",
        ]);

    /// <summary>Pulleys that would reach the speeds of the work.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table; empty where no work is described.</returns>
    public static Table Design(StudyResults results) => new(
        "conversion", "Pulleys that would reach the speeds of the work",
        [
            new("ratio wanted", Format: TwoDecimals), new("motor pulley to buy", "mm", Format: Whole), new("or to turn", "mm", Format: OneDecimal),
            new("spindle pulley", "mm", Format: OneDecimal), Name("spindle pulley is"), new("slowest, unloaded", "r/min", Format: Whole),
            new("fastest, unloaded", "r/min", Format: Whole),
        ],
        [.. (results.Ratios.Design?.Choices ?? []).Select(choice => Row(
            choice.Exact, choice.Pair.Driving.Millimeters, Or(choice.ToTurn?.Millimeters), choice.Pair.Driven.Millimeters,
            choice.DrivenExists ? "there already" : "to buy", choice.Slowest.RevolutionsPerMinute, choice.Fastest.RevolutionsPerMinute))],
        caption: results.Ratios.Design?.Words ?? "",
        footnotes: ["A larger ratio is more torque at the spindle and a larger bound. Datum diameters; a turned pulley needs the groove angle of its section and balance."]);

    private static string Sizes(LargestAtBelt at)
    {
        static string One(LargestSize? size) => size is null ? "–" : FormattableString.Invariant($"{size.Diameter.Millimeters:0.#}");
        return $"{One(at.Continuous)} / {One(at.ShortTime)}";
    }

    private static Cell Feed(Length? feed) => feed is { } given ? given.Millimeters : "none";

    private static Cell Middle(MaterialSpeeds row, OperationKind kind) =>
        Or(row.Operations.Where(each => each.Kind == kind).Select(each => (double?)each.Speeds.Middle.MetersPerMinutes).FirstOrDefault());

    private static string Each<T>(IReadOnlyList<T> parts, Func<T, string> words) => string.Join(", ", parts.Select(words));

    private static string Overlaps(StudyResults results) => string.Join(" ", results.Chart.Overlaps.Select(each =>
        FormattableString.Invariant($"Positions {each.Slower} and {each.Faster} both reach {each.From.RevolutionsPerMinute:0} to {each.To.RevolutionsPerMinute:0} r/min.")));
}
