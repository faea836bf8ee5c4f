using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>The V/f curve as set and as it reaches the motor.</summary>
public sealed class VoltsPerHertz : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "volts-per-hertz";

    /// <inheritdoc/>
    public string Name => "V/f curve";

    /// <inheritdoc/>
    public string Description => "How many volts does the inverter set at each frequency, and how many reach a motor at standstill?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var study = results.Voltages;
        var hertz = StudyMarks.Values(study.Points, at => at.Frequency.Hertz);
        return new(
            Id, $"V/f curve: {results.Press.Inverter.Curve.Name}",
            new Axis("output frequency", "Hz"), new Axis("line voltage, fundamental", "V"),
            [
                new Curve(Role.SetCurve, hertz, StudyMarks.Values(study.Points, at => at.Set.Volts), legend: "as set, at nominal supply"),
                new Curve(Role.Handbook, hertz, StudyMarks.Values(study.Points, at => at.RatedFlux.Volts), legend: "rated volts per hertz of the motor"),
                new Band(
                    Role.AsModelled, hertz, StudyMarks.Values(study.Points, at => at.AtMotor.Capability.Volts),
                    StudyMarks.Values(study.Points, at => at.AtMotor.Hazard.Volts),
                    legend: "at the motor at standstill, capability to hazard side"),
                new Rule(Role.Limit, RuleDirection.Level, study.NominalCeiling.Volts, "ceiling, loaded link", legend: "voltage ceiling at nominal supply"),
                new Rule(Role.Limit, RuleDirection.Upright, study.RealBaseFrequency.Hertz, "voltage stops rising", legend: "voltage ceiling at nominal supply"),
            ],
            sources: [StudyMarks.OwnModel],
            notes: ["The drop of the output stage hardly depends on the current: at the slow end it takes a large share of the few volts there are."]);
    }
}
