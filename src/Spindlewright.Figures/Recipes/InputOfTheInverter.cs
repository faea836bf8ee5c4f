using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Input current of the inverter over the power at the motor shaft.</summary>
public sealed class InputOfTheInverter : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "input-current";

    /// <inheritdoc/>
    public string Name => "input current against shaft power";

    /// <inheritdoc/>
    public string Description => "How many amperes does the socket give, and how many of them carry power?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Supply.Loads.Count > 1;

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var loads = results.Supply.Loads;
        var watts = StudyMarks.Values(loads, at => (double)at.Shaft.Watts);
        return new(
            Id, "Input current of the inverter",
            new Axis("power at the motor shaft", "W"), new Axis("current of a conductor, rms", "A"),
            [
                new Curve(Role.Demand, watts, StudyMarks.Values(loads, at => at.State.Current.Amperes), legend: "all of it"),
                new Curve(Role.SetCurve, watts, StudyMarks.Values(loads, at => at.State.Fundamental.Amperes), legend: "its fundamental, which carries the power"),
                .. results.Press.Supply.Fuse is { } fuse
                    ? new Mark[] { new Rule(Role.Limit, RuleDirection.Level, fuse.Amperes, "rated current of fuse or plug", legend: "rated current of fuse or plug") }
                    : [],
            ],
            sources: [StudyMarks.OwnModel],
            notes: ["Base frequency, nominal supply, capability side. The rest of the current is harmonics: it heats cable, plug and fuse and carries no power."],
            cautions: ["Rated current compares heating, not tripping. Wiring and protection by a licensed electrician, to local codes."]);
    }
}
