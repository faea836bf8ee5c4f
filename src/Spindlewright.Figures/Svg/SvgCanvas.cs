using System.Globalization;
using System.Text;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Figures.Svg;

/// <summary>Where text stands on its place.</summary>
internal enum TextAt
{
    Start,
    Middle,
    End,
}

/// <summary>Letters of one kind.</summary>
internal readonly record struct TextStyle(double SizePt, Shade Shade, bool Bold = false, bool Halo = false);

/// <summary>Writes elements of SVG in millimetres, and remembers where text stands.</summary>
internal sealed class SvgCanvas(Look look)
{
    private readonly StringBuilder svg = new();
    private readonly List<(string Text, Box Box)> texts = [];

    /// <summary>Every line of text with the box it takes.</summary>
    public IReadOnlyList<(string Text, Box Box)> Texts => texts;

    /// <summary>Adds markup as it is.</summary>
    public void Raw(string markup) => svg.Append(markup);

    /// <summary>Groups elements under shared attributes.</summary>
    public void Group(string attributes, Action inside)
    {
        svg.Append("<g").Append(attributes).Append('>');
        inside();
        svg.Append("</g>\n");
    }

    /// <summary>A path.</summary>
    public void Path(string data, string attributes = "") =>
        svg.Append("<path").Append(attributes).Append(" d=\"").Append(data).Append("\"/>");

    /// <summary>A rectangle.</summary>
    public void Rect(Box box, string attributes) =>
        svg.Append(CultureInfo.InvariantCulture,
            $"<rect x=\"{N(box.Left)}\" y=\"{N(box.Top)}\" width=\"{N(box.Width)}\" height=\"{N(box.Height)}\"")
            .Append(attributes).Append("/>");

    /// <summary>Lines of text of one style; each with its place at the top of the line.</summary>
    public void Write(TextStyle style, TextAt at, IEnumerable<(string Text, Place Top)> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0)
            return;
        Group(TextAttributes(style, at), () =>
        {
            foreach (var (text, top) in all)
                Line(text, top, style, at);
        });
    }

    /// <summary>The finished markup.</summary>
    public override string ToString() => svg.ToString();

    /// <summary>A number of millimetres: two decimals, no trailing zeros.</summary>
    public static string N(double mm)
    {
        var text = Math.Round(mm, 2).ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    /// <summary>Attributes of a line of a shade and weight.</summary>
    public static string Stroke(Shade shade, double weightPt) =>
        $" class=\"sw-s-{shade.Name}\" fill=\"none\" stroke=\"{shade.Light}\""
        + $" stroke-width=\"{N(weightPt * Look.MmPerPt)}\"";

    /// <summary>Attributes of a filled area.</summary>
    public static string Fill(Shade shade, double opacity = 1) =>
        $" class=\"sw-f-{shade.Name}\" fill=\"{shade.Light}\""
        + (opacity < 1 ? $" fill-opacity=\"{N(opacity)}\"" : "");

    private void Line(string text, Place top, TextStyle style, TextAt at)
    {
        var width = Lettered.WidthMm(text, style.SizePt, style.Bold);
        var left = top.X - (at == TextAt.Start ? 0 : at == TextAt.Middle ? width / 2 : width);
        texts.Add((text, new(left, top.Y, width, Lettered.HeightMm(style.SizePt))));
        svg.Append(CultureInfo.InvariantCulture,
            $"<text x=\"{N(top.X)}\" y=\"{N(top.Y + Lettered.AscentMm(style.SizePt))}\">")
            .Append(Markup.Escape(text)).Append("</text>");
    }

    private string TextAttributes(TextStyle style, TextAt at)
    {
        var paper = look.Shades.Paper;
        var classes = $"sw-f-{style.Shade.Name}" + (style.Halo ? $" sw-s-{paper.Name}" : "");
        return $" class=\"{classes}\" fill=\"{style.Shade.Light}\" font-size=\"{N(style.SizePt * Look.MmPerPt)}\""
            + (style.Bold ? " font-weight=\"700\"" : "")
            + (at == TextAt.Start ? "" : $" text-anchor=\"{(at == TextAt.Middle ? "middle" : "end")}\"")
            + (style.Halo
                ? $" stroke=\"{paper.Light}\" stroke-width=\"0.7\" stroke-linejoin=\"round\" paint-order=\"stroke\""
                : "");
    }
}
