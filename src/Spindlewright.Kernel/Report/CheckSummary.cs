using System.Collections.Immutable;
using Spindlewright.Checks;
using Spindlewright.Figures;
using Spindlewright.Foundations;

namespace Spindlewright.Kernel.Report;

/// <summary>The published checks as the report shows them; <c>docs/validation.md</c> has the whole.</summary>
internal static class CheckSummary
{
    internal static string Sentence(IReadOnlyList<Verdict> verdicts)
    {
        var published = verdicts.Where(verdict => verdict.Check.CountsAsPublished).ToList();
        return FormattableString.Invariant(
            $"Of {published.Count} published figures (read in the source or in a transcription) {Count(published, Outcome.Pass)} are reproduced within their tolerance, {Count(published, Outcome.Fail)} are not and {Count(published, Outcome.NotEvaluated)} are not evaluated. {verdicts.Count - published.Count} more, from memory or our own arithmetic, are counted apart.");
    }

    internal static Table Table(IReadOnlyList<Verdict> verdicts) => new(
        "checks-by-area", "Checks by area",
        [
            new("area", Align: Alignment.Left), new("published", Format: NumberFormat.Fixed(0)), new("reproduced", Format: NumberFormat.Fixed(0)),
            new("others", Format: NumberFormat.Fixed(0)), new("reproduced", Format: NumberFormat.Fixed(0)),
        ],
        [.. verdicts.GroupBy(verdict => verdict.Check.Area).Select(area =>
        {
            var published = area.Where(verdict => verdict.Check.CountsAsPublished).ToList();
            var others = area.Where(verdict => !verdict.Check.CountsAsPublished).ToList();
            return ImmutableArray.Create<Cell>(
                area.Key, published.Count, Count(published, Outcome.Pass), others.Count, Count(others, Outcome.Pass));
        })]);

    internal static Table Rows(IReadOnlyList<Verdict> verdicts) => new(
        "checks-all", "Every check",
        [
            new("check", Align: Alignment.Left), new("quantity", Align: Alignment.Left), new("inputs", Align: Alignment.Left),
            new("value", Format: new(Significant: 5)), new("ours", Format: new(Significant: 5)), new("unit", Align: Alignment.Left),
            new("allowed", Format: new(Significant: 2)), new("why", Align: Alignment.Left), new("source", Align: Alignment.Left),
            new("provenance", Align: Alignment.Left), new("outcome", Align: Alignment.Left),
        ],
        [.. verdicts.Select(verdict => ImmutableArray.Create<Cell>(
            verdict.Check.Id, verdict.Check.Quantity, verdict.Check.Inputs.ToString(), verdict.Check.Value,
            verdict.Evaluation is { } evaluation ? evaluation.Value : Cell.Empty, verdict.Check.Unit, verdict.Allowed,
            verdict.Check.Tolerance.Reason, verdict.Check.Citation.Source, verdict.Check.Citation.Provenance.InWords(),
            verdict.Outcome switch
            {
                Outcome.Pass => "reproduced",
                Outcome.Fail => "not reproduced",
                _ => "not evaluated",
            }))]);

    private static int Count(List<Verdict> verdicts, Outcome outcome) => verdicts.Count(verdict => verdict.Outcome == outcome);
}
