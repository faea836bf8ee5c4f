using MathNet.Numerics;

namespace Spindlewright.Motors.Batches;

/// <summary>A curve a lane.</summary>
internal interface ICurveLanes<L> where L : struct, ILanes<L>
{
    /// <summary>Each curve at its own place.</summary>
    L At(L at);

    /// <summary>All curves at one place.</summary>
    L AtAll(double at);
}

/// <summary>The largest value of curves that have one peak between two ends, an end included: the value of <see cref="Foundations.Peak"/>, a curve a lane.</summary>
/// <remarks>Golden section, since lanes that close in at their own pace would each wait for the slowest; at a smooth peak the values are the same.</remarks>
internal static class PeakLanes<L> where L : struct, ILanes<L>
{
    private const int Cells = 24;
    private const double Resolution = 1e-9;

    /// <summary>Looks coarsely, on a grid that is finer at the near end, then closes in.</summary>
    internal static L Largest<TCurve>(ref TCurve curve, double from, double to) where TCurve : struct, ICurveLanes<L>
    {
        double Grid(int i) => from + (to - from) * ((double)i / Cells * ((double)i / Cells));
        var best = curve.AtAll(from);
        var (low, high) = (L.All(from), L.All(Grid(1)));
        for (var i = 1; i <= Cells; i++)
        {
            var value = curve.AtAll(Grid(i));
            var better = value > best;
            best = L.Choose(better, value, best);
            low = L.Choose(better, L.All(Grid(i - 1)), low);
            high = L.Choose(better, L.All(Grid(Math.Min(Cells, i + 1))), high);
        }
        // Closing in ends beside an end or a place of the grid, not on it.
        return L.Larger(best, CloseIn(ref curve, low, high, L.All(Resolution * (to - from))));
    }

    private static L CloseIn<TCurve>(ref TCurve curve, L a, L b, L width) where TCurve : struct, ICurveLanes<L>
    {
        var ratio = L.All(Constants.GoldenRatio - 1);
        var (c, d) = (b - ratio * (b - a), a + ratio * (b - a));
        var (atC, atD) = (curve.At(c), curve.At(d));
        for (var active = b - a > width; L.Any(active); active &= b - a > width)
        {
            var left = atC > atD;
            var (nextA, nextB) = (L.Choose(left, a, c), L.Choose(left, d, b));
            var inside = L.Choose(left, nextB - ratio * (nextB - nextA), nextA + ratio * (nextB - nextA));
            var atInside = curve.At(inside);
            var (nextC, nextD) = (L.Choose(left, inside, d), L.Choose(left, c, inside));
            var (nextAtC, nextAtD) = (L.Choose(left, atInside, atD), L.Choose(left, atC, atInside));
            (a, b) = (L.Choose(active, nextA, a), L.Choose(active, nextB, b));
            (c, d) = (L.Choose(active, nextC, c), L.Choose(active, nextD, d));
            (atC, atD) = (L.Choose(active, nextAtC, atC), L.Choose(active, nextAtD, atD));
        }
        return curve.At((a + b) * L.All(0.5));
    }
}
