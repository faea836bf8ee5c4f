using Spindlewright.Studies.Overpowering;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Torque of one draw over frequency, and where it first passes a limit.</summary>
/// <remarks>
/// Evenly spaced frequencies, one of them moved to where the voltage stops rising, since torque has a sharp peak there. Between the
/// frequencies a cubic through four that do not straddle that peak; the error of a crossing stays below 0.1 % of the speed against
/// the root of the torque itself, which a test holds.
/// </remarks>
internal readonly ref struct TorqueCurve(ReadOnlySpan<double> hertz, ReadOnlySpan<double> torques, int ceilingAt)
{
    /// <summary>How many frequencies.</summary>
    internal const int Points = 33;

    private const int Halvings = 40;

    private readonly ReadOnlySpan<double> hertz = hertz, torques = torques;

    /// <summary>Fills the frequencies of a draw.</summary>
    /// <param name="hertz">Receives them, rising.</param>
    /// <param name="lowestHz">The first.</param>
    /// <param name="topHz">The last.</param>
    /// <param name="ceilingMetHz">Where the voltage stops rising.</param>
    /// <returns>The place of that frequency; the last where it does not lie between.</returns>
    internal static int Frequencies(Span<double> hertz, double lowestHz, double topHz, double ceilingMetHz)
    {
        for (var place = 0; place < Points; place++)
            hertz[place] = lowestHz + (topHz - lowestHz) * place / (Points - 1);
        if (!(ceilingMetHz > lowestHz && ceilingMetHz < topHz)) return Points - 1;
        var at = Math.Clamp((int)Math.Round((ceilingMetHz - lowestHz) / (topHz - lowestHz) * (Points - 1)), 1, Points - 2);
        hertz[at] = ceilingMetHz;
        return at;
    }

    /// <summary>Frequency at which the curve first reaches a limit: the lowest where it stands above from there, infinite for never.</summary>
    internal double FirstReaching(double limit)
    {
        if (torques[0] >= limit) return hertz[0];
        for (var place = 1; place < torques.Length; place++)
            if (torques[place] >= limit)
                return Within(place, limit);
        return double.PositiveInfinity;
    }

    /// <summary>Torque at the first frequency.</summary>
    internal double First => torques[0];

    /// <summary>Torque at the last frequency.</summary>
    internal double Last => torques[^1];

    /// <summary>Whether torque has risen all the way from the first frequency to another, and still rises there.</summary>
    /// <param name="at">A frequency, the first or above; infinite for one that is never reached.</param>
    internal bool HasRisenTo(double at)
    {
        if (at <= hertz[0]) return true;
        if (!(at <= hertz[^1])) return false;
        var place = 1;
        for (; place < hertz.Length && hertz[place] <= at; place++)
            if (torques[place] < torques[place - 1]) return false;
        var first = FirstOfCubic(Math.Min(place, hertz.Length - 1));
        var there = Cubic(first, at);
        return there >= torques[place - 1] && there >= Cubic(first, at * OverpoweringStudy.JustBelow);
    }

    /// <summary>Where the cubic reaches the limit between a place and the one before.</summary>
    private double Within(int place, double limit)
    {
        var first = FirstOfCubic(place);
        var (low, high) = (hertz[place - 1], hertz[place]);
        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = (low + high) / 2;
            if (Cubic(first, middle) >= limit) high = middle;
            else low = middle;
        }

        return high;
    }

    /// <summary>The first of the four places whose cubic holds between a place and the one before.</summary>
    private int FirstOfCubic(int place) => place <= ceilingAt
        ? Math.Clamp(place - 2, 0, Math.Max(0, ceilingAt - 3))
        : Math.Clamp(place - 2, Math.Min(ceilingAt, Points - 4), Points - 4);

    private double Cubic(int first, double at)
    {
        var value = 0.0;
        for (var i = first; i < first + 4; i++)
        {
            var weight = torques[i];
            for (var j = first; j < first + 4; j++)
                if (j != i)
                    weight *= (at - hertz[j]) / (hertz[i] - hertz[j]);
            value += weight;
        }

        return value;
    }
}
