using System.Globalization;
using System.Text;
using Spindlewright.Figures.Looks;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Figures.Html;

/// <summary>Writes a sheet as a page of HTML that prints at its size.</summary>
public static class SheetHtml
{
    /// <summary>The whole page, with its style.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="look">The look; the house's unless given.</param>
    /// <returns>An HTML document without scripts; it ends in LF.</returns>
    public static string Write(Sheet sheet, Look? look = null)
    {
        look ??= Look.House;
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">")
            .Append("<meta name=\"viewport\" content=\"width=device-width\">")
            .Append($"<title>{Escape(sheet.Title)}</title>\n<style>\n{LookCss.Write(look)}")
            .Append(CultureInfo.InvariantCulture,
                $"@page{{size:{sheet.WidthMm:0.##}mm {sheet.HeightMm:0.##}mm;margin:{sheet.MarginMm:0.##}mm}}\n")
            .Append("body{margin:0}\n")
            .Append(CultureInfo.InvariantCulture, $"@media screen{{.sw-sheet{{width:{sheet.WidthMm:0.##}mm;")
            .Append(CultureInfo.InvariantCulture, $"min-height:{sheet.HeightMm:0.##}mm;")
            .Append(CultureInfo.InvariantCulture, $"padding:{sheet.MarginMm:0.##}mm}}}}\n")
            .Append("</style></head><body>\n");
        html.Append($"<main class=\"sw-sheet\" id=\"{sheet.Id}\">\n<h1>{Escape(sheet.Title)}</h1>\n");
        for (var i = 0; i < sheet.Blocks.Length; i++)
            html.Append(Block(sheet, sheet.Blocks[i], i, look));
        return html.Append("</main>\n</body></html>\n").ToString();
    }

    private static string Block(Sheet sheet, SheetBlock block, int index, Look look) => block switch
    {
        FigureBlock f => FigureHtml.Write(f.Figure, Still(sheet, f, index), look),
        TableBlock t => TableHtml.Write(t.Table, Suffix(index)),
        TextBlock { IsCaution: true } t => $"<p class=\"sw-caution\"><strong>Caution:</strong> {Escape(t.Text)}</p>\n",
        TextBlock t => $"<p>{Escape(t.Text)}</p>\n",
        _ => "",
    };

    private static FigureHtmlOptions Still(Sheet sheet, FigureBlock block, int index) => new(
        Narrow: false, Interactive: false, Data: false, IdSuffix: Suffix(index), HeightMm: block.HeightMm,
        WidthMm: sheet.WidthMm - 2 * sheet.MarginMm);

    private static string Suffix(int index) => string.Create(CultureInfo.InvariantCulture, $"-b{index + 1}");
}
