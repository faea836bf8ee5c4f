using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Frequencies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Pull-out and locked-rotor torque over frequency, one frame a temperature of winding and bars.</summary>
public sealed class WhatTemperatureDoes : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "what-temperature-does";

    /// <inheritdoc/>
    public string Name => "what temperature does";

    /// <inheritdoc/>
    public string Description => "Which torques fall and which rise as the winding warms up?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results) => new(
        Id, "What temperature does to the motor's torque",
        new Axis("output frequency", "Hz"), new Axis("torque at the motor shaft", "N·m"),
        [new Rule(Role.Bound, RuleDirection.Level, results.Torques.Bound.Motor.NewtonMeters, "bound, at any temperature")],
        new FrameSet("winding and bars", "°C", [.. results.Frequencies.Temperatures.Select(Frame)], 0),
        sources: [StudyMarks.OwnModel],
        notes: ["Warm copper takes more of the few volts at the slow end; warm bars give more torque at standstill where the reactance rules."],
        cautions: [StudyMarks.TorqueCaution]);

    private static Frame Frame(TemperatureCase at) => new(
        at.Winding.DegreesCelsius,
        [
            StudyMarks.BothSides(Role.AsModelled, at.Points, point => point.Frequency, point => point.PullOut, "pull-out as modelled, both sides"),
            StudyMarks.BothSides(Role.LockedRotor, at.Points, point => point.Frequency, point => point.LockedRotor, "locked-rotor as modelled, both sides"),
        ]);
}
