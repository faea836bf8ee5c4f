using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Sizing;
using Spindlewright.Studies.Torques;

namespace Spindlewright.Figures.Recipes;

/// <summary>Bound against spindle speed, as found and with the motor and pulleys that the sizing study recommends.</summary>
public sealed class BeforeAndRecommended : IFigureRecipe<StudyResults>
{
    /// <inheritdoc/>
    public string Id => "before-and-recommended";

    /// <inheritdoc/>
    public string Name => "before and recommended";

    /// <inheritdoc/>
    public string Description => "What could a hand meet on the machine as found, and what on the one recommended?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Before is not null
        && results.Sizing?.Recommendation.Choice.Candidate is { Kind: CandidateKind.Converted };

    /// <inheritdoc/>
    public Figure Make(StudyResults results) => BeforeAndAfter.Of(
        Id, "As found and as recommended: torque by spindle speed", results.Before!,
        TorqueStudy.Of(results.Sizing!.Recommendation.Choice.Candidate.Machine(results.Press)));
}
