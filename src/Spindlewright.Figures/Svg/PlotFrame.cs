using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Figures.Svg;

/// <summary>Where everything of a drawing stands: worked out before anything is drawn.</summary>
internal sealed record PlotFrame
{
    private const double YPitchMm = 11;
    private const double NamePitchMm = 10.5;
    private const double Below = 2;

    private readonly Look look;
    private readonly double unitMm;

    public PlotFrame(Figure figure, Look look, SvgOptions options)
    {
        this.look = look;
        (Figure, Width, Margin) = (figure, options.WidthMm, options.MarginMm);
        unitMm = Lettered.HeightMm(look.Letters.LabelPt);
        Title = Lettered.Wrapped(figure.Title, Inner, look.Letters.TitlePt, bold: true);
        Legend = Rows(LegendEntry.Of(figure, look));
        LegendTop = Margin + Title.Count * Lettered.HeightMm(look.Letters.TitlePt) + look.Space.GapMm * 0.8;
        HeadingTop = LegendTop + Legend.Count * (unitMm + 0.9) + (Legend.Count > 0 ? look.Space.GapMm * 0.7 : 0);
        var top = HeadingTop + unitMm + Lettered.HeightMm(look.Letters.TickPt) / 2 + 0.2;
        var under = look.Space.TickMm + 0.8 + Lettered.HeightMm(look.Letters.TickPt) + 0.6 + unitMm + Below;
        PlotBottom = Math.Max((options.HeightMm ?? Usual(figure, top, under)) - under, top + 20);
        var y = new AxisMap(figure.Y, AxisRange.OfY(figure), figure.Y.IsNames ? top : PlotBottom, figure.Y.IsNames
            ? PlotBottom : top);
        YTicks = Ticks.For(figure.Y, y.Range, PlotBottom - top, YPitchMm);
        var left = Margin + Math.Min(WidestTick(), Width * 0.36) + look.Space.TickMm + 1;
        var range = AxisRange.OfX(figure);
        var right = Width - Margin - Gutter(new AxisMap(figure.X, range, left, Width - Margin));
        (XMap, YMap) = (new AxisMap(figure.X, range, left, right), y);
        XTicks = Ticks.For(figure.X, range, right - left, XPitch(range));
        Plot = new(left, top, right - left, PlotBottom - top);
    }

    public Figure Figure { get; }

    public double Width { get; }

    public IReadOnlyList<string> Title { get; }

    public IReadOnlyList<IReadOnlyList<LegendEntry>> Legend { get; }

    public double LegendTop { get; }

    public double HeadingTop { get; }

    public double PlotBottom { get; }

    public Box Plot { get; }

    public AxisMap XMap { get; }

    public AxisMap YMap { get; }

    public Ticks XTicks { get; }

    public Ticks YTicks { get; }

    public double Margin { get; }

    public double Inner => Width - 2 * Margin;

    /// <summary>Top of the labels under the level axis.</summary>
    public double XTickTop => PlotBottom + look.Space.TickMm + 0.8;

    /// <summary>Top of the level axis' heading.</summary>
    public double XHeadingTop => XTickTop + Lettered.HeightMm(look.Letters.TickPt) + 0.6;

    /// <summary>Where the foot begins.</summary>
    public double FootTop => XHeadingTop + unitMm + Below;

    /// <summary>Where labels may stand: the plot and the gutter at its right.</summary>
    public Box LabelArea => new(Plot.Left + 0.3, Plot.Top, Width - Margin - Plot.Left - 0.3, Plot.Height - 0.3);

    /// <summary>A value pair's place on paper.</summary>
    public Place At(double x, double y) => new(XMap.Place(x), YMap.Place(y));

    private double Usual(Figure figure, double top, double under) => figure.Y.IsNames
        ? top + under + Math.Max(figure.Y.Ticks.Length, 2) * NamePitchMm
        : top + under + Math.Clamp(Width * 0.5, 66, 150);

    private double WidestTick() =>
        YTicks.Major.Count == 0 ? 0 : YTicks.Major.Max(t => Lettered.WidthMm(t.Label, look.Letters.TickPt));

    private double XPitch(Foundations.Interval range)
    {
        var ends = new[] { range.Least, range.Most }
            .Max(v => Lettered.WidthMm(Wording.NumberText.Significant(v), look.Letters.TickPt));
        return Math.Max(Width > 120 ? 13 : 9, ends + 2.5);
    }

    /// <summary>Room that labels at the right ends of lines need beyond the plot.</summary>
    private double Gutter(AxisMap map)
    {
        var need = Math.Max(0, LastTickHalf(map) - Margin);
        foreach (var (text, end) in Figure.StillMarks.SelectMany(EndLabels))
        {
            var width = Lettered.WidthMm(text, look.Letters.LabelPt) + 1.4;
            if (map.Shows(end) && map.Place(end) + width > map.ToMm)
                need = Math.Max(need, width - (map.ToMm - map.Place(end)));
        }
        return Math.Min(need, Width * 0.2);
    }

    /// <summary>How far a label centred under the right end sticks out.</summary>
    private double LastTickHalf(AxisMap map)
    {
        var last = Ticks.For(Figure.X, map.Range, map.ToMm - map.FromMm, XPitch(map.Range)).Major
            .MaxBy(t => t.Position);
        return last is null
            ? 0
            : Lettered.WidthMm(last.Label, look.Letters.TickPt) / 2 - (map.ToMm - map.Place(last.Position));
    }

    private static IEnumerable<(string Text, double End)> EndLabels(Mark mark)
    {
        if (mark is RangeBar { ShowEnds: true } bar)
            yield return (Wording.NumberText.Significant(bar.To), bar.To);
        if (mark is Curve { Label.Length: > 0 } curve && curve.Extent.Any(p => double.IsFinite(p.Y)))
            yield return (curve.Label, curve.Extent.Last(p => double.IsFinite(p.Y)).X);
    }

    private List<IReadOnlyList<LegendEntry>> Rows(IReadOnlyList<LegendEntry> entries)
    {
        var rows = new List<IReadOnlyList<LegendEntry>>();
        var row = new List<LegendEntry>();
        var used = 0.0;
        foreach (var entry in entries)
        {
            if (row.Count > 0 && used + entry.WidthMm > Inner)
            {
                rows.Add(row);
                (row, used) = ([], 0);
            }
            row.Add(entry);
            used += entry.WidthMm + 5;
        }
        if (row.Count > 0)
            rows.Add(row);
        return rows;
    }
}
