using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Work;

namespace Spindlewright.Figures.Recipes;

/// <summary>What each operation asks, set against the envelopes of its best belt position, with the bound.</summary>
public sealed class WorkOverEnvelopes : IFigureRecipe<StudyResults>
{
    private const double LeastDrawnNm = 0.01;

    /// <inheritdoc/>
    public string Id => "will-it-do-it";

    /// <inheritdoc/>
    public string Name => "will it do it";

    /// <inheritdoc/>
    public string Description => "What torque does each operation ask, and what has its belt position for some seconds and for ever?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var items = results.Work.Items.Where(item => item.Torque.NewtonMeters >= LeastDrawnNm).ToList();
        var names = items.Select(item => item.Item.Name).ToList();
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < items.Count; i++) Add(marks, items[i], i + 1);
        if (items.Count == 0)
            marks.Add(new Points(Role.Bound, [results.Torques.Spindle.Max(each => each.Bound).NewtonMeters], [1], "largest bound"));
        return new(
            Id, "What the work asks and what the spindle has",
            new Axis("torque at the spindle", "N·m", AxisScale.Logarithmic),
            names.Count > 0 ? Axis.Names("operation", [.. names]) : Axis.Names("operation", "none described"),
            marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes:
            [
                "Bar: torque asked, from the method that gives least to the one that gives most; published methods differ by a factor of two.",
                "Envelopes and bound of the belt position with the largest margin at the wanted speed; where none reaches the speed, the largest bound of all.",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, WorkResult item, int at)
    {
        var (least, most) = item.Cut.Load!.TorqueSpread;
        marks.Add(new RangeBar(
            Role.Demand, at, least.NewtonMeters, Math.Max(most.NewtonMeters, least.NewtonMeters * 1.001), 0.24, showEnds: false));
        void Point(Role role, double newtonMeters)
        {
            if (newtonMeters >= LeastDrawnNm) marks.Add(new Points(role, [newtonMeters], [at], item.Item.Name));
        }
        Point(Role.Bound, (item.Best?.Bound ?? item.Belts.Max(belt => belt.Bound)).NewtonMeters);
        if (item.Best is not { } best) return;
        Point(Role.ShortTime, best.Available!.Value.NewtonMeters);
        Point(Role.Continuous, best.Continuous!.Value.NewtonMeters);
        if (best.Slip is { } slip)
            marks.Add(new Points(Role.Limit, [slip.Least.NewtonMeters], [at], item.Item.Name, legend: "belt slips, low end"));
    }
}
