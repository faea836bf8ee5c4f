using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using static Spindlewright.Figures.Recipes.StudyMarks;

namespace Spindlewright.Figures.Recipes;

/// <summary>One spindle speed by belt and by frequency: bound, ideal boost and modelled torque side by side.</summary>
public sealed class BeltOrFrequency : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "belt-or-frequency";

    /// <inheritdoc/>
    public string Name => "belt or frequency";

    /// <inheritdoc/>
    public string Description => "The same spindle speed by belt and by frequency: what differs?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Contact.TwoWays.Speeds.Count > 0;

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var speed = results.Contact.TwoWays.Speeds.OrderByDescending(each => each.Ways.Count).ThenBy(each => each.Speed.RevolutionsPerMinute).First();
        double[] at = [.. speed.Ways.Select((_, i) => i + 1.0)];
        Points Of(Role role, Func<Studies.Contact.SideBySide<UnitsNet.Torque>, UnitsNet.Torque> which, string? legend = null) =>
            new(role, [.. speed.Ways.Select(way => which(way.Torque).NewtonMeters)], [.. at], legend: legend);
        return new(
            Id, FormattableString.Invariant($"{speed.Speed.RevolutionsPerMinute:0} r/min by belt and by frequency"),
            new Axis("torque at the spindle", "N·m", AxisScale.Logarithmic),
            Axis.Names("belt position and frequency", [.. speed.Ways.Select(way => FormattableString.Invariant($"{way.Belt.Name}, {way.Frequency.Hertz:0.#} Hz"))]),
            [
                Of(Role.Bound, each => each.Bound), Of(Role.IdealBoost, each => each.IdealBoost, "ideal boost, hazard side"),
                Of(Role.AsModelled, each => each.AsModelled, "as modelled, hazard side"), Of(Role.CurrentLimited, each => each.CurrentLimited),
                .. speed.AsFound is { } found
                    ? [new Rule(Role.AsFound, RuleDirection.Upright, found.Bound.NewtonMeters, "bound as found")]
                    : Array.Empty<Mark>(),
            ],
            sources: [OwnModel], cautions: [TorqueCaution]);
    }
}
