using MathNet.Numerics;

namespace Spindlewright.Foundations;

/// <summary>The largest value of a curve that has one peak between two ends, an end included.</summary>
/// <remarks>
/// Own code because the numerics library has golden section alone, which takes twice as many points and refuses a peak at an end, and
/// standstill is such an end.
/// </remarks>
internal static class Peak
{
    // Torque peaks lie anywhere from a hundredth of the range to its far end: the coarse grid is finer at the near end.
    private const int Cells = 24;
    // A torque peak is about a decade wide; this many points on each factor of e tell two of them apart.
    private const double CellsPerE = 10;
    private const double Resolution = 1e-9;
    private const int MostSteps = 100;

    /// <summary>Looks coarsely, then closes in.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="from">Near end.</param>
    /// <param name="to">Far end.</param>
    /// <returns>The largest value and where it stands.</returns>
    internal static (double Value, double At) Find(Func<double, double> curve, double from, double to)
    {
        double Grid(int i) => from + (to - from) * ((double)i / Cells) * ((double)i / Cells);
        var best = Enumerable.Range(0, Cells + 1).MaxBy(i => curve(Grid(i)));
        var inside = CloseIn(curve, Grid(Math.Max(0, best - 1)), Grid(Math.Min(Cells, best + 1)), Resolution * (to - from));
        // Closing in ends beside an end or a place of the grid, not on it.
        return new[] { to, Grid(best), inside }.Select(at => (Value: curve(at), At: at)).MaxBy(each => each.Value);
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
        var (before, here) = (double.NegativeInfinity, curve(from));
        var best = curve(to) is var atFar && atFar >= here ? (Value: atFar, At: to) : (Value: here, At: from);
        for (var i = 0; i <= cells; i++)
        {
            var after = i == cells ? double.NegativeInfinity : curve(At(i + 1));
            if (here >= before && here >= after)
            {
                var (near, far) = (At(Math.Max(0, i - 1)), At(Math.Min(cells, i + 1)));
                var inside = CloseIn(curve, near, far, Resolution * far);
                if (curve(inside) is var value && value > best.Value) best = (value, inside);
            }
            (before, here) = (here, after);
        }
        return best;
    }

    /// <summary>Closes in on the peak between two ends: a parabola through the three best places, golden section where it does not help.</summary>
    /// <remarks>R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 5, from memory; turned upside down.</remarks>
    private static double CloseIn(Func<double, double> curve, double a, double b, double width)
    {
        const double Golden = 2 - Constants.GoldenRatio;
        var best = a + Golden * (b - a);
        var (second, third) = (best, best);
        var atBest = curve(best);
        var (atSecond, atThird) = (atBest, atBest);
        // No two places are closer: a peak may be as sharp as the corner where voltage stops rising.
        var least = width / 2;
        var (step, before) = (0.0, 0.0);
        for (var count = 0; count < MostSteps; count++)
        {
            var middle = (a + b) / 2;
            if (Math.Abs(best - middle) <= width - (b - a) / 2) break;
            var (r, q) = ((best - second) * (atBest - atThird), (best - third) * (atBest - atSecond));
            var (over, under) = ((best - third) * q - (best - second) * r, 2 * (q - r));
            if (under > 0) over = -over;
            under = Math.Abs(under);
            // A parabola's vertex counts where it lies between the ends and moves less than half of the step before last.
            if (Math.Abs(before) > least && Math.Abs(over) < Math.Abs(under * before / 2)
                && over > under * (a - best) && over < under * (b - best))
            {
                (before, step) = (step, over / under);
                if (best + step - a < width || b - best - step < width) step = best < middle ? least : -least;
            }
            else
            {
                before = best < middle ? b - best : a - best;
                step = Golden * before;
            }
            var next = best + (Math.Abs(step) >= least ? step : step > 0 ? least : -least);
            var atNext = curve(next);
            if (atNext >= atBest)
            {
                if (next < best) b = best; else a = best;
                (third, atThird, second, atSecond, best, atBest) = (second, atSecond, best, atBest, next, atNext);
                continue;
            }
            if (next < best) a = next; else b = next;
            if (atNext >= atSecond || second == best)
                (third, atThird, second, atSecond) = (second, atSecond, next, atNext);
            else if (atNext >= atThird || third == best || third == second)
                (third, atThird) = (next, atNext);
        }
        return best;
    }
}
