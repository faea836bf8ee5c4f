using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Studies;
using Spindlewright.Studies.Sizing;
using static System.FormattableString;

namespace Spindlewright.Figures.Recipes;

/// <summary>What a candidate leaves for a hand to meet, against what it has for the work: the trade-off, with the Pareto set and the choice.</summary>
public sealed class BoundAgainstMargin : IFigureRecipe<StudyResults>
{
    /// <summary>Of those that miss something, so many are drawn: more is a blot.</summary>
    private const int MissingShown = 250;
    private const double LeastDrawn = 0.05;

    /// <inheritdoc/>
    public string Id => "which-motor";

    /// <inheritdoc/>
    public string Name => "which motor";

    /// <inheritdoc/>
    public string Description => "How much torque bound does each candidate cost, and what margin does it give the work?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Sizing is not null;

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var study = results.Sizing!;
        var points = study.Points().Where(point => double.IsFinite(point.Margin) && point.Margin >= LeastDrawn).ToList();
        var missing = points.Where(point => !point.MeetsAll).ToList();
        var step = Math.Max(1, missing.Count / MissingShown);
        var marks = ImmutableArray.CreateBuilder<Mark>();
        Add(marks, Role.Handbook, "misses something", [.. missing.Where((_, place) => place % step == 0)]);
        Add(marks, Role.Uncertainty, "does all, low side", [.. points.Where(point => point.MeetsAll)]);
        var unbeaten = study.Unbeaten.Select(each => each.Candidate).ToHashSet(ReferenceEqualityComparer.Instance);
        Add(marks, Role.SetCurve, "nothing beats it", [.. points.Where(point => unbeaten.Contains(point.Candidate))]);
        foreach (var finalist in study.Recommendation.Finalists) Add(marks, finalist);
        marks.Add(new Rule(Role.Limit, RuleDirection.Level, study.Wishes.TorqueMargin, "margin wanted"));
        return new(
            Id, "Which motor: torque margin against torque bound", new Axis("torque bound at the spindle", "N·m", AxisScale.Logarithmic),
            new Axis("worst torque margin", "", AxisScale.Logarithmic), marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes:
            [
                Invariant($"One point a candidate, low side; {study.Space.Candidates.Count} were compared, those that miss something are thinned out. Bars of the finalists: low to high side."),
                Invariant($"Recommended: {study.Recommendation.Choice.Candidate.Words}, bound {study.Recommendation.Choice.Bound.NewtonMeters:0.0} N·m: the least that does all the work in {100 * study.Wishes.Reliability:0} of 100 drawn worlds."),
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }

    private static void Add(
        ImmutableArray<Mark>.Builder marks, Role role, string legend, List<(Candidate Candidate, double Margin, double BoundNm, bool MeetsAll)> points)
    {
        if (points.Count > 0)
            marks.Add(new Points(role, [.. points.Select(point => point.BoundNm)], [.. points.Select(point => point.Margin)], legend, legend: legend));
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, Finalist finalist)
    {
        if (finalist.Result.Margin is not { } margin || margin.Least < LeastDrawn) return;
        var role = finalist.Role switch { "recommended" => Role.Demand, "as found" => Role.AsFound, _ => Role.Hand };
        marks.Add(new Points(
            role, [finalist.Result.Bound.NewtonMeters], [margin.Least], finalist.Role, legend: role == Role.Hand ? "also compared" : finalist.Role,
            lower: [margin.Least], upper: [margin.Most]));
    }
}
