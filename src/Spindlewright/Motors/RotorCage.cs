using Spindlewright.Foundations;

namespace Spindlewright.Motors;

/// <summary>
/// How rotor resistance rises and rotor leakage falls with slip frequency: a double cage, which also stands for deep
/// bars to first order.
/// </summary>
/// <remarks>
/// <para>
/// An outer cage of resistance m·R2 lies parallel to an inner one of resistance m·R2/(m − 1) and slot leakage. Seen from
/// the gap, with φ the slip frequency over the rated one and q = (φ / φc)²:
/// R2(φ) = R2·[1 + (m − 1)·q/(1 + q)], X2(φ) = X2·[1 − d·q/(1 + q)], φc = (m − 1)·R2 / (d·X2).
/// Own derivation from the parallel circuit; exact for it at every slip.
/// </para>
/// <para>
/// The corner φc follows from the rest, so that heating the bars only stretches the slip axis: the largest torque at
/// held flux does not depend on temperature. With m = 1 and d = 0 the cage is single and R2 and X2 are constant.
/// </para>
/// <para>
/// Limitations: one corner only, where a deep bar spreads its rise over a wider range; no saturation of the leakage
/// paths, which in a real motor also lowers the reactance at locked-rotor current and is then counted in here.
/// </para>
/// </remarks>
public sealed record RotorCage
{
    internal const double MostRise = 20;
    internal const double MostFall = 0.95;
    private const string Part = "rotor cage";

    /// <summary>Makes a cage.</summary>
    /// <param name="rise">m: resistance at high slip frequency over that at low, 1 to 20.</param>
    /// <param name="leakageFall">d: share of the rotor leakage that goes at high slip frequency, 0 to 0.95.</param>
    /// <exception cref="PartException">Out of range, or one of the two without the other.</exception>
    public RotorCage(double rise, double leakageFall)
    {
        Rise = Guard.Within(rise, 1, MostRise, Part, "rise of the rotor resistance");
        LeakageFall = Guard.Within(leakageFall, 0, MostFall, Part, "fall of the rotor leakage");
        if (rise > 1 != leakageFall > 0)
            throw new PartException(
                Part, "rise and fall", FormattableString.Invariant($"{rise:G6} and {leakageFall:G6}"),
                "a rise above 1 with a fall above 0, or 1 and 0 for a single cage",
                "resistance rises because current leaves the bar's bottom, and the leakage of the bottom goes with it");
    }

    /// <summary>A single cage: resistance and leakage do not depend on slip.</summary>
    public static RotorCage SingleCage { get; } = new(1, 0);

    /// <summary>m: resistance at high slip frequency over that at low.</summary>
    public double Rise { get; }

    /// <summary>d: share of the rotor leakage that goes at high slip frequency.</summary>
    public double LeakageFall { get; }

    /// <summary>True where resistance and leakage depend on slip.</summary>
    public bool IsDouble => Rise > 1;
}
