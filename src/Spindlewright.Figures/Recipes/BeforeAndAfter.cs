using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Before;
using Spindlewright.Studies.Torques;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyMarks;

namespace Spindlewright.Figures.Recipes;

/// <summary>Bound against spindle speed, as found and converted: what the conversion adds at the slow end and what it leaves.</summary>
public sealed class BeforeAndAfter : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "before-and-after";

    /// <inheritdoc/>
    public string Name => "before and after";

    /// <inheritdoc/>
    public string Description => "What could a hand meet before the conversion, and what after it, at which speeds?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Before is not null;

    /// <inheritdoc/>
    public Figure Make(StudyResults results) => Of(Id, "Before and after the conversion: torque by spindle speed", results.Before!, results.Torques);

    /// <summary>The figure for any conversion of a machine.</summary>
    internal static Figure Of(string id, string title, BeforeStudy before, TorqueStudy torques)
    {
        ImmutableArray<Mark> marks =
        [
            .. torques.Spindle.SelectMany(spindle => new Mark[]
            {
                SpindleBound(spindle.Belt, spindle.Bound, SpeedsRpm(spindle)),
                new Curve(
                    Role.AsModelled, SpeedsRpm(spindle), LogTorques(spindle.Points, at => at.PullOut.Hazard.NewtonMeters), Position(spindle.Belt.Name),
                    side: Foundations.Side.Hazard),
            }),
            .. before.Belts.Select(belt => new Points(
                Role.AsFound, [belt.Speed.RevolutionsPerMinute], [belt.Bound.NewtonMeters], "as found", belt.Belt.Name, legend: "bound as found")),
        ];
        var (slowest, most) = (before.Belts.MinBy(belt => belt.Speed)!, torques.Spindle.MaxBy(spindle => spindle.Bound)!);
        var slowestConverted = torques.Spindle.Min(spindle => spindle.Points[0].SynchronousSpeed.RevolutionsPerMinute);
        return new(
            id, title, new Axis("spindle speed", "r/min", AxisScale.Logarithmic),
            new Axis("largest torque at the spindle", "N·m", AxisScale.Logarithmic), marks, sources: [OwnModel],
            notes:
            [
                Invariant($"As found ({before.Description}) the slowest speed is {slowest.Speed.RevolutionsPerMinute:0} r/min with a bound of {slowest.Bound.NewtonMeters:0.0} N·m; converted, the slowest is {slowestConverted:0} r/min and the largest bound {most.Bound.NewtonMeters:0.0} N·m, {most.Bound / slowest.Bound:0.0} times that."),
                "As found: breakdown torque, high side, at the highest supply, without belt loss, at the speed of rated load. Converted speeds are unloaded.",
            ],
            cautions: [TorqueCaution]);
    }
}
