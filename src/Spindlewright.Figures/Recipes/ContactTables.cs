using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Contact;
using UnitsNet;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of contact: what is not determined first, then comparisons, forces, numbers to design by, controls, torque sheet.</summary>
public static class ContactTables
{
    /// <summary>All of them, in order.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The tables.</returns>
    public static IEnumerable<Table> Of(StudyResults results)
    {
        var study = results.Contact;
        yield return NotDetermined(study);
        yield return Mechanisms(study);
        yield return Measures(study);
        yield return ForcesTable.Of(study);
        yield return TwoWays(study);
        foreach (var table in DesignTables.Of(study)) yield return table;
        yield return Controls(study);
        yield return StallTest(study);
    }

    private static Table NotDetermined(ContactStudy study) => new(
        "contact-not-determined", Invariant($"Contact: not determined ({study.Mechanisms.NotDetermined.Count})"),
        [Name("mechanism"), Name("what is missing")],
        [.. study.Mechanisms.NotDetermined.Select(each => Row([each.Mechanism, each.Missing]))],
        caption: "A state of its own: nothing may be read into it.", footnotes: [.. ContactStudy.Gaps]);

    private static Table Mechanisms(ContactStudy study) => new(
        "contact-mechanisms", "Computed figures against published ones, in the order that accidents have",
        [
            Name("mechanism"), Name("computed"), new("by the bound"), new("as modelled"), new("figure"), Name("unit"),
            new("bound over figure", Format: OneDecimal), new("bound exceeds from", "r/min", Format: Whole),
            new("modelled exceeds from", "r/min", Format: Whole), Name("leads"), Name("whose figure, of what, of whom"),
        ],
        [.. study.Mechanisms.Mechanisms.SelectMany(mechanism => mechanism.Comparisons.OrderByDescending(each => each.Ratio).Select((each, place) => Compared(mechanism, each, place)))],
        caption: "Hazard side, largest ratio of each mechanism first. A figure is exceeded or not exceeded, and nothing more is said; there is no overall score.",
        footnotes:
        [
            "Exceeds from: the lowest spindle speed of any belt position; 0 means from standstill on, – that it does not exceed. The modelled speed permits nothing below it.",
            "Energy, speed and time hold no torque and have no modelled figure. Leads: what makes the figure large.",
            "Not exceeding a published figure does not show that contact is harmless.",
        ],
        sources:
        [
            .. study.Mechanisms.Mechanisms.SelectMany(each => each.Comparisons).Select(each => each.Published)
                .Where(row => row.Citation.Provenance != Provenance.Yours).DistinctBy(row => row.Key)
                .OrderBy(row => row.Key, StringComparer.Ordinal).Select(row => new SourceNote(row.Citation.Source, row.Figure, row.Citation.Provenance)),
        ]);

    private static ImmutableArray<Cell> Compared(Mechanism mechanism, ContactComparison each, int place)
    {
        var published = each.Published;
        var sample = published.Sample.Length > 0 ? $", {published.Sample}" : "";
        return Row(
            place == 0 ? Invariant($"{mechanism.Place} {mechanism.Name}") : Invariant($"{mechanism.Place}"), each.Computed, each.Value,
            each.AsModelled is { } modelled ? modelled : Cell.Empty, each.Figure, published.Unit.Replace(' ', '·'), each.Ratio,
            each.FirstExceeded is { } first ? first.RevolutionsPerMinute : Cell.Empty,
            each.ModelledFirstExceeded is { } later ? later.RevolutionsPerMinute : Cell.Empty, each.Dominates,
            $"{published.Figure}: {published.Measures}{sample} ({published.Citation.Provenance.InWords()})");
    }

