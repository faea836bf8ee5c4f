using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Torques;

namespace Spindlewright.Figures.Recipes;

/// <summary>The three torques of every belt position over the spindle speeds that it reaches.</summary>
public sealed class TorqueAgainstSpindleSpeed : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "torque-against-spindle-speed";

    /// <inheritdoc/>
    public string Name => "torque against spindle speed";

    /// <inheritdoc/>
    public string Description => "What torque reaches the spindle at each speed: as modelled, with ideal boost, and at most?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var spindle = results.Torques.Spindle;
        ImmutableArray<Mark> marks = [.. spindle.SelectMany(Marks)];
        return new(
            Id, "Torque at the spindle by belt position",
            new Axis("unloaded spindle speed", "r/min", AxisScale.Logarithmic),
            new Axis("largest torque from standstill to running", "N·m", AxisScale.Logarithmic),
            marks, sources: [StudyMarks.OwnModel],
            notes:
            [
                "Each belt position has its own bound, the same at every frequency: highest supply, flux that the settings allow, no stator resistance, no belt loss.",
                "As modelled: the band runs from the capability side (lowest supply, drops, belt loss) to the hazard side (highest supply, no drops).",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }

    private static IEnumerable<Mark> Marks(SpindleTorques spindle)
    {
        var (speeds, series) = (StudyMarks.SpeedsRpm(spindle), StudyMarks.Position(spindle.Belt.Name));
        yield return StudyMarks.SpindleBound(spindle.Belt, spindle.Bound, speeds);
        yield return new Curve(
            Role.IdealBoost, speeds, StudyMarks.LogTorques(spindle.Points, at => at.IdealBoost.Hazard.NewtonMeters), series,
            side: Side.Hazard);
        yield return new Band(
            Role.AsModelled, speeds, StudyMarks.LogTorques(spindle.Points, at => at.PullOut.Capability.NewtonMeters),
            StudyMarks.LogTorques(spindle.Points, at => at.PullOut.Hazard.NewtonMeters), series,
            legend: "as modelled, capability to hazard side");
    }
}
