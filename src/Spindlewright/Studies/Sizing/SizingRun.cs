using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>What was screened and measured, before anything is recommended.</summary>
internal sealed class SizingRun
{
    private readonly Dictionary<Candidate, int> places;
    private readonly bool[] counted;
    private readonly int[] beatenBy;
    private readonly Dictionary<int, int> costRow;

    private SizingRun(SizingParts parts, Screening screening, ConflictSearch? conflicts, CancellationToken cancellation)
    {
        Parts = parts;
        Screening = screening;
        places = parts.Space.Candidates.Index().ToDictionary(each => each.Item, each => each.Index, (IEqualityComparer<Candidate>)ReferenceEqualityComparer.Instance);
        counted = new bool[parts.Requirements.Count];
        Array.Fill(counted, true);
        Conflicts = conflicts is null ? [] : [.. conflicts.Smallest().Select(ConflictOf)];
        if (conflicts is not null) GiveUp(conflicts);
        Meeting = MeetingWhere((place, requirement) => Screening.Meets(place, requirement));
        WithPrice = Meeting.All(place => parts.Space.Candidates[place].Price is not null);
        Costs = new double[Meeting.Count][];
        Parallel.For(0, Meeting.Count, new ParallelOptions { CancellationToken = cancellation }, row =>
            Costs[row] = parts.Builder.Costs(screening, Meeting[row], parts.Space.Candidates[Meeting[row]], Counts, WithPrice));
        costRow = Meeting.Index().ToDictionary(each => each.Item, each => each.Index);
        beatenBy = ParetoSet.BeatenBy(Costs);
    }

    internal SizingParts Parts { get; }

    internal Screening Screening { get; }

    internal SizingWishes Wishes => Parts.Wishes;

    internal CandidateSpace Space => Parts.Space;

    internal IReadOnlyList<WorkDemand> Demands => Parts.Demands;

    internal IReadOnlyList<Requirement> Requirements => Parts.Requirements;

    internal IReadOnlyList<Conflict> Conflicts { get; }

    internal IReadOnlyList<Requirement> GivenUp => [.. Requirements.Where((_, requirement) => !counted[requirement])];

    /// <summary>Places of the candidates that meet all that was not given up.</summary>
    internal IReadOnlyList<int> Meeting { get; }

    internal double[][] Costs { get; }

    internal bool WithPrice { get; }

    internal static SizingRun Of(
        DrillPress press, SizingWishes wishes, CandidateSpace space, Handbook handbook, bool filtered, IProgress<double>? progress,
        CancellationToken cancellation)
    {
        var parts = SizingParts.Of(press, wishes, space, handbook, cancellation);
        Screening Screen(EarlyFilter? filter) => Screening.Of(
            space.Candidates, parts.Evaluator, parts.Demands.Count, parts.Limits, filter, progress, cancellation);
        var screening = Screen(filtered ? new EarlyFilter(press, wishes, parts.Demands, parts.Limits) : null);
        if (Enumerable.Range(0, space.Candidates.Count).Any(screening.MeetsAll)) return new(parts, screening, null, cancellation);
        // Nobody meets all: what conflicts can only be seen with everybody tried.
        if (filtered) screening = Screen(null);
        return new(parts, screening, new(space.Candidates.Count, parts.Requirements.Count, screening.Meets), cancellation);
    }

    /// <summary>Places of the candidates that meet every requirement that counts, by a test of one's own.</summary>
    internal IReadOnlyList<int> MeetingWhere(Func<int, int, bool> meets) =>
    [
        .. Enumerable.Range(0, Space.Candidates.Count)
            .Where(place => !Screening.Discarded[place] && Enumerable.Range(0, counted.Length).All(requirement => !counted[requirement] || meets(place, requirement))),
    ];

    internal bool Counts(int requirement) => counted[requirement];

