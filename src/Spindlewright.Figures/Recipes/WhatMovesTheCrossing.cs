using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Figures.Recipes;

/// <summary>How far each uncertain figure moves the crossing of the strong hand, on the position with the largest ratio.</summary>
public sealed class WhatMovesTheCrossing : IFigureRecipe<StudyResults>
{
    private const double Thickness = 0.5;

    /// <inheritdoc/>
    public string Id => "what-moves-the-crossing";

    /// <inheritdoc/>
    public string Name => "what moves the crossing";

    /// <inheritdoc/>
    public string Description => "Which uncertain figure moves the speed at which the strong hand is passed, and how far?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var row = results.Uncertainty.Belts.MaxBy(each => each.Belt.Ratio)!;
        var drivers = row.Drivers;
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var i = 0; i < drivers.Count; i++)
        {
            var (low, high) = (UncertaintyMarks.Held(row, drivers[i].Low), UncertaintyMarks.Held(row, drivers[i].High));
            if (low == high) marks.Add(new Points(Role.Uncertainty, [low], [i + 1], legend: "moves nothing"));
            else
                marks.Add(new RangeBar(
                    Role.Uncertainty, i + 1, Math.Min(low, high), Math.Max(low, high), Thickness, showEnds: false,
                    series: drivers[i].Input.Meaning, legend: "5th to 95th percentile, the others at their medians"));
        }

        return new(
            Id, $"What moves the crossing of the strong hand: {UncertaintyMarks.WithBound(row)}",
            new Axis("spindle speed", "r/min"), Axis.Names("uncertain figure", [.. drivers.Select(ShortName)]),
            marks.ToImmutable(), sources: UncertaintyMarks.Sources(results),
            notes:
            [
                "An end at the slowest speed: passed from standstill. An end at the fastest up to base frequency: not passed below it.",
                FormattableString.Invariant($"Bound at this belt position: {row.Bound.NewtonMeters:0.0} N·m, whatever the figures."),
            ],
            cautions: [UncertaintyMarks.Caution]);
    }

    /// <summary>The figure's key in words, as the machine file has it: its whole meaning is too long for a telephone.</summary>
    private static string ShortName(CrossingDriver driver) => driver.Input.Name.Replace('_', ' ');
}
