using Microsoft.FSharp.Collections;
using Newtonsoft.Json;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using P = global::Plotly.NET;

namespace Spindlewright.Figures.Interactive;

/// <summary>Writes a figure for plotly.js through the types of Plotly.NET.</summary>
/// <remarks>Gaps are null; no ids or defaults of Plotly.NET are used; the same figure gives the same bytes.</remarks>
public static class PlotlyWriter
{
    /// <summary>The chart as Plotly.NET's own type, without its frames.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="look">The look; the house's unless given.</param>
    /// <returns>Traces of the still form, layout and configuration.</returns>
    public static P.GenericChart Chart(Figure figure, Look? look = null) => Parts(figure, look ?? Look.House).Chart;

    /// <summary>The chart as JSON: <c>data</c>, <c>layout</c>, <c>config</c> and <c>frames</c>.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="look">The look; the house's unless given.</param>
    /// <returns>One line of JSON.</returns>
    public static string Json(Figure figure, Look? look = null)
    {
        var (chart, frames) = Parts(figure, look ?? Look.House);
        var json = P.GenericChart.toJson(chart);
        return $"{json[..^1]},\"frames\":{JsonConvert.SerializeObject(frames, Globals.JSON_CONFIG)}}}";
    }

    private static (P.GenericChart Chart, P.Frame[] Frames) Parts(Figure figure, Look look)
    {
        var (x, y) = (AxisRange.OfX(figure), AxisRange.OfY(figure));
        var painter = new PlotlyTraces(figure, look, x, y);
        // The bound is drawn last, on top, as in the still form.
        var steady = Traces(painter, figure.Marks.Where(m => m.Role != Role.Bound)).ToList();
        var moving = figure.Frames is { } set ? Traces(painter, set.Shown.Marks).ToList() : [];
        var bounds = Traces(painter, figure.Marks.Where(m => m.Role == Role.Bound)).ToList();
        var chart = P.GenericChart.NewMultiChart(
            ListModule.OfSeq(steady.Concat(moving).Concat(bounds)), new PlotlyLayout(figure, look).Of(x, y), Config(),
                new P.DisplayOptions());
        return (chart, [.. Frames(figure, look, steady.Count, moving.Count)]);
    }

    private static IEnumerable<P.Frame> Frames(Figure figure, Look look, int first, int count)
    {
        if (figure.Frames is not { } set)
            yield break;
        foreach (var frame in set.Frames)
        {
            var painter = new PlotlyTraces(figure, look, AxisRange.OfX(figure), AxisRange.OfY(figure));
            // What does not change with the frame, the legend above all, stays with the first traces.
            var data = Traces(painter, frame.Marks).Select(Moved).ToArray();
            yield return new P.Frame().With(
                ("name", PlotlyText.Escape(set.NameOf(frame))), ("data", data),
                ("traces", Enumerable.Range(first, count).ToArray()));
        }
    }

    private static P.Trace2D Moved(P.Trace trace)
    {
        var moved = new P.Trace2D("scatter");
        foreach (var name in new[] { "x", "y", "text", "error_y" })
            if (trace.GetPropertyNames(true).Contains(name))
                moved.SetProperty(name, trace.GetPropertyValue(name));
        return moved;
    }

    private static IEnumerable<P.Trace> Traces(PlotlyTraces painter, IEnumerable<Mark> marks) =>
        marks.OrderBy(m => m.Role == Role.Bound).SelectMany(painter.Of);

    private static P.Config Config() => new P.Config().With(
        ("responsive", true), ("displaylogo", false),
        ("modeBarButtonsToRemove", new[] { "toImage", "lasso2d", "select2d", "autoScale2d" }));
}
