using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Studies.Sizing;

/// <summary>
/// The candidates among which a choice may fall, each with its torque margins in every drawn world: supply, drops, motor, belts, friction and
/// cutting torque.
/// </summary>
/// <remarks>
/// The same draws serve every candidate. Speeds and belt positions are those of the low side; heat is judged on the hot side throughout and
/// not drawn. Contenders do all the work on the high side at least, one a motor, law and set of pulleys, nearest to what is chosen on the low side.
/// </remarks>
internal sealed class DrawnContenders
{
    private const int MostSamples = 400;
    private const int MostBelow = 24;
    private const int MostAbove = 4;

    private readonly SizingRun run;
    private readonly double[][][] margins;

    private DrawnContenders(SizingRun run, List<int> places, SamplingPlan plan, double[][][] margins, IReadOnlyList<(string Meaning, double[] Draws)> drawn) =>
        (this.run, Places, Plan, this.margins, Drawn) = (run, places, plan, margins, drawn);

    /// <summary>Places of the contenders, in the order of the rule.</summary>
    internal List<int> Places { get; }

    internal SamplingPlan Plan { get; }

    /// <summary>What was drawn, for the machine chosen on the low side: figures that are fixed are left out.</summary>
    internal IReadOnlyList<(string Meaning, double[] Draws)> Drawn { get; }

    internal static DrawnContenders Of(
        SizingRun run, int cautious, int? tightest, DrillPress press, Handbook handbook, ulong seed, CancellationToken cancellation)
    {
        var places = ContendersOf(run, cautious, tightest);
        var plan = new SamplingPlan(Math.Min(press.Uncertainty.Samples, MostSamples), seed);
        var strength = HandStrength.OfHandbook(handbook);
        var margins = new double[places.Count][][];
        Parallel.For(0, places.Count, new ParallelOptions { CancellationToken = cancellation }, row =>
            margins[row] = DrawnWork.Margins(run, run.Space.Candidates[places[row]], press, strength, plan));
        var chosen = run.Space.Candidates[cautious];
        return new(run, places, plan, margins, DrawnWork.Draws(chosen.Kind == CandidateKind.Converted ? chosen.Machine(press) : press, strength, plan));
    }

    /// <summary>The choice by the rule among contenders that are reliable; null where none is.</summary>
    /// <param name="keeps">Which candidates may be chosen.</param>
    /// <param name="counts">Which operations count beside those given up.</param>
    /// <param name="margin">Torque margin wanted.</param>
    /// <param name="samples">Which samples count; all where null.</param>
    internal int? Choice(Func<Candidate, bool> keeps, Func<int, bool> counts, double margin, IReadOnlyList<int>? samples = null)
    {
        for (var row = 0; row < Places.Count; row++)
            if (keeps(run.Space.Candidates[Places[row]]) && Share(row, counts, margin, samples) >= run.Wishes.Reliability)
                return Places[row];
        return null;
    }

    /// <summary>The choice over everything.</summary>
    internal int? Choice(IReadOnlyList<int>? samples = null) => Choice(_ => true, _ => true, run.Wishes.TorqueMargin, samples);

    /// <summary>Share of samples in which a contender does all the work that counts.</summary>
    internal double Share(int row, Func<int, bool> counts, double margin, IReadOnlyList<int>? samples = null)
    {
        var all = samples ?? [.. Enumerable.Range(0, Plan.Count)];
        return (double)all.Count(sample => Does(row, sample, counts, margin)) / all.Count;
    }

    internal bool Does(int row, int sample, Func<int, bool> counts, double margin)
    {
        for (var item = 0; item < run.Demands.Count; item++)
            if (run.Counts(item) && counts(item) && margins[row][item][sample] < margin)
                return false;
        return true;
    }

    /// <summary>Torque margins of one operation, one a sample; the belt's slip counts as a margin too.</summary>
    internal ReadOnlySpan<double> MarginsOf(int row, int item) => margins[row][item];

    private static List<int> ContendersOf(SizingRun run, int cautious, int? tightest)
    {
        var all = run.Space.Candidates;
        var chosen = new HashSet<int> { cautious };
        void Add(Func<Candidate, bool> keeps, Func<int, bool> counts)
        {
            var able = Enumerable.Range(0, all.Count).Where(place => keeps(all[place]) && DoesAllOnHighSide(run, place, counts))
                .GroupBy(place => (all[place].Motor, all[place].Law, all[place].Pulleys.Way, all[place].Kind))
                .Select(group => group.Contains(cautious) ? cautious : run.Choice(group)!.Value).ToList();
            able.Sort((one, other) => run.Compare(one, other));
            // Whoever does it on the low side will do it in most draws: only those about the first of these can be the choice.
            var first = able.FindIndex(place => Enumerable.Range(0, run.Requirements.Count)
                .All(requirement => !run.Counts(requirement) || !counts(requirement) || run.Screening.Meets(place, requirement)));
            if (first < 0) first = able.Count - 1;
            for (var row = Math.Max(0, first - MostBelow); row <= Math.Min(able.Count - 1, first + MostAbove); row++) chosen.Add(able[row]);
        }

        Add(_ => true, _ => true);
        Add(each => each.Pulleys.Way == PulleyWay.AsTheyAre, _ => true);
        Add(each => each.Pulleys.Way == PulleyWay.Regeared, _ => true);
        Add(each => each.Motor is { IsDescribed: true }, _ => true);
        Add(WithoutBoost, _ => true);
        if (tightest is { } item) Add(_ => true, requirement => requirement != item);
        List<int> places = [.. chosen];
        places.Sort((one, other) => run.Compare(one, other));
        return places;
    }

    /// <summary>True for a straight law without boost.</summary>
    internal static bool WithoutBoost(Candidate candidate) => candidate.Law is { Curve: StraightCurve { Boost.Value: 0 } };

    private static bool DoesAllOnHighSide(SizingRun run, int place, Func<int, bool> counts)
    {
        if (run.Screening.Discarded[place]) return false;
        for (var requirement = 0; requirement < run.Requirements.Count; requirement++)
        {
            if (!run.Counts(requirement) || !counts(requirement) || run.Screening.Meets(place, requirement)) continue;
            if (requirement >= run.Demands.Count || run.IsTooHot(place, requirement)) return false;
            if (run.Parts.Evaluator.Of(run.Space.Candidates[place], requirement, Side.Hazard).Why != Shortfall.None) return false;
        }
        return true;
    }
}
