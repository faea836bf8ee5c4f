using System.Numerics;

namespace Spindlewright.Studies.Sizing;

/// <summary>Requirements that no candidate meets together.</summary>
/// <param name="Together">One requirement that nobody meets, or several of which nobody meets all, though somebody meets all but any one of them.</param>
/// <param name="Why">For a single one that no motor helps: the reason; null otherwise.</param>
public sealed record Conflict(IReadOnlyList<Requirement> Together, string? Why);

/// <summary>Which requirements conflict, and what is nearest to all of them.</summary>
internal sealed class ConflictSearch
{
    private const int MostTogether = 3;

    private readonly int count;
    private readonly BigInteger[] met;

    /// <summary>Prepares.</summary>
    /// <param name="candidates">How many candidates.</param>
    /// <param name="requirements">How many requirements.</param>
    /// <param name="meets">Whether a candidate meets a requirement.</param>
    internal ConflictSearch(int candidates, int requirements, Func<int, int, bool> meets)
    {
        count = requirements;
        var sets = new HashSet<BigInteger>();
        for (var candidate = 0; candidate < candidates; candidate++)
            sets.Add(Mask(Enumerable.Range(0, requirements).Where(requirement => meets(candidate, requirement))));
        // Who meets less than another says nothing about what can be met together.
        met = [.. sets.Where(one => !sets.Any(other => other != one && (one & other) == one)).OrderByDescending(Size).ThenByDescending(set => set)];
    }

    /// <summary>The largest sets that somebody meets, in a fixed order.</summary>
    internal IEnumerable<IReadOnlyList<int>> Nearest => met.TakeWhile(set => Size(set) == Size(met[0])).Select(Members);

    /// <summary>Sets of requirements that nobody meets together, none of which contains another: single ones, pairs and triples, or else one larger set.</summary>
    internal IReadOnlyList<IReadOnlyList<int>> Smallest()
    {
        if (met.Any(set => Size(set) == count)) return [];
        var found = new List<BigInteger>();
        foreach (var set in Sets(MostTogether))
            if (!found.Any(smaller => (smaller & set) == smaller) && !met.Any(one => (one & set) == set))
                found.Add(set);
        if (found.Count == 0) found.Add(Reduced());
        return [.. found.Select(Members)];
    }

    /// <summary>Everything, less whatever can be left out while nobody meets the rest.</summary>
    private BigInteger Reduced()
    {
        var set = Mask(Enumerable.Range(0, count));
        for (var requirement = 0; requirement < count; requirement++)
        {
            var without = set & ~(BigInteger.One << requirement);
            if (!met.Any(one => (one & without) == without)) set = without;
        }
        return set;
    }

    private IEnumerable<BigInteger> Sets(int most)
    {
        IEnumerable<(BigInteger Set, int Last)> level = [(BigInteger.Zero, -1)];
        for (var size = 1; size <= most; size++)
        {
            level = level.SelectMany(each => Enumerable.Range(each.Last + 1, count - each.Last - 1)
                .Select(next => (each.Set | (BigInteger.One << next), next))).ToList();
            foreach (var (set, _) in level) yield return set;
        }
    }

    private static BigInteger Mask(IEnumerable<int> members) => members.Aggregate(BigInteger.Zero, (set, member) => set | (BigInteger.One << member));

    private static long Size(BigInteger set) => (long)BigInteger.PopCount(set);

    private List<int> Members(BigInteger set) => [.. Enumerable.Range(0, count).Where(member => !((set >> member) & BigInteger.One).IsZero)];
}
