using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Which spindle speeds each belt position reaches.</summary>
public sealed class SpeedBands : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "speed-bands";

    /// <inheritdoc/>
    public string Name => "speed bands";

    /// <inheritdoc/>
    public string Description => "Which spindle speeds does each belt position reach, and where do they overlap or leave a gap?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var belts = results.Speeds.Belts;
        var names = belts.Select(belt => belt.Belt.Name).ToList();
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < belts.Count; i++)
            marks.Add(new RangeBar(
                Role.SetCurve, i + 1, belts[i].AtLowest.Synchronous.RevolutionsPerMinute,
                belts[i].AtHighest.Synchronous.RevolutionsPerMinute, legend: "lowest to highest frequency"));
        marks.Add(new Points(
            Role.Annotation, [.. belts.Select(belt => belt.AtBase.Synchronous.RevolutionsPerMinute)],
            [.. belts.Select((_, i) => i + 1.0)], legend: "base frequency"));
        AddAsFound(results, names, marks);
        if (results.Press.Spindle.HighestSpeed is { } highest)
            marks.Add(new Rule(Role.Limit, RuleDirection.Upright, highest.RevolutionsPerMinute, "spindle limit", legend: "limit of chuck and bearings"));
        return new(
            Id, "Spindle speeds of the belt positions",
            new Axis("unloaded spindle speed", "r/min", AxisScale.Logarithmic), Axis.Names("belt position", [.. names]),
            marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes: ["Synchronous speeds: under load the spindle turns slower by the motor's slip, and at the lowest frequency by far more."],
            cautions: results.Speeds.Belts.Any(belt => belt.PassesSpindleLimit)
                ? ["The inverter cannot know the belt position: the highest frequency turns a fast position past the limit of the spindle."]
                : []);
    }

    /// <summary>Speeds of the machine as found stand on the row of the position of the same name.</summary>
    private static void AddAsFound(StudyResults results, List<string> names, ImmutableArray<Mark>.Builder marks)
    {
        var found = (results.Before?.Belts ?? []).Where(belt => names.Contains(belt.Belt.Name)).ToList();
        if (found.Count > 0)
            marks.Add(new Points(
                Role.AsFound, [.. found.Select(belt => belt.Speed.RevolutionsPerMinute)],
                [.. found.Select(belt => names.IndexOf(belt.Belt.Name) + 1.0)]));
    }
}
