using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Frequencies;

namespace Spindlewright.Figures.Recipes;

/// <summary>Pull-out and locked-rotor torque below base frequency, one frame a boost, each under its own bound.</summary>
public sealed class WhatBoostDoes : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "what-boost-does";

    /// <inheritdoc/>
    public string Name => "what boost does";

    /// <inheritdoc/>
    public string Description => "What torque does boost give back below base frequency, and what does it do to the bound?";

    /// <inheritdoc/>
    public Figure Make(StudyResults results) => new(
        Id, "What boost does to the motor's torque",
        new Axis("output frequency", "Hz"), new Axis("torque at the motor shaft", "N·m"), [],
        new FrameSet("boost", "%", [.. results.Frequencies.Boosts.Select(Frame)], 0),
        sources: [StudyMarks.OwnModel],
        notes: ["A straight law with the boost, over base voltage, at 0 Hz, whatever law is set. Boost overfluxes the unloaded motor at the slow end: see its no-load current before setting any."],
        cautions: [StudyMarks.TorqueCaution]);

    private static Frame Frame(BoostCase boost) => new(
        100 * boost.Share,
        [
            new Rule(Role.Bound, RuleDirection.Level, boost.Bound.NewtonMeters, "bound with this boost"),
            StudyMarks.BothSides(Role.AsModelled, boost.Points, at => at.Frequency, at => at.PullOut, "pull-out as modelled, both sides"),
            StudyMarks.BothSides(Role.LockedRotor, boost.Points, at => at.Frequency, at => at.LockedRotor, "locked-rotor as modelled, both sides"),
        ]);
}
