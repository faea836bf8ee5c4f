using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Heat;

namespace Spindlewright.Figures.Recipes;

/// <summary>Continuous and short-time torque of every belt position over spindle speed, with the bounds.</summary>
public sealed class SpindleEnvelopes : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "envelopes-at-the-spindle";

    /// <inheritdoc/>
    public string Name => "continuous and short-time envelopes";

    /// <inheritdoc/>
    public string Description => "What torque may the drill ask for some seconds, what may it ask for ever, and what could a hand meet?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        ImmutableArray<Mark> marks = [.. results.Heat.Spindle.SelectMany(Marks)];
        return new(
            Id, "Continuous and short-time torque at the spindle",
            new Axis("unloaded spindle speed", "r/min", AxisScale.Logarithmic),
            new Axis("torque at the spindle", "N·m", AxisScale.Logarithmic),
            marks, sources: [StudyMarks.OwnModel],
            notes:
            [
                "Continuous: the winding no hotter than at rated load, hot side (warm air, lowest supply, loss of the inverter's waveform); never above short-time.",
                "Short-time: the smallest of 1.6 times rated torque, 0.75 of pull-out torque and the torque at the current limit.",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }

    private static IEnumerable<Mark> Marks(SpindleEnvelope spindle)
    {
        var series = StudyMarks.Position(spindle.Belt.Name);
        var speeds = StudyMarks.Values(spindle.Points, at => at.SynchronousSpeed.RevolutionsPerMinute);
        yield return StudyMarks.SpindleBound(spindle.Belt, spindle.Bound, speeds);
        yield return new Curve(
            Role.ShortTime, speeds, StudyMarks.LogTorques(spindle.Points, at => at.ShortTime.NewtonMeters), series);
        yield return new Curve(
            Role.Continuous, speeds, StudyMarks.LogTorques(spindle.Points, at => at.Continuous.NewtonMeters), series);
    }
}
