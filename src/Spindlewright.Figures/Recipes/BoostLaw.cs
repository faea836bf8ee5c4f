using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>The volts that would hold breakdown torque, beside the volts that are set.</summary>
public sealed class BoostLaw : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "boost-law";

    /// <inheritdoc/>
    public string Name => "boost law";

    /// <inheritdoc/>
    public string Description => "How many volts would hold the motor's breakdown torque at every frequency, and how many are set?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var law = results.Frequencies.BoostLaw;
        var hertz = StudyMarks.Values(law, at => at.Frequency.Hertz);
        return new(
            Id, "Volts for constant breakdown torque", new Axis("output frequency", "Hz"), new Axis("line voltage, fundamental", "V"),
            [
                new Curve(Role.SetCurve, hertz, StudyMarks.Values(law, at => at.Set.Volts), legend: "as set"),
                new Band(
                    Role.Demand, hertz, StudyMarks.Values(law, at => Math.Min(at.Needed.Capability.Volts, at.Needed.Hazard.Volts)),
                    StudyMarks.Values(law, at => Math.Max(at.Needed.Capability.Volts, at.Needed.Hazard.Volts)),
                    legend: "for constant breakdown torque"),
            ],
            sources: [StudyMarks.OwnModel],
            notes:
            [
                "At the motor's terminals, saturation left out; below the frequency where breakdown stands at standstill the peak lies beyond it.",
                "Not a setting to copy: at no load these volts overflux the core, and the bound on torque rises with them.",
            ]);
    }
}
