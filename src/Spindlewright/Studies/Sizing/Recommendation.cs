using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>One of the two or three that are looked at side by side.</summary>
/// <param name="Role">Why it is shown.</param>
/// <param name="Result">Its measures.</param>
public sealed record Finalist(string Role, CandidateResult Result);

/// <summary>What the choice would be if one thing were otherwise.</summary>
/// <param name="If">What is otherwise.</param>
/// <param name="Then">The choice in words; that nothing is left where no candidate remains.</param>
/// <param name="Candidate">The choice; null where none remains.</param>
/// <param name="Bound">Its no-credit bound; null where none remains.</param>
/// <param name="Changes">True where it is another choice.</param>
public sealed record OtherChoice(string If, string Then, Candidate? Candidate, Torque? Bound, bool Changes);

/// <summary>A plain recommendation.</summary>
/// <param name="Choice">The candidate recommended.</param>
/// <param name="Reasons">Sentences with the numbers that a reader can follow by hand.</param>
/// <param name="HazardPrice">What it costs in hazard, in sentences.</param>
/// <param name="Others">What would change it.</param>
/// <param name="Finalists">Those shown side by side, the choice first.</param>
public sealed record Recommendation(
    CandidateResult Choice, IReadOnlyList<string> Reasons, IReadOnlyList<string> HazardPrice, IReadOnlyList<OtherChoice> Others,
    IReadOnlyList<Finalist> Finalists);
