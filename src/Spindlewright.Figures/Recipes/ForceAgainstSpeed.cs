using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using static Spindlewright.Figures.Recipes.StudyMarks;

namespace Spindlewright.Figures.Recipes;

/// <summary>Force at the chuck body against spindle speed on the slowest belt position, with the bound.</summary>
public sealed class ForceAgainstSpeed : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "force-against-speed";

    /// <inheritdoc/>
    public string Name => "force against speed";

    /// <inheritdoc/>
    public string Description => "What pulls at the surface of the chuck at each speed, and how much of it does a setting take away?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var belt = results.Contact.Forces.Belts.MaxBy(each => each.Belt.Ratio)!;
        var chuck = belt.Points.Select(point => (point.Speed, Forces: point.Surfaces.Single(at => at.Surface.Name == "chuck body"))).ToList();
        var speeds = Values(chuck, at => at.Speed.RevolutionsPerMinute);
        Curve Steady(Role role, Func<Studies.Contact.SideBySide<UnitsNet.Force>, UnitsNet.Force> which, string? label = null) =>
            new(role, speeds, Values(chuck, at => which(at.Forces.Steady).Newtons), $"{role} steady", label);
        return new(
            Id, $"Force at the chuck body on {Position(belt.Belt.Name)}", new Axis("spindle speed, unloaded", "r/min"),
            new Axis("force at the surface", "N", AxisScale.Logarithmic),
            [
                Steady(Role.Bound, each => each.Bound, "bound, steady pull"),
                new Curve(Role.Bound, speeds, Values(chuck, at => at.Forces.HeldFast.Bound.Newtons), "bound, hand held fast", "bound, hand held fast"),
                Steady(Role.IdealBoost, each => each.IdealBoost),
                Steady(Role.AsModelled, each => each.AsModelled),
                Steady(Role.CurrentLimited, each => each.CurrentLimited),
            ],
            sources: [OwnModel],
            notes: ["Hazard side. Steady pull: 2 T/d, the thin lines too. Hand held fast: with the moving mass of everything that turns."],
            cautions: [TorqueCaution]);
    }
}
