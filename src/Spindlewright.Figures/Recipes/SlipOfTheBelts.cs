using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Torque at which the belts slip, beside what the motor gives for some seconds, with the bound.</summary>
public sealed class SlipOfTheBelts : IFigureRecipe<StudyResults>
{
    private const double LeastDrawnNm = 0.01;

    /// <inheritdoc/>
    public string Id => "belt-slip";

    /// <inheritdoc/>
    public string Name => "belt slip";

    /// <inheritdoc/>
    public string Description => "Does the belt slip before the motor has given what it can for some seconds?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var rows = results.Ratios.Belts;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < rows.Count; i++)
        {
            var series = StudyMarks.Position(rows[i].Belt.Name);
            marks.Add(new Points(Role.Bound, [rows[i].Bound.NewtonMeters], [i + 1], series));
            if (rows[i].ShortTime.NewtonMeters >= LeastDrawnNm)
                marks.Add(new Points(Role.ShortTime, [rows[i].ShortTime.NewtonMeters], [i + 1], series));
            if (rows[i].Slip is { } slip && slip.Least.NewtonMeters >= LeastDrawnNm)
                marks.Add(new RangeBar(
                    Role.Limit, i + 1, slip.Least.NewtonMeters, slip.Most.NewtonMeters, 0.24, showEnds: false, legend: "belt slips, low to high end"));
        }
        return new(
            Id, "Where the belts slip", new Axis("torque at the spindle, base frequency", "N·m", AxisScale.Logarithmic),
            Axis.Names("belt position", [.. rows.Select(row => row.Belt.Name)]), marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes:
            [
                "Low end: low tension and low friction; high end: the reverse. Without a description of the belts there is no bar.",
                "A belt that slips is no limit on what a hand could meet: the bound credits none.",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }
}
