using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Speeds;

namespace Spindlewright.Figures.Recipes;

/// <summary>Spindle speed of every belt position over frequency, unloaded and at the stated torque.</summary>
public sealed class SpeedOverFrequency : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "speed-over-frequency";

    /// <inheritdoc/>
    public string Name => "speed over frequency";

    /// <inheritdoc/>
    public string Description => "Which frequency gives which spindle speed, and how much of it does a load take?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var line in results.Chart.Lines)
        {
            var series = StudyMarks.Position(line.Belt.Name);
            var hertz = StudyMarks.Values(line.Points, at => at.Frequency.Hertz);
            marks.Add(new Curve(
                Role.SetCurve, hertz, StudyMarks.Values(line.Points, at => at.Unloaded.RevolutionsPerMinute), series,
                line.Belt.Name, legend: "unloaded"));
            if (line.Points.Any(at => at.Loaded is not null))
                marks.Add(new Curve(
                    Role.AsModelled, hertz, StudyMarks.Values(line.Points, at => at.Loaded?.RevolutionsPerMinute ?? double.NaN),
                    series, legend: "loaded, capability side"));
        }
        if (results.Press.Spindle.HighestSpeed is { } highest)
            marks.Add(new Rule(
                Role.Limit, RuleDirection.Level, highest.RevolutionsPerMinute, "spindle limit", legend: "limit of chuck and bearings"));
        return new(
            Id, "Spindle speed over frequency", new Axis("output frequency", "Hz"),
            new Axis("spindle speed", "r/min", AxisScale.Logarithmic), marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes:
            [
                FormattableString.Invariant($"Loaded: {100 * SpeedChart.StatedShare:0} % of rated motor torque at the shaft, lowest supply, drops in; where the line ends the motor stalls."),
            ]);
    }
}
