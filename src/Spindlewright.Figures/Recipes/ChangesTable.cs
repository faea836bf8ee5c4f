using Spindlewright.Studies;
using Spindlewright.Studies.Changes;
using Spindlewright.Studies.Uncertainty;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>What moves the overpowering speed: settings and parts changed one at a time, the bound in the same row.</summary>
public static class ChangesTable
{
    /// <summary>The table.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The machine as described first.</returns>
    public static Table Of(StudyResults results)
    {
        var study = results.Changes;
        string Torque(int hand) => FormattableString.Invariant($"{study.Machines[0].Hands[hand].Hand.Torque.NewtonMeters:0.0} N·m");
        return new(
            "what-moves-it", "What moves it: one setting or part at a time",
            [
                Name("changed"), Name("to"), new("bound", "N·m", Format: OneDecimal),
                new($"weak hand ({Torque(0)}) crossed, median", "r/min", Format: Whole), new($"strong hand ({Torque(1)}) crossed, median", "r/min", Format: Whole),
                new("strong hand, least", "r/min", Format: Whole), new("most", "r/min", Format: Whole), Name("strong hand overpowered"),
            ],
            [
                .. study.Machines.Select(each => Row(
                [
                    each.What, each.Change, each.Bound.NewtonMeters, Crossed(each, each.Hands[0].Crossing.Median),
                    Crossed(each, each.Hands[1].Crossing.Median), Crossed(each, each.Hands[1].Crossing.Middle.Least),
                    Crossed(each, each.Hands[1].Crossing.Middle.Most), Answer(each),
                ])),
            ],
            caption: UncertaintyMarks.Caution,
            footnotes:
            [
                FormattableString.Invariant($"On the position with the largest ratio unless a row names another; {study.Samples} machines drawn for each row, the middle 95 % from least to most. Crossed: conditions left out, an intermediate and not an answer."),
                "Drop, boost and slip compensation are settings: anybody can change them. A boost beyond rated volts per hertz puts the bound up; that it is not set today is no measure: design by the row with the largest bound.",
                "Another size of motor has the same circuit in per unit, another number of poles the same circuit (own choice); real motors differ more. Slip compensation follows the load down to standstill.",
            ],
            sources: UncertaintyMarks.Sources(results));
    }

    private static Cell Crossed(ChangedMachine each, double rpm) =>
        rpm <= each.Slowest.RevolutionsPerMinute ? "from standstill" : UncertaintyTables.Reached(rpm);

    private static string Answer(ChangedMachine each) =>
        each.Hands[1].Answer is Studies.Overpowering.OverpoweringSpeed.NoSpeed ? "no speed of this belt position" : each.Hands[1].Answer.Words;
}
