using System.Text;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Svg;

/// <summary>Draws title, legend, grid, axes and their headings.</summary>
internal sealed class AxisPainter(SvgCanvas canvas, PlotFrame frame, Look look)
{
    /// <summary>The title and the legend.</summary>
    public void Head()
    {
        var height = Lettered.HeightMm(look.Letters.TitlePt);
        canvas.Write(
            new(look.Letters.TitlePt, look.Shades.Ink, Bold: true), TextAt.Start,
            frame.Title.Select((line, i) => (line, new Place(frame.Margin, frame.Margin + i * height))));
        var words = new List<(string, Place)>();
        var top = frame.LegendTop;
        foreach (var row in frame.Legend)
        {
            var left = frame.Margin;
            foreach (var entry in row)
            {
                Sample(entry, left, top + Lettered.HeightMm(look.Letters.LabelPt) / 2);
                words.Add((entry.Text, new(left + entry.SampleMm + 1.5, top)));
                left += entry.WidthMm + 5;
            }
            top += Lettered.HeightMm(look.Letters.LabelPt) + 0.9;
        }
        canvas.Write(new(look.Letters.LabelPt, look.Shades.Ink), TextAt.Start, words);
    }

    /// <summary>Grid lines at labelled ticks.</summary>
    public void Grid()
    {
        var path = new StringBuilder();
        foreach (var tick in frame.XTicks.Major)
            path.Append($"M{N(frame.XMap.Place(tick.Position))} {N(frame.Plot.Top)}V{N(frame.Plot.Bottom)}");
        if (!frame.Figure.Y.IsNames)
            foreach (var tick in frame.YTicks.Major)
                path.Append($"M{N(frame.Plot.Left)} {N(frame.YMap.Place(tick.Position))}H{N(frame.Plot.Right)}");
        canvas.Path(path.ToString(), Stroke(look.Shades.Hairline, look.Space.GridPt));
        canvas.Raw("\n");
    }

    /// <summary>Axes, ticks, their labels and the headings.</summary>
    public void Axes()
    {
        var path = new StringBuilder(
            $"M{N(frame.Plot.Left)} {N(frame.Plot.Top)}V{N(frame.Plot.Bottom)}H{N(frame.Plot.Right)}");
        TickMarks(path, frame.XTicks, frame.Figure.X.IsNames, frame.XMap, (at, length) =>
            $"M{N(at)} {N(frame.Plot.Bottom)}v{N(length)}");
        TickMarks(path, frame.YTicks, frame.Figure.Y.IsNames, frame.YMap, (at, length) =>
            $"M{N(frame.Plot.Left)} {N(at)}h{N(-length)}");
        canvas.Path(path.ToString(), Stroke(look.Shades.Ink, look.Space.AxisPt));
        canvas.Raw("\n");
        var style = new TextStyle(look.Letters.TickPt, look.Shades.Ink);
        canvas.Write(style, TextAt.Middle, XLabels());
        canvas.Write(style, TextAt.End, YLabels());
        Headings();
    }

    private void Headings()
    {
        var style = new TextStyle(look.Letters.LabelPt, look.Shades.Ink);
        canvas.Write(style, TextAt.Start, [(frame.Figure.Y.Heading(), new(frame.Margin, frame.HeadingTop))]);
        canvas.Write(style, TextAt.End, [(frame.Figure.X.Heading(), new(frame.Plot.Right, frame.XHeadingTop))]);
    }

    private void TickMarks(StringBuilder path, Ticks ticks, bool names, AxisMap map, Func<double, double, string> mark)
    {
        if (names)
            return;
        foreach (var tick in ticks.Major)
            path.Append(mark(map.Place(tick.Position), look.Space.TickMm));
        foreach (var minor in ticks.Minor)
            path.Append(mark(map.Place(minor), look.Space.TickMm / 2));
    }

    /// <summary>Labels under the level axis; one that would touch the one before is left out, its tick stays.</summary>
    private IEnumerable<(string, Place)> XLabels()
    {
        var free = double.NegativeInfinity;
        foreach (var tick in frame.XTicks.Major.OrderBy(t => t.Position))
        {
            var (at, half) = (frame.XMap.Place(tick.Position), Lettered.WidthMm(tick.Label, look.Letters.TickPt) / 2);
            if (at - half < free + 0.8)
                continue;
            free = at + half;
            yield return (tick.Label, new(at, frame.XTickTop));
        }
    }

    private IEnumerable<(string, Place)> YLabels()
    {
        var height = Lettered.HeightMm(look.Letters.TickPt);
        var right = frame.Plot.Left - look.Space.TickMm - 0.8;
        var free = double.NegativeInfinity;
        foreach (var tick in frame.YTicks.Major.OrderBy(t => frame.YMap.Place(t.Position)))
        {
            var lines = Lettered.Wrapped(tick.Label, right - frame.Margin + 0.2, look.Letters.TickPt);
            var top = frame.YMap.Place(tick.Position) - lines.Count * height / 2;
            if (top < free)
                continue;
            free = top + lines.Count * height;
            for (var i = 0; i < lines.Count; i++)
                yield return (lines[i], new(right, top + i * height));
        }
    }

    private void Sample(LegendEntry entry, double left, double middle)
    {
        var right = left + entry.SampleMm;
        var stroke = Stroke(entry.Look.Shade, entry.Look.WeightPt) + MarkPainter.Dash(entry.Look);
        if (entry.Fill >= 0)
            canvas.Group(MarkPainter.Area(entry.Look, entry.Fill), () =>
                canvas.Rect(new(left + 0.2, middle - 1.3, right - left - 0.4, 2.6), ""));
        if (entry.Line)
            canvas.Path($"M{N(left)} {N(middle)}H{N(right)}", stroke);
        var marker = entry.Dot ? entry.Look.PointMarker : entry.Line ? entry.Look.LineMarker : Marker.None;
        if (marker != Marker.None)
            canvas.Path(
                MarkerPath.Of(marker, new((left + right) / 2, middle), look.Space.MarkerMm),
                MarkPainter.MarkerAttributes(entry.Look, marker, look));
    }
}