    private static Table Measures(ContactStudy study) => new(
        "contact-measures", "Measures, and what they do",
        [Name("measure"), Name("what it does"), Name("against mechanism")],
        [
            .. study.Mechanisms.Mechanisms.SelectMany(each => each.Measures.Select(measure => (Measure: measure, each.Place)))
                .GroupBy(each => each.Measure, each => each.Place).OrderBy(group => group.Key.Kind)
                .Select(group => Row([group.Key.Words, group.Key.Tag, string.Join(", ", group)])),
        ],
        footnotes: ["Mechanisms: " + string.Join("; ", study.Mechanisms.Mechanisms.Select(each => Invariant($"{each.Place} {each.Name}"))) + "."]);

    private static Table TwoWays(ContactStudy study) => new(
        "contact-two-ways", "The same spindle speed by belt and by frequency",
        [
            new("spindle speed", "r/min", Format: Whole), Name("belt position"), new("frequency", "Hz", Format: OneDecimal), new("bound", "N·m", Format: OneDecimal),
            new("ideal boost", "N·m", Format: OneDecimal), new("as modelled", "N·m", Format: OneDecimal),
            new("at the current limit, not credited", "N·m", Format: OneDecimal), new("chuck force, bound", "N", Format: Whole),
            new("energy", "J", Format: OneDecimal), new("wound on, longest reaction", "m", Format: NumberFormat.Fixed(2)), new("bound as found", "N·m", Format: OneDecimal),
        ],
        [
            .. study.TwoWays.Speeds.SelectMany(speed => speed.Ways.Select(way => Row(
            [
                speed.Speed.RevolutionsPerMinute, way.Belt.Name, way.Frequency.Hertz, way.Torque.Bound.NewtonMeters, way.Torque.IdealBoost.NewtonMeters,
                way.Torque.AsModelled.NewtonMeters, way.Torque.CurrentLimited.NewtonMeters, way.ChuckForce.Bound.Newtons, way.Energy.Joules,
                way.WoundOn.Meters, speed.AsFound is { } found ? found.Bound.NewtonMeters : Cell.Empty,
            ]))),
        ],
        caption: "The belt multiplies torque, and the bound with it. Plain volts per hertz loses torque at low frequency, boost gives it back, and the bound does not fall.",
        footnotes: ["Bound as found: of the machine before the conversion at its position within a tenth of the speed; empty where it has none."]);

    private static Table Controls(ContactStudy study) => new(
        "contact-controls", "Controls: yes or no",
        [Name("asked"), Name("answer"), Name("why"), Name("what asks for it")],
        [.. study.Controls.Select(each => Row([each.Asked, each.Words, each.Reason, each.Standard]))],
        footnotes: ["Most of these standards are recalled from memory: read them, and what applies where you are."],
        sources:
        [
            .. study.Controls.SelectMany(each => each.AskedBy).DistinctBy(each => (each.Source, each.Provenance))
                .OrderBy(each => each.Source, StringComparer.Ordinal).Select(each => new SourceNote(each.Source, "controls", each.Provenance)),
        ]);

    private static Table StallTest(ContactStudy study) => new(
        "contact-stall-test", "Measuring torque: what the bound asks of arm and scale",
        [
            Name("where"), new("bound", "N·m", Format: OneDecimal), new("as modelled at the lowest frequency", "N·m", Format: OneDecimal),
            new("expect up to", "N", Format: Whole), new("arm at least", "mm", Format: Whole), Name("test"), Name("read"),
        ],
        [
            .. study.StallTest.Rows.Select(row => Row(
            [
                row.Belt is { } belt ? $"spindle, position {belt.Name}" : "motor shaft, belt off", row.Bound.NewtonMeters, row.ModelledAtLowest.NewtonMeters,
                row.ExpectedForce is { } force ? force.Newtons : Cell.Empty,
                row.LeastArm is { } arm ? Math.Ceiling(arm.Millimeters) : Cell.Of("not determined"), row.Refusal.Length > 0 ? row.Refusal : "arm and scale bear the bound", Cell.Empty,
            ])),
        ],
        footnotes: [.. study.StallTest.Steps.Select((step, index) => Invariant($"{index + 1}. {step}"))]);
}
