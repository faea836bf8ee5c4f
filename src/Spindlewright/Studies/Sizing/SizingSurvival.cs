using Spindlewright.Foundations.Sampling;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>How often one candidate is the one with the least bound that does all the work.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Share">Of the samples, with the doubt of so many.</param>
/// <param name="Bound">No-credit bound at its slowest position.</param>
public sealed record SampledChoice(Candidate Candidate, SampledShare Share, Torque Bound);

/// <summary>The choice were something known better.</summary>
/// <param name="Known">What is known: the lower or the upper half of one figure's draws.</param>
/// <param name="Candidate">The choice then; null where none is reliable.</param>
/// <param name="Stays">True where it is the same.</param>
public sealed record KnownBetter(string Known, Candidate? Candidate, bool Stays);

/// <summary>Whether the choice survives what is uncertain.</summary>
/// <param name="Plan">How samples were drawn.</param>
/// <param name="Contenders">How many candidates were tried in every sample.</param>
/// <param name="DoesAll">Share of the samples in which the choice does all the work.</param>
/// <param name="IsLeast">Share in which nothing with a smaller bound does: it would be chosen with that world known beforehand.</param>
/// <param name="LessWouldDo">Share in which one with a smaller bound does all the work too: the price of not knowing.</param>
/// <param name="Redraws">The choice from each tenth of the samples alone.</param>
/// <param name="Halves">The choice with one figure known to lie in its lower or upper half, one figure after the other.</param>
/// <param name="Choices">Who does all the work with the least bound, sample by sample, most often first.</param>
public sealed record SizingSurvival(
    SamplingPlan Plan, int Contenders, SampledShare DoesAll, SampledShare IsLeast, SampledShare LessWouldDo, IReadOnlyList<KnownBetter> Redraws,
    IReadOnlyList<KnownBetter> Halves, IReadOnlyList<SampledChoice> Choices)
{
    private const int Tenths = 10;

    /// <summary>Share of redraws and halves in which the choice stays the choice.</summary>
    public double Stays => Redraws.Concat(Halves).Average(each => each.Stays ? 1.0 : 0);

    internal static SizingSurvival Of(SizingRun run, DrawnContenders drawn, int choice)
    {
        var own = drawn.Places.IndexOf(choice);
        var (margin, count) = (run.Wishes.TorqueMargin, drawn.Plan.Count);
        // Contenders stand in the order of the rule: the first to do all has the least bound.
        var first = Enumerable.Range(0, count).Select(sample => Enumerable.Range(0, drawn.Places.Count)
            .Where(row => drawn.Does(row, sample, _ => true, margin)).Select(row => (int?)row).FirstOrDefault() ?? -1).ToArray();
        SampledShare Share(Func<int, bool> counts) => new SampleSummary([.. Enumerable.Range(0, count).Select(sample => counts(sample) ? 0.0 : 1)]).AtMost(0.5);
        KnownBetter Known(string words, IReadOnlyList<int> samples) =>
            drawn.Choice(samples) is { } place ? new(words, run.Space.Candidates[place], place == choice) : new(words, null, false);
        return new(
            drawn.Plan, drawn.Places.Count, Share(sample => drawn.Does(own, sample, _ => true, margin)), Share(sample => first[sample] == own),
            Share(sample => first[sample] >= 0 && first[sample] < own && drawn.Does(own, sample, _ => true, margin)),
            [.. Enumerable.Range(0, Tenths).Select(tenth => Known(
                Invariant($"tenth {tenth + 1} of the samples alone"), [.. Enumerable.Range(0, count).Where(sample => sample % Tenths == tenth)]))],
            [.. drawn.Drawn.SelectMany(figure => HalvesOf(figure.Meaning, figure.Draws, Known))],
            [
                .. first.Where(row => row >= 0).GroupBy(row => row).OrderByDescending(group => group.Count()).ThenBy(group => group.Key)
                    .Select(group => new SampledChoice(
                        run.Space.Candidates[drawn.Places[group.Key]], Share(sample => first[sample] == group.Key),
                        Torque.FromNewtonMeters(run.BoundNm(drawn.Places[group.Key])))),
            ]);
    }

    private static IEnumerable<KnownBetter> HalvesOf(string meaning, double[] draws, Func<string, IReadOnlyList<int>, KnownBetter> known)
    {
        int[] rising = [.. Enumerable.Range(0, draws.Length).OrderBy(sample => draws[sample])];
        yield return known($"{meaning}: lower half", rising[..(rising.Length / 2)]);
        yield return known($"{meaning}: upper half", rising[(rising.Length / 2)..]);
    }
}
