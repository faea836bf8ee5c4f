using System.Globalization;
using Spindlewright.Belts;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Svg;
using Spindlewright.Studies;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Sheets;

/// <summary>A sheet while it is drawn: head, foot and the strokes that all sheets share.</summary>
internal sealed class Paper
{
    private const double MarginMm = 11;

    /// <summary>Room for the name of a belt position in a table, mm.</summary>
    private const double MostNameMm = 20;

    public Paper(double widthMm, double heightMm) => (Width, Height) = (widthMm, heightMm);

    /// <summary>A4 upright.</summary>
    public static Paper Upright() => new(210, 297);

    /// <summary>A4 lying.</summary>
    public static Paper Lying() => new(297, 210);

    public double Width { get; }

    public double Height { get; }

    public SvgCanvas Canvas { get; } = new(Look.House);

    public static Shade Ink => Look.House.Shades.Ink;

    public static double Left => MarginMm;

    public double Right => Width - MarginMm;

    public double Inner => Width - 2 * MarginMm;

    /// <summary>A line of text by its top.</summary>
    public void Text(string text, double x, double top, double sizePt, TextAt at = TextAt.Start, bool bold = false) =>
        Canvas.Write(new(sizePt, Ink, bold), at, [(text, new(x, top))]);

    /// <summary>Lines of text broken to a width.</summary>
    /// <returns>Where the next line would begin.</returns>
    public double Wrapped(string text, double x, double top, double width, double sizePt, bool bold = false)
    {
        foreach (var line in Lettered.Wrapped(text, width, sizePt, bold))
        {
            Text(line, x, top, sizePt, bold: bold);
            top += Lettered.HeightMm(sizePt);
        }
        return top;
    }

    /// <summary>A straight stroke.</summary>
    public void Line(double x1, double y1, double x2, double y2, double weightPt, string attributes = "") =>
        Canvas.Path($"M{N(x1)} {N(y1)}L{N(x2)} {N(y2)}", Stroke(Ink, weightPt) + attributes);

    /// <summary>A stroke through points.</summary>
    public void Polyline(IEnumerable<(double X, double Y)> points, double weightPt, string attributes = "") =>
        Canvas.Path("M" + string.Join("L", points.Select(p => $"{N(p.X)} {N(p.Y)}")), Stroke(Ink, weightPt) + attributes);

    /// <summary>Text along a slope; the middle of its foot stands on the place.</summary>
    public void Sloped(string text, double x, double y, double degrees, double sizePt, bool bold = false)
    {
        var turn = string.Create(CultureInfo.InvariantCulture, $" transform=\"rotate({degrees:0.###} {N(x)} {N(y)})\"");
        Canvas.Group(turn, () => Canvas.Write(new(sizePt, Ink, bold, Halo: true), TextAt.Middle, [(text, new(x, y - Lettered.AscentMm(sizePt)))]));
    }

    /// <summary>Title on the left, machine on the right, a rule below.</summary>
    /// <returns>Where the body begins.</returns>
    public double Head(string title, string machine)
    {
        title = Lettered.Shortened(title, Inner * 0.68, PrintedSheet.LeastPt, bold: true);
        var size = Fitting(title, Inner * 0.68, 26, bold: true);
        Text(title, Left, MarginMm - 2, size, bold: true);
        var lines = Lettered.Wrapped(machine, Inner * 0.3, 12).Take(2).ToList();
        for (var i = 0; i < lines.Count; i++)
            Text(lines[i], Right, MarginMm - 1 + i * Lettered.HeightMm(12), 12, TextAt.End);
        var rule = MarginMm + 11;
        Line(Left, rule, Right, rule, 1.6);
        return rule + 3;
    }

    /// <summary>Cautions and notes at the foot.</summary>
    /// <returns>Where the body must end.</returns>
    public double Foot(IReadOnlyList<string> cautions, IReadOnlyList<string> notes)
    {
        const double CautionPt = 12;
        List<(string Text, double SizePt, bool Bold)> lines =
        [
            .. Lettered.Wrapped(string.Join(" ", cautions), Inner, CautionPt, bold: true).Select(line => (line, CautionPt, true)),
            .. Lettered.Wrapped(string.Join(" ", notes), Inner, PrintedSheet.LeastPt).Select(line => (line, PrintedSheet.LeastPt, false)),
        ];
        var top = Height - MarginMm + 2 - lines.Sum(line => Lettered.HeightMm(line.SizePt));
        var end = top - 2;
        Line(Left, end, Right, end, 0.8);
        foreach (var (text, size, bold) in lines)
        {
            Text(text, Left, top, size, bold: bold);
            top += Lettered.HeightMm(size);
        }
        return end - 2;
    }

    /// <summary>The largest size up to a wanted one at which a line fits, no less than the smallest of a sheet.</summary>
    public static double Fitting(string text, double widthMm, double wantedPt, bool bold = false) => Math.Clamp(
        wantedPt * widthMm / Math.Max(widthMm, Lettered.WidthMm(text, wantedPt, bold)), PrintedSheet.LeastPt, wantedPt);

    /// <summary>The name of a belt position, cut where an owner's name is longer than a field.</summary>
    public static string ShortName(BeltPosition belt) => Lettered.Shortened(belt.Name, MostNameMm, PrintedSheet.LeastPt, bold: true);

    /// <summary>The cautions of every sheet, from their one source.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        .. new[] { "Guard the chuck.", "The inverter cannot know" }.Select(start => Studies.Cautions.Sections
            .SelectMany(section => section.Lines).Single(line => line.StartsWith(start, StringComparison.Ordinal))),
    ];

    /// <summary>Makes the sheet.</summary>
    public PrintedSheet Done(string id, string title) => new(id, title, Width, Height, Canvas);
}
