using Spindlewright.Foundations;

namespace Spindlewright.Figures.Geometry;

/// <summary>Decides what an axis spans, for every writer alike.</summary>
internal static class AxisRange
{
    private const double Headroom = 0.06;

    /// <summary>The span of the level axis: as asked for, or fitted over all frames.</summary>
    public static Interval OfX(Figure figure) =>
        figure.X.Range ?? Fitted(figure.X, figure.AllMarks.SelectMany(WithRoom).Select(p => p.X), 0);

    /// <summary>The span of the upright axis, with room above the highest mark for its label.</summary>
    public static Interval OfY(Figure figure) =>
        figure.Y.Range ?? Fitted(figure.Y, figure.AllMarks.SelectMany(m => m.Extent).Select(p => p.Y), Headroom);

    /// <summary>A bar whose ends are printed wants room for them on both sides.</summary>
    private static IEnumerable<(double X, double Y)> WithRoom(Mark mark) =>
        mark is RangeBar { ShowEnds: true, From: > 0 } bar
        ? [.. bar.Extent, (bar.From * 0.72, bar.At), (bar.To * 1.12, bar.At)]
        : mark.Extent;

    private static Interval Fitted(Axis axis, IEnumerable<double> values, double headroom)
    {
        var finite = values.Concat(axis.Ticks.Select(t => t.Position)).Where(double.IsFinite).ToList();
        var (least, most) = (finite.Min(), finite.Max());
        return axis.Scale == AxisScale.Logarithmic ? Decades(least, most, headroom) : Round(least, most, headroom);
    }

    private static Interval Decades(double least, double most, double headroom)
    {
        var (down, up) = (least * 0.985, most * 1.015 * Math.Pow(most / least, headroom));
        var (low, high) = (OneDigit(down, Math.Floor), OneDigit(up, Math.Ceiling));
        return new(low, high > low ? high : low * 10);
    }

    private static double OneDigit(double value, Func<double, double> round)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(value)));
        var step = value / decade < 3 ? 0.5 : 1;
        return round(value / decade / step) * step * decade;
    }

    private static Interval Round(double least, double most, double headroom)
    {
        if (least >= 0 && least <= 0.6 * most)
            least = 0;
        else if (most <= 0 && most >= 0.6 * least)
            most = 0;
        if (most - least <= 1e-12 * Math.Max(Math.Abs(most), Math.Abs(least)))
            (least, most) = (least - Math.Max(1, Math.Abs(least)) * 0.5, most + Math.Max(1, Math.Abs(most)) * 0.5);
        var step = Ticks.NiceStep(most - least, 6) / 2;
        var top = most == 0 ? 0 : most + headroom * (most - least);
        return new(Math.Floor(least / step + 1e-9) * step, Math.Ceiling(top / step - 1e-9) * step);
    }
}
