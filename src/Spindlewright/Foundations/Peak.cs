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
    // A torque peak is about a decade wide; this many points on each factor of e tell two of them apart.
    private const double CellsPerE = 10;
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

    /// <summary>The highest of several peaks of a smooth curve over a range that spans decades, an end included.</summary>
    /// <param name="curve">The curve; between two points of the grid it bends once at most.</param>
    /// <param name="from">Near end, above 0.</param>
    /// <param name="to">Far end, above <paramref name="from"/>.</param>
    /// <returns>The largest value and where it stands.</returns>
    internal static (double Value, double At) FindHighest(Func<double, double> curve, double from, double to)
    {
        var (start, span) = (Math.Log(from), Math.Log(to / from));
        var cells = Math.Max(Cells, (int)(span * CellsPerE));
        double At(int i) => i == cells ? to : Math.Exp(start + span * i / cells);
        var best = (Value: curve(to), At: to);
        var (before, here) = (double.NegativeInfinity, curve(from));
        for (var i = 0; i <= cells; i++)
        {
            var after = i == cells ? double.NegativeInfinity : curve(At(i + 1));
            if (here >= before && here >= after)
            {
                var (near, far) = (At(Math.Max(0, i - 1)), At(Math.Min(cells, i + 1)));
                var inside = GoldenSection(curve, near, far, Resolution * far);
                if (curve(inside) is var value && value > best.Value) best = (value, inside);
            }
            (before, here) = (here, after);
        }
        return best;
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
