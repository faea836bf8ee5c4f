using Spindlewright.Foundations;

namespace Spindlewright.Studies.Sizing;

/// <summary>Every candidate against every requirement, on the low side.</summary>
internal sealed class Screening
{
    private const int BlockLength = 128;

    private readonly IReadOnlyList<Candidate> candidates;
    private readonly Outcome[] outcomes;
    private readonly bool[] metLimits;
    private readonly int items, limits;

    private Screening(IReadOnlyList<Candidate> candidates, int items, int limits)
    {
        (this.candidates, this.items, this.limits) = (candidates, items, limits);
        Discarded = new bool[candidates.Count];
        outcomes = new Outcome[candidates.Count * items];
        metLimits = new bool[candidates.Count * limits];
    }

    /// <summary>Candidates that the early filter took out; nothing else is known of them.</summary>
    internal bool[] Discarded { get; }

    /// <summary>Screens.</summary>
    /// <param name="candidates">The candidates.</param>
    /// <param name="evaluator">Tries them.</param>
    /// <param name="items">How many operations.</param>
    /// <param name="limits">Tests of the limits.</param>
    /// <param name="filter">Discards early; null to try all.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="cancellation">Ends it.</param>
    internal static Screening Of(
        IReadOnlyList<Candidate> candidates, CandidateEvaluator evaluator, int items, IReadOnlyList<Func<Candidate, bool>> limits, EarlyFilter? filter,
        IProgress<double>? progress, CancellationToken cancellation)
    {
        var made = new Screening(candidates, items, limits.Count);
        var blocks = (candidates.Count + BlockLength - 1) / BlockLength;
        var (done, telling) = (0, new Lock());
        Parallel.For(0, blocks, new ParallelOptions { CancellationToken = cancellation }, block =>
        {
            cancellation.ThrowIfCancellationRequested();
            for (var place = block * BlockLength; place < Math.Min(candidates.Count, (block + 1) * BlockLength); place++)
                made.Fill(place, evaluator, limits, filter);
            // Told under the lock, so that the share never seems to fall.
            lock (telling) progress?.Report((double)++done / blocks);
        });
        return made;
    }

    private void Fill(int place, CandidateEvaluator evaluator, IReadOnlyList<Func<Candidate, bool>> tests, EarlyFilter? filter)
    {
        var candidate = candidates[place];
        if (filter is not null && !filter.Keeps(candidate))
        {
            Discarded[place] = true;
            return;
        }
        for (var item = 0; item < items; item++) outcomes[place * items + item] = evaluator.Of(candidate, item, Side.Capability);
        for (var limit = 0; limit < limits; limit++) metLimits[place * limits + limit] = tests[limit](candidate);
    }

    internal ref readonly Outcome At(int place, int item) => ref outcomes[place * items + item];

    /// <summary>Whether a candidate meets a requirement: an operation, then a limit.</summary>
    internal bool Meets(int place, int requirement) => !Discarded[place]
        && (requirement < items ? At(place, requirement).Why == Shortfall.None : metLimits[place * limits + requirement - items]);

    internal bool MeetsAll(int place)
    {
        if (Discarded[place]) return false;
        for (var requirement = 0; requirement < items + limits; requirement++)
            if (!Meets(place, requirement)) return false;
        return true;
    }

    /// <summary>Worst torque margin over the operations that count and need torque; infinite where none does.</summary>
    internal double WorstMargin(int place, Func<int, bool> counts)
    {
        var worst = double.PositiveInfinity;
        for (var item = 0; item < items; item++)
            if (counts(item)) worst = Math.Min(worst, At(place, item).Margin);
        return worst;
    }

    /// <summary>Hottest winding over the operations that count, °C; NaN where it is not determined.</summary>
    internal double Hottest(int place, Func<int, bool> counts)
    {
        var hottest = double.NaN;
        for (var item = 0; item < items; item++)
            if (counts(item)) hottest = double.IsNaN(hottest) ? At(place, item).WindingC : Math.Max(hottest, At(place, item).WindingC);
        return hottest;
    }
}
