using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;

namespace Spindlewright.Studies.Sizing;

/// <summary>Why a candidate is not the choice.</summary>
public enum Standing
{
    /// <summary>It is the choice.</summary>
    Chosen,

    /// <summary>It does all the work and nothing beats it in every respect, but another has the smaller bound.</summary>
    Unbeaten,

    /// <summary>It does all the work, but another one beats it in every respect.</summary>
    Beaten,

    /// <summary>It misses a requirement.</summary>
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
/// Capability takes the low side throughout: lowest supply, drops in, the smaller torque of cold and hot, warm air. So a candidate that
/// does the work here does it on paper in the worst case of its defaults; how often it stays the choice when they are drawn is
/// <see cref="Survival"/>. Nothing here says that a machine is fit to be touched.
/// </remarks>
public sealed class SizingStudy
{
    private readonly SizingRun run;

    internal SizingStudy(SizingRun run, Recommendation recommendation, IReadOnlyList<CandidateResult> unbeaten, SizingSurvival? survival, IReadOnlyList<TradeFact> facts)
    {
        this.run = run;
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

    /// <summary>The Pareto set, in the order of the rule: the choice first.</summary>
    public IReadOnlyList<CandidateResult> Unbeaten { get; }

    /// <summary>The choice with its reasons.</summary>
    public Recommendation Recommendation { get; }

    /// <summary>How often the choice stays the choice when what is uncertain is drawn; null at fixed speeds.</summary>
    public SizingSurvival? Survival { get; }

    /// <summary>Beliefs of the trade, with numbers.</summary>
    public IReadOnlyList<TradeFact> Facts { get; }

    /// <summary>Why the others fell out, most frequent first.</summary>
    public IReadOnlyList<FallenOut> FellOut => run.FellOut();

    /// <summary>How one candidate stands and why.</summary>
    /// <param name="candidate">One of <see cref="CandidateSpace.Candidates"/>.</param>
    /// <returns>Standing and words.</returns>
    /// <exception cref="Foundations.PartException">It is not one of them.</exception>
    public (Standing Standing, string Words) StandingOf(Candidate candidate) => run.StandingOf(candidate, Recommendation.Choice.Candidate);

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

    /// <summary>Runs the study over candidates of the caller's own.</summary>
    /// <inheritdoc cref="Of(DrillPress, Handbook, ulong, IProgress{double}?, CancellationToken)"/>
    /// <param name="wishes">What may be bought, altered and set.</param>
    /// <param name="space">The candidates.</param>
    public static SizingStudy Of(
        DrillPress press, SizingWishes wishes, CandidateSpace space, Handbook handbook, ulong seed = StudyResults.DefaultSeed,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        var run = SizingRun.Of(press, wishes, space, handbook, true, progress, cancellation);
        var unbeaten = run.Unbeaten();
        var recommendation = Recommending.Of(run, unbeaten, press);
        return new(
            run, recommendation, unbeaten, SizingSurvival.Of(run, recommendation.Choice, press, handbook, seed, cancellation),
            TradeFacts.Of(press, wishes, run, recommendation.Choice, handbook, cancellation));
    }
}
