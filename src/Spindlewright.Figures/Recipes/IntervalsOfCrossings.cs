using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Figures.Recipes;

/// <summary>Between which spindle speeds the modelled torque passes the weak and the strong hand.</summary>
public sealed class IntervalsOfCrossings : IFigureRecipe<StudyResults>
{
    private const double Thickness = 0.2;

    /// <inheritdoc/>
    public string Id => "overpowering-intervals";

    /// <inheritdoc/>
    public string Name => "intervals of crossings";

    /// <inheritdoc/>
    public string Description => "How sure is the speed at which the modelled torque passes a hand on the chuck?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var rows = results.Uncertainty.Belts;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < rows.Count; i++)
        {
            Add(marks, rows[i], rows[i].Hands[0], i + 1 - Thickness, Role.Hand);
            Add(marks, rows[i], rows[i].Hands[^1], i + 1 + Thickness, Role.Uncertainty);
        }

        return new(
            Id, "Where the modelled torque passes a hand, with its interval",
            new Axis("spindle speed", "r/min", AxisScale.Logarithmic),
            Axis.Names("belt position", [.. rows.Select(UncertaintyMarks.WithBound)]), marks.ToImmutable(),
            sources: UncertaintyMarks.Sources(results),
            notes:
            [
                UncertaintyMarks.Samples(results) + " Bars: the middle 95 %; points: the median.",
                "A bar that begins at the slowest speed of its position: passed from standstill. One that ends at the fastest up to base frequency: in some machines it is not passed below it.",
            ],
            cautions: [UncertaintyMarks.Caution]);
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, UncertainBelt row, UncertainHand hand, double at, Role role)
    {
        var (middle, legend) = (hand.Crossing.Middle, FormattableString.Invariant($"{hand.Hand.Name}, {hand.Hand.Torque.NewtonMeters:0.0} N·m"));
        if (double.IsInfinity(middle.Least)) return;
        var (from, to) = (middle.Least, UncertaintyMarks.Held(row, middle.Most));
        if (from < to)
            marks.Add(new RangeBar(role, at, from, to, Thickness, series: UncertaintyMarks.WithBound(row), legend: legend));
        if (double.IsFinite(hand.Crossing.Median))
            marks.Add(new Points(role, [hand.Crossing.Median], [at], UncertaintyMarks.WithBound(row), legend: legend + ", median"));
    }
}
