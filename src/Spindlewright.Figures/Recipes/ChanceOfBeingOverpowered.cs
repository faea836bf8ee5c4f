using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Figures.Recipes;

/// <summary>Share of machines and hands, drawn together, in which the modelled torque has passed the hand by a speed.</summary>
public sealed class ChanceOfBeingOverpowered : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "chance-to-overpower";

    /// <inheritdoc/>
    public string Name => "chance to overpower a hand";

    /// <inheritdoc/>
    public string Description => "By which speed has the modelled torque passed a hand, and how often?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results) => new(
        Id, "How often the modelled torque has passed a hand, by speed",
        new Axis("spindle speed", "r/min", AxisScale.Logarithmic), new Axis("share of machines and hands", "%"),
        [
            .. results.Uncertainty.Belts.Select(row => new Curve(
                Role.Uncertainty, StudyMarks.Values(Told(row), at => at.Speed.RevolutionsPerMinute),
                StudyMarks.Values(Told(row), at => 100 * at.Chance.Estimate), UncertaintyMarks.WithBound(row),
                FormattableString.Invariant($"{row.Belt.Name}: bound {row.Bound.NewtonMeters:0} N·m"),
                legend: "share passed")),
        ],
        sources: UncertaintyMarks.Sources(results),
        notes: [UncertaintyMarks.Samples(results), "Hands of the sample's people, one drawn with every machine. A small share is no permission: the bound stands whatever the model says."],
        cautions: [UncertaintyMarks.Caution]);

    /// <summary>Up to where all are passed: beyond, lines would only lie on one another.</summary>
    private static IEnumerable<ChanceAtSpeed> Told(UncertainBelt row) =>
        row.Chances.Take(2 + row.Chances.Skip(1).TakeWhile(at => at.Chance.Estimate < 1).Count());
}
