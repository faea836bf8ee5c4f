using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Continuous torque of the motor over frequency: our own, and the published derating line beside it.</summary>
public sealed class ContinuousTorqueOfTheMotor : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "continuous-torque";

    /// <inheritdoc/>
    public string Name => "continuous torque against frequency";

    /// <inheritdoc/>
    public string Description => "What torque may the motor give for ever at each frequency, by its losses and by the published derating line?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var motor = results.Heat.Motor;
        var hertz = StudyMarks.Values(motor, at => at.Frequency.Hertz);
        return new(
            Id, "Continuous torque of the motor",
            new Axis("output frequency", "Hz"), new Axis("torque at the motor shaft", "N·m"),
            [
                StudyMarks.MotorBound(results),
                new Curve(Role.ShortTime, hertz, StudyMarks.Values(results.Torques.Motor, at => at.ShortTime.NewtonMeters)),
                new Band(
                    Role.Continuous, hertz, StudyMarks.Values(motor, at => Math.Min(at.Continuous.Capability.NewtonMeters, at.Continuous.Hazard.NewtonMeters)),
                    StudyMarks.Values(motor, at => Math.Max(at.Continuous.Capability.NewtonMeters, at.Continuous.Hazard.NewtonMeters)),
                    legend: "continuous by losses, hot to cool side"),
                new Band(
                    Role.Handbook, hertz, StudyMarks.Values(motor, at => (at.Derated - at.DeratedSpread).NewtonMeters),
                    StudyMarks.Values(motor, at => (at.Derated + at.DeratedSpread).NewtonMeters),
                    legend: "derating line of motor guidance, ±0.1 (from memory)"),
            ],
            sources: [StudyMarks.OwnModel, new("motor-guidance", "derating of self-ventilated motors", Provenance.FromMemory)],
            notes:
            [
                "The derating line supposes rated flux at every frequency; plain V/f does not hold it at the slow end, where pull-out, not heat, sets our figure.",
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }
}
