using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;

namespace Spindlewright.Studies.Sizing;

/// <summary>Why a candidate is not the choice.</summary>
public enum Standing
{
    /// <summary>It is the choice.</summary>
    Chosen,

    /// <summary>It does all the work on the low side and nothing beats it in every respect, but another has the smaller bound.</summary>
    Unbeaten,

    /// <summary>It does all the work, but another one beats it in every respect.</summary>
    Beaten,

    /// <summary>It is a contender, but does all the work in too few of the draws.</summary>
    Unreliable,

    /// <summary>It misses a requirement on the low side, and was not drawn.</summary>
    Misses,

    /// <summary>It misses two requirements or more by its rating and its pulleys alone; nothing of it was solved.</summary>
    Discarded,
}

/// <summary>How many candidates fell out for one reason.</summary>
/// <param name="Why">The reason.</param>
/// <param name="Count">How many.</param>
public sealed record FallenOut(string Why, int Count);

/// <summary>Which motor, which pulleys: the sizing study.</summary>
/// <remarks>
/// Every candidate is screened on the low side: lowest supply, drops in, the smaller torque of cold and hot, the least that a standard lets its motor give,
/// warm air. What does all the work there is compared in every respect. The choice falls among those near the least of them, by draws of all
/// that is uncertain: the low side takes the worst of everything at once, which hardly happens. Nothing here says that a machine is fit to be touched.
/// </remarks>
public sealed class SizingStudy
{
    private readonly SizingRun run;
    private readonly DrawnContenders drawn;

    internal SizingStudy(
        SizingRun run, DrawnContenders drawn, Recommendation recommendation, IReadOnlyList<CandidateResult> unbeaten, SizingSurvival survival,
        IReadOnlyList<TradeFact> facts)
    {
        (this.run, this.drawn) = (run, drawn);
        (Recommendation, Unbeaten, Survival, Facts) = (recommendation, unbeaten, survival, facts);
    }

    /// <summary>What may be bought, altered and set.</summary>
    public SizingWishes Wishes => run.Wishes;

    /// <summary>All that was compared.</summary>
    public CandidateSpace Space => run.Space;

    /// <summary>What the work asks.</summary>
    public IReadOnlyList<WorkDemand> Demands => run.Demands;

    /// <summary>Everything that was required.</summary>
    public IReadOnlyList<Requirement> Requirements => run.Requirements;

    /// <summary>Sets of requirements that no candidate meets together; empty where some candidate meets all.</summary>
    public IReadOnlyList<Conflict> Conflicts => run.Conflicts;

    /// <summary>Requirements that were given up for the nearest set that some candidate meets; empty where some candidate meets all.</summary>
    public IReadOnlyList<Requirement> GivenUp => run.GivenUp;

    /// <summary>How many candidates meet all requirements that were not given up.</summary>
    public int Meeting => run.Meeting.Count;

    /// <summary>Measures that were compared.</summary>
    public IReadOnlyList<Measure> Measures => run.WithPrice ? Measure.All : [.. Measure.All.Where(measure => measure != Measure.Price)];

    /// <summary>The Pareto set of those that do all the work on the low side, in the order of the rule.</summary>
    public IReadOnlyList<CandidateResult> Unbeaten { get; }

    /// <summary>The choice with its reasons.</summary>
    public Recommendation Recommendation { get; }

    /// <summary>How often the choice stays the choice when what is uncertain is drawn.</summary>
    public SizingSurvival Survival { get; }

    /// <summary>Beliefs of the trade, with numbers.</summary>
    public IReadOnlyList<TradeFact> Facts { get; }

    /// <summary>Why the others fell out, most frequent first.</summary>
    public IReadOnlyList<FallenOut> FellOut => run.FellOut();

    /// <summary>How one candidate stands and why.</summary>
    /// <param name="candidate">One of <see cref="CandidateSpace.Candidates"/>.</param>
    /// <returns>Standing and words.</returns>
    /// <exception cref="Foundations.PartException">It is not one of them.</exception>
    public (Standing Standing, string Words) StandingOf(Candidate candidate) => run.StandingOf(candidate, Recommendation.Choice.Candidate, drawn);

    /// <summary>The measures of one candidate.</summary>
    /// <param name="candidate">One of <see cref="CandidateSpace.Candidates"/>.</param>
    /// <returns>Measures, with what it misses.</returns>
    /// <exception cref="Foundations.PartException">It is not one of them.</exception>
    public CandidateResult ResultOf(Candidate candidate) => run.ResultOf(candidate);

    /// <summary>The worst torque margin, the torque bound and whether all is met, of every candidate that was solved: the points of a scatter.</summary>
    /// <returns>One row a candidate that the early filter kept, in order.</returns>
    public IEnumerable<(Candidate Candidate, double Margin, double BoundNm, bool MeetsAll)> Points() => run.Points();

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine; its work is what is wanted.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="seed">Seed of the samples.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends it; nothing is returned then.</param>
    /// <returns>The study; null where the machine file describes no work.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SizingStudy? Of(
        DrillPress press, Handbook handbook, ulong seed = StudyResults.DefaultSeed, IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        if (press.Work.Count == 0) return null;
        var wishes = press.Sizing ?? SizingWishes.Usual(handbook);
        var space = CandidateSpace.Of(press, wishes, handbook, cancellation);
        return Of(press, wishes, space, handbook, seed, progress, cancellation);
    }

    /// <summary>Screens candidates on the low side, and no more: how many do all the work.</summary>
    /// <param name="press">The machine; its work is what is wanted.</param>
    /// <param name="wishes">What may be bought, altered and set.</param>
    /// <param name="space">The candidates.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends it; nothing is returned then.</param>
    /// <returns>The candidates that meet all that some candidate can meet together, in order.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyList<Candidate> Screen(
        DrillPress press, SizingWishes wishes, CandidateSpace space, Handbook handbook, IProgress<double>? progress = null,
        CancellationToken cancellation = default) =>
        [.. SizingRun.Of(press, wishes, space, handbook, true, progress, cancellation).Meeting.Select(place => space.Candidates[place])];

    /// <summary>Runs the study over candidates of the caller's own.</summary>
    /// <param name="press">The machine; its work is what is wanted.</param>
    /// <param name="wishes">What may be bought, altered and set.</param>
    /// <param name="space">The candidates.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="seed">Seed of the samples.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Ends it; nothing is returned then.</param>
    /// <returns>The study.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SizingStudy Of(
        DrillPress press, SizingWishes wishes, CandidateSpace space, Handbook handbook, ulong seed = StudyResults.DefaultSeed,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        var run = SizingRun.Of(press, wishes, space, handbook, true, progress, cancellation);
        var unbeaten = run.Unbeaten();
        var drawn = DrawnContenders.Of(
            run, run.PlaceOf(unbeaten[0].Candidate), Recommending.TightestItem(run, unbeaten[0]), press, handbook, seed, cancellation);
        // Where nobody is reliable the low side decides: it has the best of reasons left.
        var choice = drawn.Choice() ?? run.PlaceOf(unbeaten[0].Candidate);
        var recommendation = new Recommending(run, drawn, unbeaten, press).Of(choice);
        return new(
            run, drawn, recommendation, unbeaten, SizingSurvival.Of(run, drawn, choice),
            TradeFacts.Of(press, wishes, recommendation.Choice, handbook, cancellation));
    }
}