    /// <summary>Whether an operation takes the winding past its class limit on the hot side, whatever else it does.</summary>
    internal bool IsTooHot(int place, int item) => Space.Candidates[place].Motor is not null
        && Screening.At(place, item).WindingC > Parts.Evaluator.Motor(Space.Candidates[place]).Heated(Side.Capability).Limit.DegreesCelsius;

    internal double BoundNm(int place) => Parts.Bounds.AtSlowest(Parts.Press, Space.Candidates[place]).NewtonMeters;

    /// <summary>Puts two places in the order of the rule.</summary>
    internal int Compare(int one, int other) =>
        ChoiceRule.Compare((Space.Candidates[one], BoundNm(one)), (Space.Candidates[other], BoundNm(other)));

    /// <summary>The choice among some places by the rule, whoever does the work; null for none.</summary>
    internal int? Choice(IEnumerable<int> among)
    {
        int? best = null;
        foreach (var place in among)
            if (best is not { } so || Compare(place, so) < 0)
                best = place;
        return best;
    }

    /// <summary>Places of those that nothing beats.</summary>
    internal IEnumerable<int> UnbeatenPlaces => Meeting.Where((_, row) => beatenBy[row] < 0);

    /// <summary>Those that nothing else among some places beats; places that do not meet all have no costs yet.</summary>
    internal IEnumerable<int> UnbeatenAmong(IEnumerable<int> among)
    {
        var places = among.ToList();
        var beaten = ParetoSet.BeatenBy([.. places.Select(place => Costs[costRow[place]])]);
        return places.Where((_, row) => beaten[row] < 0);
    }

    internal IReadOnlyList<CandidateResult> Unbeaten()
    {
        var ordered = UnbeatenPlaces.ToList();
        ordered.Sort(Compare);
        return [.. ordered.AsParallel().AsOrdered().Select(ResultAt)];
    }

    internal CandidateResult ResultAt(int place) => Parts.Builder.Of(Screening, place, Space.Candidates[place], Counts);

    internal CandidateResult ResultOf(Candidate candidate) => ResultAt(PlaceOf(candidate));

    internal int PlaceOf(Candidate candidate) => places.TryGetValue(candidate, out var place)
        ? place
        : throw new PartException("sizing", "candidate", candidate.Words, "one of the candidates of this study");

    internal IEnumerable<(Candidate, double, double, bool)> Points()
    {
        var meeting = Meeting.ToHashSet();
        for (var place = 0; place < Space.Candidates.Count; place++)
            if (!Screening.Discarded[place])
                yield return (Space.Candidates[place], Screening.WorstMargin(place, Counts), BoundNm(place), meeting.Contains(place));
    }

    internal (Standing, string) StandingOf(Candidate candidate, Candidate choice, DrawnContenders drawn)
    {
        var place = PlaceOf(candidate);
        if (ReferenceEquals(candidate, choice)) return (Standing.Chosen, "the choice");
        if (drawn.Places.IndexOf(place) is var contender && contender >= 0 && drawn.Share(contender, _ => true, Wishes.TorqueMargin) is var share && share < Wishes.Reliability)
            return (Standing.Unreliable, Invariant($"does all the work in {100 * share:0} of 100 draws, fewer than the {100 * Wishes.Reliability:0} wanted"));
        if (Screening.Discarded[place]) return (Standing.Discarded, "misses two requirements or more by rating and pulleys alone");
        var missed = Enumerable.Range(0, counted.Length).Where(requirement => counted[requirement] && !Screening.Meets(place, requirement)).ToList();
        if (missed.Count > 0) return (Standing.Misses, $"misses {string.Join(", ", missed.Select(each => Missed(place, each)))}");
        var row = costRow[place];
        return beatenBy[row] < 0
            ? (Standing.Unbeaten, Invariant($"does all the work; its bound is {BoundNm(place):0.0} N·m"))
            : (Standing.Beaten, $"beaten in every respect by {Space.Candidates[Meeting[beatenBy[row]]].Words}");
    }

