using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Pull-out, locked-rotor and continuous torque of the motor over output frequency, under the bound.</summary>
public sealed class TorqueAgainstFrequency : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "torque-against-frequency";

    /// <inheritdoc/>
    public string Name => "torque against frequency";

    /// <inheritdoc/>
    public string Description => "What can the motor pull, hold at standstill and give for ever at each frequency?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var (motor, heat) = (results.Torques.Motor, results.Heat.Motor);
        var hertz = StudyMarks.Values(motor, at => at.Frequency.Hertz);
        return new(
            Id, "Torque of the motor against frequency",
            new Axis("output frequency", "Hz"), new Axis("torque at the motor shaft", "N·m"),
            [
                new Rule(Role.Bound, RuleDirection.Level, results.Torques.Bound.Motor.NewtonMeters, "bound"),
                new Curve(Role.IdealBoost, hertz, StudyMarks.Values(motor, at => at.IdealBoost.Hazard.NewtonMeters), side: Side.Hazard),
                StudyMarks.BothSides(Role.AsModelled, motor, at => at.Frequency, at => at.PullOut, "pull-out as modelled, both sides"),
                StudyMarks.BothSides(Role.LockedRotor, motor, at => at.Frequency, at => at.LockedRotor, "locked-rotor as modelled, both sides"),
                StudyMarks.BothSides(Role.Continuous, heat, at => at.Frequency, at => at.Continuous, "continuous by losses, both sides"),
                new Rule(Role.SetCurve, RuleDirection.Upright, results.Press.Inverter.Curve.BaseFrequency.Hertz, "base frequency", legend: "base frequency as set"),
            ],
            sources: [StudyMarks.OwnModel],
            notes:
            [
                "Pull-out: the largest torque from standstill to synchronous speed. Breakdown torque is the peak of the whole curve; where that lies beyond standstill, pull-out and locked-rotor torque are the same.",
                "Below base frequency volts go with hertz; above it they stand, and power is what stays about constant.",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }
}
