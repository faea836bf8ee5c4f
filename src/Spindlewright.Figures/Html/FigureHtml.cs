using System.Text;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Svg;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Figures.Html;

/// <summary>What a fragment of a figure holds.</summary>
/// <param name="Narrow">True to add a second drawing for telephones; it needs <see cref="LookCss"/>.</param>
/// <param name="Interactive">True to add the data of the interactive chart.</param>
/// <param name="Data">True to add words and numbers that unfold.</param>
/// <param name="IdSuffix">Added to every id, so that a figure can stand twice in one page; may be empty.</param>
/// <param name="HeightMm">Height of the drawing; null for the usual shape.</param>
/// <param name="WidthMm">Width of the drawing.</param>
public sealed record FigureHtmlOptions(
    bool Narrow = true, bool Interactive = true, bool Data = true, string IdSuffix = "", double? HeightMm = null,
    double WidthMm = 170);

/// <summary>Writes a figure as a fragment of HTML that works alone, without style sheet or script.</summary>
/// <remarks>
/// The still drawing comes first. Where the page holds plotly.js and <see cref="UpgradeScript"/>, the drawing gives way
/// to the interactive chart on screen; in print, and where anything fails, the drawing stays.
/// </remarks>
public static class FigureHtml
{
    /// <summary>Writes the fragment.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="options">What it holds; everything unless given.</param>
    /// <param name="look">The look; the house's unless given.</param>
    /// <returns>A <c>figure</c> element; it ends in LF.</returns>
    public static string Write(Figure figure, FigureHtmlOptions? options = null, Look? look = null)
    {
        options ??= new();
        var id = figure.Id + options.IdSuffix;
        var html = new StringBuilder();
        html.Append($"<figure class=\"sw-figure\" id=\"{Escape(id)}\" data-sw-figure=\"{figure.Id}\">\n");
        var wide = new SvgOptions(options.WidthMm, options.HeightMm, options.IdSuffix, MarginMm: 0.5, Foot: false);
        html.Append($"<div class=\"sw-still sw-wide\">{SvgWriter.Write(figure, wide, look)}</div>\n");
        if (options.Narrow)
        {
            var suffix = options.IdSuffix + SvgOptions.Narrow.IdSuffix;
            var narrow = SvgOptions.Narrow with { MarginMm = 0.3, Foot = false, IdSuffix = suffix };
            html.Append($"<div class=\"sw-still sw-narrow\" hidden>{SvgWriter.Write(figure, narrow, look)}</div>\n");
        }
        Caption(html, figure);
        if (options.Data)
            html.Append($"<details><summary>In words and numbers</summary>\n<p>{Escape(figure.AltText)}</p>\n")
                .Append(TableHtml.Write(DataTable.Of(figure), options.IdSuffix)).Append("</details>\n");
        if (options.Interactive)
            html.Append(Block(PlotlyWriter.Json(figure, look)));
        return html.Append("</figure>\n").ToString();
    }

    /// <summary>The data of a chart as a block that no page shows.</summary>
    internal static string Block(string json) =>
        $"<script type=\"application/json\" data-sw-chart>{EscapeJson(json)}</script>\n";

    private static void Caption(StringBuilder html, Figure figure)
    {
        if (figure.Notes.IsEmpty && figure.Cautions.IsEmpty && figure.Sources.IsEmpty)
            return;
        html.Append("<figcaption>");
        foreach (var caution in figure.Cautions)
            html.Append($"<p class=\"sw-caution\"><strong>Caution:</strong> {Escape(caution)}</p>");
        foreach (var note in figure.Notes)
            html.Append($"<p>{Escape(note)}</p>");
        if (figure.Sources.Length > 0)
            html.Append($"<p>Sources: {Escape(string.Join("; ", figure.Sources.Select(s => s.InWords())))}.</p>");
        html.Append("</figcaption>\n");
    }
}
