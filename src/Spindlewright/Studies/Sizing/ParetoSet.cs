namespace Spindlewright.Studies.Sizing;

/// <summary>Those that nothing else beats in every respect.</summary>
/// <remarks>
/// One beats another where it is no worse in any measure and better in one. A measure that is not a number is not determined: who has
/// one beats nobody and is beaten by nobody. Equals beat each other as little, so that the set does not hang on the order.
/// </remarks>
public static class ParetoSet
{
    /// <summary>Who stays, and by whom the others are beaten.</summary>
    /// <param name="costs">One row a candidate, one number a measure, less being better; infinite and NaN are allowed.</param>
    /// <returns>One number a candidate: −1 for those that stay, else the place of one that stays and beats it.</returns>
    /// <exception cref="Foundations.PartException">Rows are not of one length.</exception>
    public static int[] BeatenBy(IReadOnlyList<double[]> costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        if (costs.FirstOrDefault(row => row.Length != costs[0].Length) is { } odd)
            throw new Foundations.PartException("Pareto set", "number of measures", $"{odd.Length}", $"{costs[0].Length}, as many as in the first row");
        var beatenBy = new int[costs.Count];
        Array.Fill(beatenBy, -1);
        // Whoever beats a row stands before it in this order, so that one look at those that stay is enough.
        int[] order = [.. Enumerable.Range(0, costs.Count).Where(row => !costs[row].Any(double.IsNaN))];
        Array.Sort(order, (one, other) => Compare(costs[one], costs[other]) is var by and not 0 ? by : one.CompareTo(other));
        var staying = new List<int>();
        foreach (var row in order)
        {
            foreach (var other in staying)
                if (Beats(costs[other], costs[row]))
                {
                    beatenBy[row] = other;
                    break;
                }
            if (beatenBy[row] < 0) staying.Add(row);
        }
        return beatenBy;
    }

    /// <summary>Whether one row beats another.</summary>
    /// <param name="one">Costs.</param>
    /// <param name="other">As many costs.</param>
    /// <returns>True where no cost is larger and one is smaller; false where any is NaN.</returns>
    public static bool Beats(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        var better = false;
        for (var measure = 0; measure < one.Length; measure++)
        {
            if (!(one[measure] <= other[measure])) return false;
            better |= one[measure] < other[measure];
        }
        // A later NaN of the other row would have ended the loop above; one of both ends it too.
        return better;
    }

    private static int Compare(double[] one, double[] other)
    {
        for (var measure = 0; measure < one.Length; measure++)
            if (one[measure].CompareTo(other[measure]) is var by and not 0)
                return by;
        return 0;
    }
}
