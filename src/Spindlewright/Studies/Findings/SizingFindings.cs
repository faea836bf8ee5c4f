using static System.FormattableString;

namespace Spindlewright.Studies.Findings;

/// <summary>Which motor and which pulleys, in sentences.</summary>
internal static class SizingFindings
{
    internal static IEnumerable<Finding> Of(StudyResults results)
    {
        if (results.Sizing is not { } study) yield break;
        var (choice, survival) = (study.Recommendation.Choice, study.Survival);
        var givenUp = study.GivenUp.Count == 0
            ? ""
            : $" No candidate meets everything; given up: {string.Join(", ", study.GivenUp.Select(each => each.Name))}.";
        yield return new(
            "Which motor, which pulleys",
            Invariant($"Of {study.Space.Candidates.Count} candidates: {choice.Candidate.Words}. Its bound is {choice.Bound.NewtonMeters:0.0} N·m at the spindle, the least of those that do all the work in {100 * study.Wishes.Reliability:0} of 100 drawn worlds.{givenUp}"),
            Invariant($"It does all the work in {100 * survival.DoesAll.Estimate:0} of 100; in {100 * survival.LessWouldDo.Estimate:0} one with a smaller bound would do as well. {study.Recommendation.HazardPrice[0]}"));
    }
}
