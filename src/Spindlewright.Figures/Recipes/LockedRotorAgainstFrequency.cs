using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Torque of the motor at standstill over output frequency.</summary>
public sealed class LockedRotorAgainstFrequency : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "locked-rotor-against-frequency";

    /// <inheritdoc/>
    public string Name => "locked-rotor torque against frequency";

    /// <inheritdoc/>
    public string Description => "How does the motor's torque at standstill go with the frequency set?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var motor = results.Torques.Motor;
        var hertz = StudyMarks.Values(motor, at => at.Frequency.Hertz);
        return new(
            Id, "Locked-rotor torque of the motor",
            new Axis("output frequency", "Hz"), new Axis("torque at the motor shaft", "N·m"),
            [
                StudyMarks.MotorBound(results),
                new Curve(Role.IdealBoost, hertz, StudyMarks.Values(motor, at => at.IdealBoostLockedRotor.Hazard.NewtonMeters), side: Side.Hazard),
                new Band(
                    Role.AsModelled, hertz, StudyMarks.Values(motor, at => at.LockedRotor.Capability.NewtonMeters),
                    StudyMarks.Values(motor, at => at.LockedRotor.Hazard.NewtonMeters), legend: "as modelled, capability to hazard side"),
                new Rule(Role.SetCurve, RuleDirection.Upright, results.Press.Inverter.Curve.BaseFrequency.Hertz, "base frequency", legend: "base frequency as set"),
            ],
            sources: [StudyMarks.OwnModel],
            notes: ["Holding is not stopping: while it turns, the motor can give more than at standstill, up to its pull-out torque."],
            cautions: [StudyMarks.TorqueCaution]);
    }
}
