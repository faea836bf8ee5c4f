using Plotly.NET.LayoutObjects;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using Spindlewright.Foundations;
using P = global::Plotly.NET;

namespace Spindlewright.Figures.Interactive;

/// <summary>Title, axes, legend and slider of an interactive chart.</summary>
internal sealed class PlotlyLayout(Figure figure, Look look)
{
    // Lengths for ticks of an axis whose size on screen is not known here.
    private const double XLengthMm = 150;
    private const double YLengthMm = 85;
    private const double Scale = 1.12;

    /// <summary>The layout, with the ranges that the still form has.</summary>
    public P.Layout Of(Interval xRange, Interval yRange) => new P.Layout().With(
        ("title", new P.Title().With(
            ("text", $"<b>{PlotlyText.Escape(figure.Title)}</b>"), ("x", 0.0), ("xref", "paper"), ("xanchor", "left"),
            ("y", 0.98), ("yref", "container"), ("yanchor", "top"),
            ("font", Letters(look.Letters.TitlePt * Scale, look.Shades.Ink)))),
        ("font", Letters(look.Letters.LabelPt * Scale, look.Shades.Ink)),
        ("paper_bgcolor", look.Shades.Paper.Light), ("plot_bgcolor", look.Shades.Paper.Light),
        ("margin", new Margin().With(("l", 8), ("r", RightPx()), ("t", 76), ("b", 8))),
        ("xaxis", AxisOf(figure.X, xRange, XLengthMm)),
        ("yaxis", AxisOf(figure.Y, yRange, YLengthMm)),
        ("legend", new Legend().With(
            ("orientation", "h"), ("x", 0.0), ("xanchor", "left"), ("y", 1.02), ("yanchor", "bottom"),
            ("itemwidth", 48),
            ("font", Letters(look.Letters.LabelPt * Scale, look.Shades.Ink)))),
        ("hovermode", "closest"), ("dragmode", "zoom"),
        ("sliders", figure.Frames is { } frames ? new[] { SliderOf(frames) } : null));

    private LinearAxis AxisOf(Axis axis, Interval range, double lengthMm)
    {
        var log = axis.Scale == AxisScale.Logarithmic;
        double[] span = log ? [Math.Log10(range.Least), Math.Log10(range.Most)]
            : axis.IsNames ? [range.Most, range.Least]
            : [range.Least, range.Most];
        var made = new LinearAxis().With(
            ("title", new P.Title().With(("text", PlotlyText.Escape(axis.Heading())), ("standoff", 12),
                ("font", Letters(look.Letters.LabelPt * Scale, look.Shades.Ink)))),
            ("type", log ? "log" : "linear"), ("range", PlotlyTraces.Numbers(span)), ("automargin", true),
            ("ticks", axis.IsNames ? "" : "outside"), ("ticklen", 6), ("tickcolor", look.Shades.Ink.Light),
            ("linecolor", look.Shades.Ink.Light), ("linewidth", 1.0), ("showline", true), ("zeroline", false),
            ("showgrid", !axis.IsNames), ("gridcolor", look.Shades.Hairline.Light), ("gridwidth", 0.6),
            ("exponentformat", "none"));
        if (!log && axis.Ticks.IsEmpty)
            return made;
        var ticks = Ticks.For(axis, range, lengthMm, 12);
        return made.With(
            ("tickmode", "array"), ("tickvals", PlotlyTraces.Numbers(ticks.Major.Select(t => t.Position))),
            ("ticktext", ticks.Major.Select(t => PlotlyText.Escape(t.Label)).ToArray()), ("tickangle", 0),
            ("minor", ticks.Minor.Count == 0 ? null : new LinearAxis().With(
                ("tickmode", "array"), ("tickvals", PlotlyTraces.Numbers(ticks.Minor)), ("ticks", "outside"),
                ("ticklen", 3))));
    }

    private Slider SliderOf(FrameSet frames) => new Slider().With(
        ("active", frames.Still), ("x", 0.0), ("len", 1.0), ("y", -0.16), ("yanchor", "top"),
        ("pad", new P.Padding().With(("t", 24), ("b", 4))),
        ("currentvalue", new SliderCurrentValue()
            .With(("prefix", PlotlyText.Escape(frames.Parameter) + ": "), ("xanchor", "left"))),
        ("bgcolor", look.Shades.Hairline.Light), ("activebgcolor", look.Shades.Blue.Light),
        ("bordercolor", look.Shades.Muted.Light),
        ("tickcolor", look.Shades.Ink.Light),
        ("steps", frames.Frames.Select(f => new SliderStep().With(
            ("label", PlotlyText.Escape(frames.NameOf(f))), ("method", "animate"),
            ("args", Still(PlotlyText.Escape(frames.NameOf(f)))))).ToArray()));

    /// <summary>Goes to a frame at once: readers who want no motion get none.</summary>
    private static object[] Still(string name) =>
    [
        new[] { name },
        new P.Frame().With(
            ("mode", "immediate"), ("frame", new P.Frame().With(("duration", 0), ("redraw", false))),
            ("transition", new P.Frame().With(("duration", 0)))),
    ];

    /// <summary>Size of labels on a screen, px: a little more than on paper.</summary>
    public static double SizePx(Look look) => Math.Round(look.Letters.LabelPt * Scale * Look.PxPerPt, 2);

    /// <summary>Room at the right for labels at the ends of lines.</summary>
    private double RightPx()
    {
        var labels = figure.AllMarks.Where(m => m is Curve or Band)
            .Select(c => Lettered.WidthMm(c.Label, look.Letters.LabelPt * Scale) / 25.4 * 96);
        return Math.Round(Math.Clamp(labels.DefaultIfEmpty().Max() + 14, 26, 150));
    }

    private P.Font Letters(double sizePt, Shade shade) => new P.Font().With(
        ("family", look.Letters.Stack), ("size", Math.Round(sizePt * Look.PxPerPt, 2)), ("color", shade.Light));
}
