using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Figures.Svg;

/// <summary>A paragraph under a drawing.</summary>
internal readonly record struct FootLine(string Text, bool IsCaution);

/// <summary>Writes notes, cautions and sources under a drawing.</summary>
internal sealed class FootPainter(SvgCanvas canvas, PlotFrame frame, Look look)
{
    private const double CautionInset = 2.4;

    /// <summary>Draws the paragraphs and returns the height of the whole drawing, mm.</summary>
    public double Draw(IReadOnlyList<FootLine> lines)
    {
        var top = frame.FootTop;
        foreach (var line in lines)
            top = Paragraph(line, top) + 0.8;
        return lines.Count == 0 ? top : top + Math.Max(frame.Margin, 1) - 0.8;
    }

    private double Paragraph(FootLine line, double top)
    {
        var size = line.IsCaution ? look.Letters.TickPt : look.Letters.SmallPt;
        var left = frame.Margin + (line.IsCaution ? CautionInset : 0);
        var words = Lettered.Wrapped(line.Text, frame.Width - frame.Margin - left, size, line.IsCaution);
        var height = Lettered.HeightMm(size);
        if (line.IsCaution)
            canvas.Rect(new(frame.Margin, top, 1.1, words.Count * height), SvgCanvas.Fill(look.Shades.Ink));
        canvas.Write(
            new(size, line.IsCaution ? look.Shades.Ink : look.Shades.Muted, Bold: line.IsCaution), TextAt.Start,
            words.Select((text, i) => (text, new Place(left, top + i * height))));
        return top + words.Count * height;
    }
}
