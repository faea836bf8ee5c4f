using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Studies;
using Spindlewright.Studies.Uncertainty;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of uncertainty.</summary>
public static class UncertaintyTables
{
    private const int DriversShown = 5;
    private const int ChanceStep = 6;

    /// <summary>Overpowering speeds with their intervals, the bound in the same row.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Speeds(StudyResults results) => new(
        "overpowering-intervals-table", "How sure the overpowering speeds are",
        [
            Name("belt position"), new("bound", "N·m", Format: OneDecimal), Name("hand"), new("hand", "N·m", Format: OneDecimal),
            Name("overpowering speed, 95 %"), new("crossing, median", "r/min", Format: OneDecimal),
            new("crossing, least", "r/min", Format: OneDecimal), new("crossing, most", "r/min", Format: OneDecimal),
            new("crossed in", "% of machines", Format: Whole),
        ],
        [.. results.Uncertainty.Belts.SelectMany(row => row.Hands.Select(hand => Row(
            row.Belt.Name, row.Bound.NewtonMeters, hand.Hand.Name, hand.Hand.Torque.NewtonMeters, hand.Answer.Words,
            Reached(hand.Crossing.Median), Reached(hand.Crossing.Middle.Least), Reached(hand.Crossing.Middle.Most),
            100 * hand.Crossing.Reached.Estimate)))],
        caption: UncertaintyMarks.Caution,
        footnotes:
        [
            UncertaintyMarks.Samples(results) + " Least to most: the middle 95 %.",
            "Crossing: where the modelled torque first passes the hand's, conditions left out. An intermediate, not an answer.",
        ],
        sources: UncertaintyMarks.Sources(results));

    /// <summary>How likely it is that the spindle has overpowered a hand drawn from the sample, by belt position and speed.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Chances(StudyResults results) => new(
        "chances-to-overpower", "How likely the spindle overpowers a hand of the sample",
        [
            Name("belt position"), new("bound", "N·m", Format: OneDecimal), new("spindle speed", "r/min", Format: Whole),
            new("one hand", "%", Format: OneDecimal), new("one hand, from", "%", Format: OneDecimal), new("to", "%", Format: OneDecimal),
            new("both hands", "%", Format: OneDecimal), new("both hands, from", "%", Format: OneDecimal), new("to", "%", Format: OneDecimal),
        ],
        [.. results.Uncertainty.Belts.SelectMany(row => row.Chances.Where((_, place) => place % ChanceStep == 0).Select(at => Row(
            row.Belt.Name, row.Bound.NewtonMeters, at.Speed.RevolutionsPerMinute, Percent(at.Chance), 100 * at.Chance.Doubt.Least,
            100 * at.Chance.Doubt.Most, Percent(at.BothHands), 100 * at.BothHands.Doubt.Least, 100 * at.BothHands.Doubt.Most)))],
        caption: UncertaintyMarks.Caution,
        footnotes:
        [
            UncertaintyMarks.Samples(results) + " From, to: what so many samples leave in doubt, 95 %.",
            "Machine and hand are drawn together. Both hands: twice one, the upper figure (own choice, no source).",
            "A small share permits nothing: it counts modelled machines at today's settings, and the bound stands in the same row.",
        ],
        sources: UncertaintyMarks.Sources(results));

    /// <summary>What moves the crossing of the strong hand at each belt position.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Drivers(StudyResults results) => new(
        "what-moves-the-crossing-table", "What moves the crossing of the strong hand",
        [
            Name("belt position"), new("bound", "N·m", Format: OneDecimal), Name("uncertain figure"),
            new("crossing at its 5th percentile", "r/min", Format: OneDecimal),
            new("crossing at its 95th percentile", "r/min", Format: OneDecimal), new("rank correlation", Format: TwoDecimals),
        ],
        [.. results.Uncertainty.Belts.SelectMany(row => row.Drivers.Take(DriversShown).Select(driver => Row(
            row.Belt.Name, row.Bound.NewtonMeters, driver.Input.Meaning, Reached(driver.Low), Reached(driver.High),
            driver.RankCorrelation)))],
        footnotes: [FormattableString.Invariant($"The {DriversShown} that move it most; all others at their medians.")]);

    /// <summary>Operations on uncertain machines.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table; empty where no operation cuts.</returns>
    public static Table Work(StudyResults results) => new(
        "work-uncertain", "How sure it is that the motor turns it",
        [
            Name("operation"), Name("belt position"), new("bound", "N·m", Format: OneDecimal),
            new("cutting torque, median", "N·m", Format: OneDecimal), new("least", "N·m", Format: OneDecimal), new("most", "N·m", Format: OneDecimal),
            new("pull-out over cutting torque, median", Format: TwoDecimals), new("least", Format: TwoDecimals), new("most", Format: TwoDecimals),
            new("motor stalls in", "% of machines", Format: OneDecimal), new("belt slips in", "% of machines", Format: OneDecimal),
        ],
        [.. results.Uncertainty.Work.Select(each => Row(
            each.Name, each.Belt.Name, each.Bound.NewtonMeters, each.Needed.Median, each.Needed.Middle.Least, each.Needed.Middle.Most,
            each.Margin.Median, each.Margin.Middle.Least, each.Margin.Middle.Most, Percent(each.Stalls),
            each.Slips is { } slips ? Percent(slips) : "not determined"))],
        caption: "On the belt position that has most torque for it, at the frequency of the wanted speed. A motor that stalls or a belt that slips is no limit on what a hand could meet.");

    /// <summary>What is uncertain, how it is spread and where that comes from.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Inputs(StudyResults results) => new(
        "uncertain-inputs", "What is uncertain",
        [Name("key of [uncertain]"), Name("what"), Name("unit"), Name("spread"), Name("provenance"), Name("why")],
        [.. results.Uncertainty.Inputs.Select(input => Row(
            input.Name, input.Meaning, input.Unit, input.Distribution.Words, input.Provenance.InWords(), input.Note))],
        sources: [.. results.Uncertainty.Inputs.Where(input => input.Source.Length > 0).DistinctBy(input => input.Source)
            .Select(input => new SourceNote(input.Source, "spread of " + input.Meaning, input.Provenance))]);

    internal static Cell Reached(double value) => double.IsFinite(value) ? value : "not below base";

    private static Cell Percent(SampledShare share) => 100 * share.Estimate;
}
