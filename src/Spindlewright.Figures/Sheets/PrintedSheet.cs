using System.Globalization;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Svg;

namespace Spindlewright.Figures.Sheets;

/// <summary>A sheet of A4 for the workshop wall: one drawing in millimetres, black on white.</summary>
/// <remarks>The drawing is the sheet; its page only sets the paper. No letter is smaller than <see cref="LeastPt"/>.</remarks>
public sealed record PrintedSheet
{
    /// <summary>The smallest letters of a sheet, points.</summary>
    public const double LeastPt = 10;

    internal PrintedSheet(string id, string title, double widthMm, double heightMm, SvgCanvas drawing)
    {
        (Id, Title, WidthMm, HeightMm) = (Check.Id(id, "sheet"), title, widthMm, heightMm);
        Texts = drawing.Texts;
        Svg = string.Create(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{widthMm}mm\" height=\"{heightMm}mm\" viewBox=\"0 0 {widthMm} {heightMm}\" role=\"img\" aria-labelledby=\"{id}-title\" font-family=\"{Markup.Escape(Look.House.Letters.Stack)}\">\n")
            + $"<title id=\"{id}-title\">{Markup.Escape(title)}</title>\n"
            + string.Create(CultureInfo.InvariantCulture, $"<rect fill=\"#ffffff\" width=\"{widthMm}\" height=\"{heightMm}\"/>\n")
            + drawing + "</svg>\n";
    }

    /// <summary>Unique, lower-case words joined by hyphens; the name of its files.</summary>
    public string Id { get; }

    /// <summary>What it is called.</summary>
    public string Title { get; }

    /// <summary>Width of the paper, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Height of the paper, mm.</summary>
    public double HeightMm { get; }

    /// <summary>The drawing: an <c>svg</c> element that stands alone in a file; it ends in LF.</summary>
    public string Svg { get; }

    /// <summary>Every line of text with the box that it takes.</summary>
    internal IReadOnlyList<(string Text, Box Box)> Texts { get; }

    /// <summary>The sheet as a page that prints at its size on one sheet of paper.</summary>
    /// <returns>An HTML document without scripts; it ends in LF.</returns>
    public string Html() => string.Create(CultureInfo.InvariantCulture, $$"""
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8">
        <meta name="viewport" content="width=device-width">
        <link rel="icon" href="data:,">
        <title>{{Markup.Escape(Title)}}</title>
        <style>
        @page{size:{{WidthMm}}mm {{HeightMm}}mm;margin:0}
        html,body{margin:0;background:#fff}
        main{height:{{HeightMm - 0.5}}mm;overflow:hidden}
        svg{display:block}
        @media screen{html{background:#777}main{height:auto;width:{{WidthMm}}mm;margin:8mm auto;box-shadow:0 1mm 4mm #0008}
        }
        </style></head><body>
        <main>
        {{Svg}}</main>
        </body></html>

        """).ReplaceLineEndings("\n");
}