    internal IReadOnlyList<FallenOut> FellOut()
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        void Count(string why) => counts[why] = counts.GetValueOrDefault(why) + 1;
        var row = 0;
        for (var place = 0; place < Space.Candidates.Count; place++)
        {
            if (row < Meeting.Count && Meeting[row] == place)
            {
                if (beatenBy[row++] >= 0) Count("does all the work, but another beats it in every respect");
                continue;
            }
            Count(Screening.Discarded[place]
                ? "misses two requirements or more by rating and pulleys alone"
                : Missed(place, Enumerable.Range(0, counted.Length).First(requirement => counted[requirement] && !Screening.Meets(place, requirement))));
        }
        return [.. counts.Select(each => new FallenOut(each.Key, each.Value)).OrderByDescending(each => each.Count).ThenBy(each => each.Why, StringComparer.Ordinal)];
    }

    private string Missed(int place, int requirement) => requirement < Demands.Count
        ? $"{Requirements[requirement].Name}: {Screening.At(place, requirement).Why.InWords()}"
        : $"{Requirements[requirement].Name}: over the limit";

    private Conflict ConflictOf(IReadOnlyList<int> together) => new(
        [.. together.Select(requirement => Requirements[requirement])],
        together is [var single] ? single < Demands.Count ? Demands[single].Unmet ?? NearestMiss(single) : "no candidate keeps to it" : null);

    /// <summary>How near the best candidate comes to an operation that nobody does.</summary>
    private string NearestMiss(int item)
    {
        var nearest = Enumerable.Range(0, Space.Candidates.Count).Aggregate((best, place) =>
            Screening.At(place, item).Beats(Screening.At(best, item)) ? place : best);
        var outcome = Screening.At(nearest, item);
        return Invariant($"the nearest, {Space.Candidates[nearest].Words}, turns {outcome.Rpm:0} r/min with {outcome.AvailableNm:0.0} N·m (bound {BoundNm(nearest):0.0} N·m): {outcome.Why.InWords()}");
    }

    /// <summary>Keeps the largest set of requirements that somebody meets; of several, the one whose choice has the least bound.</summary>
    private void GiveUp(ConflictSearch search)
    {
        var kept = search.Nearest.Select(set => (Set: set.ToHashSet(), Choice: Choice(Enumerable.Range(0, Space.Candidates.Count)
                .Where(place => set.All(requirement => Screening.Meets(place, requirement))))!.Value))
            .Aggregate((best, other) => Compare(other.Choice, best.Choice) < 0 ? other : best);
        for (var requirement = 0; requirement < counted.Length; requirement++) counted[requirement] = kept.Set.Contains(requirement);
    }
}

/// <summary>All that a run of the sizing study works with.</summary>
internal sealed record SizingParts(
    DrillPress Press, SizingWishes Wishes, CandidateSpace Space, IReadOnlyList<WorkDemand> Demands, IReadOnlyList<Requirement> Requirements,
    IReadOnlyList<Func<Candidate, bool>> Limits, CandidateEvaluator Evaluator, BoundsOfMotors Bounds, ResultBuilder Builder)
{
    internal static SizingParts Of(DrillPress press, SizingWishes wishes, CandidateSpace space, Handbook handbook, CancellationToken cancellation)
    {
        var demands = WorkDemand.Of(press, wishes, handbook);
        var requirements = Requirement.Of(press, wishes, demands);
        var evaluator = new CandidateEvaluator(press, wishes, space, demands, handbook, cancellation);
        var bounds = new BoundsOfMotors(press, space, evaluator.Motor, cancellation);
        return new(
            press, wishes, space, demands, requirements, [.. Requirement.LimitsOf(press, wishes).Select(limit => limit.Meets)], evaluator, bounds,
            new(press, wishes, handbook, demands, requirements, evaluator, bounds));
    }
}
