using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Frequencies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Torque–speed curves of the motor, one frame a frequency.</summary>
public sealed class TorqueAgainstMotorSpeed : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "torque-against-motor-speed";

    /// <inheritdoc/>
    public string Name => "torque–speed curves of the motor";

    /// <inheritdoc/>
    public string Description => "What torque does the motor give from standstill to synchronous speed, and what does frequency do to that curve?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var curves = results.Frequencies.Curves;
        var baseHz = results.Press.Inverter.Curve.BaseFrequency.Hertz;
        var still = curves.Select((curve, i) => (curve.Frequency.Hertz, i)).MinBy(each => Math.Abs(each.Hertz - baseHz)).i;
        return new(
            Id, "Torque–speed curves of the motor", new Axis("motor speed", "r/min"), new Axis("torque at the motor shaft", "N·m"),
            [new Rule(Role.Bound, RuleDirection.Level, results.Torques.Bound.Motor.NewtonMeters, "bound")],
            new FrameSet("frequency", "Hz", [.. curves.Select(Frame)], still),
            sources: [StudyMarks.OwnModel],
            notes: ["Air-gap torque, before friction and windage. Below base frequency volts go with hertz, above they stand: there torque falls with the square of the frequency."],
            cautions: [StudyMarks.TorqueCaution]);
    }

    private static Frame Frame(TorqueSpeedCurve curve)
    {
        var rpm = StudyMarks.Values(curve.Points, at => at.Speed.RevolutionsPerMinute);
        return new(curve.Frequency.Hertz,
        [
            new Curve(Role.IdealBoost, rpm, StudyMarks.Values(curve.Points, at => at.IdealBoost.NewtonMeters), side: Side.Hazard),
            new Band(
                Role.AsModelled, rpm, StudyMarks.Values(curve.Points, at => at.AsModelled.Capability.NewtonMeters),
                StudyMarks.Values(curve.Points, at => at.AsModelled.Hazard.NewtonMeters), legend: "as modelled, capability to hazard side"),
        ]);
    }
}
