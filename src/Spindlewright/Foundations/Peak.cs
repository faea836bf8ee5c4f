using MathNet.Numerics;

namespace Spindlewright.Foundations;

/// <summary>The largest value of a curve that has one peak between two ends, an end included.</summary>
/// <remarks>
/// Own code because the numerics library's golden section refuses a peak at an end, and standstill is such an end.
/// </remarks>
internal static class Peak
{
    // Torque peaks lie anywhere from a hundredth of the range to its far end: the coarse grid is finer at the near end.
    private const int Cells = 24;
    private const double Resolution = 1e-9;

    /// <summary>Looks coarsely, then closes in by golden section.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">Near end.</param>
    /// <param name="to">Far end.</param>
    /// <returns>The largest value and where it stands.</returns>
    internal static (double Value, double At) Find(Func<double, double> curve, double from, double to)
    {
        double Grid(int i) => from + (to - from) * ((double)i / Cells) * ((double)i / Cells);
        var best = Enumerable.Range(0, Cells + 1).MaxBy(i => curve(Grid(i)));
        var inside = GoldenSection(curve, Grid(Math.Max(0, best - 1)), Grid(Math.Min(Cells, best + 1)), Resolution * (to - from));
        var (atFar, atInside) = (curve(to), curve(inside));
        return atFar >= atInside ? (atFar, to) : (atInside, inside);
    }

    private static double GoldenSection(Func<double, double> curve, double a, double b, double width)
    {
        const double Ratio = Constants.GoldenRatio - 1;
        var (c, d) = (b - Ratio * (b - a), a + Ratio * (b - a));
        var (atC, atD) = (curve(c), curve(d));
        while (b - a > width)
        {
            if (atC > atD)
            {
                (b, d, atD) = (d, c, atC);
                c = b - Ratio * (b - a);
                atC = curve(c);
            }
            else
            {
                (a, c, atC) = (c, d, atD);
                d = a + Ratio * (b - a);
                atD = curve(d);
            }
        }
        return (a + b) / 2;
    }
}
