using System.Collections.Immutable;
using Spindlewright.Studies;
using Spindlewright.Studies.Overpowering;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Hands against the spindle: one row a belt position, weak and strong hand beside the bound.</summary>
internal static class HandsTable
{
    internal static Table Of(StudyResults results)
    {
        var study = results.Hands;
        var reasons = new List<string>();
        ImmutableArray<ImmutableArray<Cell>> rows =
        [
            .. study.Belts.Select(row => Row(
            [
                row.Belt.Name, row.Bound.NewtonMeters, row.BoundForce.Newtons, row.LargestIdealBoostForce.Newtons,
                row.LargestModelledForce.Newtons, .. row.Hands.SelectMany(hand => Cells(hand, reasons)),
            ])),
        ];
        return new(
            "hands", "A hand at the chuck",
            [
                Name("belt position"), new("bound", "N·m", Format: OneDecimal),
                new("force, bound", "N", Format: Whole), new("force, ideal boost", "N", Format: Whole),
                new("force, as modelled", "N", Format: Whole), .. study.Belts[0].Hands.SelectMany(Columns),
            ],
            rows,
            caption: "Forces stand at the surface of the chuck. The overpowering speed says when the spindle wins, never when a hand may be put there.",
            footnotes:
            [
                .. reasons.Select((reason, index) => FormattableString.Invariant($"Note {index + 1}: {reason}.")),
                "Already at standstill: from the lowest frequency set, on the hazard side. Crossing: where the modelled torque passes the hand's.",
            ],
            sources: [new(study.Strength.Source, $"hand torque: {study.Strength.Sample}", study.Strength.Provenance)]);
    }

    private static IEnumerable<Column> Columns(HandAgainstBelt each) =>
    [
        Name(FormattableString.Invariant($"{each.Hand.Name} ({each.Hand.Torque.NewtonMeters:0.0} N·m) overpowered")),
        new($"bound over {each.Hand.Name}", Format: OneDecimal),
    ];

    private static IEnumerable<Cell> Cells(HandAgainstBelt each, List<string> reasons) =>
        [Answer(each.Answer, reasons), each.BoundOverHand];

    private static string Answer(OverpoweringSpeed answer, List<string> reasons)
    {
        if (answer is OverpoweringSpeed.AlreadyAtStandstill) return "already at standstill";
        if (answer is not OverpoweringSpeed.NoSpeed none) return answer.Words;
        if (!reasons.Contains(none.Reason)) reasons.Add(none.Reason);
        return FormattableString.Invariant($"no speed of this belt position, note {reasons.IndexOf(none.Reason) + 1}");
    }
}
