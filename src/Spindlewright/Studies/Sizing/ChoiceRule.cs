namespace Spindlewright.Studies.Sizing;

/// <summary>The rule by which one of many is recommended.</summary>
public static class ChoiceRule
{
    /// <summary>The rule in words.</summary>
    public const string Words =
        "Of those that do all the work in as many of the draws as wanted, and keep every limit, the one with the least torque bound at the spindle: it does what is wanted and leaves least for a hand to meet. Where bounds are alike, the cheaper one, then the one that keeps its pulleys, then the lower rated power, then the narrower limits of frequency.";

    /// <summary>Bounds closer than this share count as alike. Own choice: defaults are not known so well.</summary>
    private const double Alike = 1e-6;

    /// <summary>Puts candidates in the order of the rule, best first.</summary>
    /// <param name="one">A candidate and its bound in N·m.</param>
    /// <param name="other">Another.</param>
    /// <returns>Below 0 where the first is the better one.</returns>
    internal static int Compare((Candidate Candidate, double BoundNm) one, (Candidate Candidate, double BoundNm) other)
    {
        if (Math.Abs(one.BoundNm - other.BoundNm) > Alike * Math.Max(one.BoundNm, other.BoundNm)) return one.BoundNm.CompareTo(other.BoundNm);
        double[] first = Ranks(one.Candidate), second = Ranks(other.Candidate);
        for (var rank = 0; rank < first.Length; rank++)
            if (first[rank].CompareTo(second[rank]) is var by and not 0)
                return by;
        // Words, not numbers: the order in which candidates were listed must not decide.
        return string.CompareOrdinal(one.Candidate.Words, other.Candidate.Words);
    }

    private static double[] Ranks(Candidate candidate) =>
    [
        candidate.Price ?? double.PositiveInfinity, (int)candidate.Kind, (int)candidate.Pulleys.Way, (double)(candidate.Motor?.Motor.RatedPower.Watts ?? 0),
        candidate.IsDescribed ? 0 : 1, candidate.Limits?.Highest.Hertz ?? 0, -(candidate.Limits?.Lowest.Hertz ?? 0),
    ];
}
