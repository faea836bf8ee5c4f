using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Svg;

/// <summary>Writes the still form of a figure as SVG: millimetres, stable bytes, nothing from outside.</summary>
/// <remarks>
/// Ids begin with the figure's id. Every element carries its light values itself; classes let a page that holds
/// <see cref="LookCss"/> change them on a dark screen. Lines are thinned where nobody could see it (0.025 mm).
/// </remarks>
public static class SvgWriter
{
    /// <summary>Draws a figure.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="options">Size and parts; as wide as A4 with a foot unless given.</param>
    /// <param name="look">The look; the house's unless given.</param>
    /// <returns>An <c>svg</c> element that stands alone in a file or inside HTML; it ends in LF.</returns>
    /// <exception cref="PartException">A width that nothing fits on.</exception>
    public static string Write(Figure figure, SvgOptions? options = null, Look? look = null) =>
        Draw(figure, options ?? SvgOptions.Wide, look ?? Look.House).Svg;

    internal static (string Svg, IReadOnlyList<(string Text, Box Box)> Texts) Draw(
        Figure figure, SvgOptions options, Look look)
    {
        Guard.Within(options.WidthMm, 60, 1200, $"drawing of {figure.Id}", "width (mm)");
        var frame = new PlotFrame(figure, look, options);
        var body = new SvgCanvas(look);
        var axes = new AxisPainter(body, frame, look);
        var id = figure.Id + options.IdSuffix;
        axes.Head();
        axes.Grid();
        Marks(body, frame, look, id);
        axes.Axes();
        var lost = new LabelPainter(body, frame, look).Draw();
        var height = new FootPainter(body, frame, look).Draw(FootLines(figure, lost, options.Foot));
        return (Wrapped(figure, look, id, frame.Width, height, body.ToString()), body.Texts);
    }

    private static void Marks(SvgCanvas body, PlotFrame frame, Look look, string id)
    {
        var painter = new MarkPainter(body, frame, look);
        var spills = frame.Figure.StillMarks.SelectMany(m => m.Extent).Any(p =>
            (double.IsFinite(p.X) && !frame.XMap.Shows(p.X)) || (double.IsFinite(p.Y) && !frame.YMap.Shows(p.Y)));
        if (!spills)
        {
            painter.Draw();
            return;
        }
        body.Raw($"<clipPath id=\"{id}-clip\">");
        body.Rect(frame.Plot, "");
        body.Raw("</clipPath>");
        body.Group($" clip-path=\"url(#{id}-clip)\"", painter.Draw);
    }

    private static List<FootLine> FootLines(Figure figure, IReadOnlyList<string> lost, bool all)
    {
        var lines = new List<FootLine>();
        if (lost.Count > 0)
            lines.Add(new("Not labelled for want of room: " + string.Join(", ", lost) + ".", IsCaution: false));
        if (figure.Frames is { } frames)
            lines.Add(new(FigureText.Frames(frames) + ".", IsCaution: false));
        if (!all)
            return lines;
        lines.AddRange(figure.Cautions.Select(c => new FootLine("Caution: " + c, IsCaution: true)));
        lines.AddRange(figure.Notes.Select(n => new FootLine(n, IsCaution: false)));
        if (figure.Sources.Length > 0)
            lines.Add(new("Sources: " + string.Join("; ", figure.Sources.Select(s => s.InWords())) + ".",
                IsCaution: false));
        return lines;
    }

    private static string Wrapped(Figure figure, Look look, string id, double width, double height, string body) =>
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"sw-svg\" width=\"{N(width)}mm\" height=\"{N(height)}mm\""
        + $" viewBox=\"0 0 {N(width)} {N(height)}\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\""
        + $" font-family=\"{Markup.Escape(look.Letters.Stack)}\">\n"
        + $"<title id=\"{id}-title\">{Markup.Escape(figure.Title)}</title>\n"
        + $"<desc id=\"{id}-desc\">{Markup.Escape(figure.AltText)}</desc>\n"
        + $"<rect{Fill(look.Shades.Paper)} width=\"{N(width)}\" height=\"{N(height)}\"/>\n"
        + body + "</svg>\n";
}
