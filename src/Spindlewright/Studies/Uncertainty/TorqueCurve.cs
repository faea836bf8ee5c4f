namespace Spindlewright.Studies.Uncertainty;

/// <summary>Torque of one draw at evenly spaced frequencies, and where it first passes a limit.</summary>
/// <remarks>
/// Between the frequencies a cubic through the four nearest; the error of a crossing stays below 0.1 % of the speed against
/// the root of the torque itself, which a test holds.
/// </remarks>
internal static class TorqueCurve
{
    /// <summary>How many frequencies.</summary>
    internal const int Points = 33;

    private const int Halvings = 40;

    /// <summary>The frequency at a place.</summary>
    internal static double Hertz(int place, double lowestHz, double topHz) => lowestHz + (topHz - lowestHz) * place / (Points - 1);

    /// <summary>Where the curve first reaches a limit, as a share of the way from lowest to top.</summary>
    /// <param name="torques">Torques, one a place.</param>
    /// <param name="limit">The limit.</param>
    /// <returns>0 where it stands above from the start; infinity where it is never reached.</returns>
    internal static double FirstReaching(ReadOnlySpan<double> torques, double limit)
    {
        if (torques[0] >= limit) return 0;
        for (var place = 1; place < torques.Length; place++)
            if (torques[place] >= limit)
                return (place - 1 + Within(torques, place, limit)) / (torques.Length - 1);
        return double.PositiveInfinity;
    }

    /// <summary>The place of the largest torque, as a share of the way.</summary>
    internal static double AtLargest(ReadOnlySpan<double> torques)
    {
        var largest = 0;
        for (var place = 1; place < torques.Length; place++)
            if (torques[place] > torques[largest])
                largest = place;
        return (double)largest / (torques.Length - 1);
    }

    /// <summary>Part of the step before a place at which the cubic reaches the limit.</summary>
    private static double Within(ReadOnlySpan<double> torques, int place, double limit)
    {
        var first = Math.Clamp(place - 2, 0, torques.Length - 4);
        var (low, high) = (0.0, 1.0);
        for (var halving = 0; halving < Halvings; halving++)
        {
            var middle = (low + high) / 2;
            if (Cubic(torques.Slice(first, 4), place - 1 - first + middle) >= limit) high = middle;
            else low = middle;
        }

        return high;
    }

    private static double Cubic(ReadOnlySpan<double> four, double at)
    {
        var (a, b, c, d) = (at, at - 1, at - 2, at - 3);
        return -four[0] * b * c * d / 6 + four[1] * a * c * d / 2 - four[2] * a * b * d / 2 + four[3] * a * b * c / 6;
    }
}
