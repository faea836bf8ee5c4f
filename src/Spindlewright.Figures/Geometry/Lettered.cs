using System.Text;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Figures.Geometry;

/// <summary>Measures text without a font: all faces of the house share Helvetica's widths.</summary>
/// <remarks>
/// Widths per thousand of the size, from the Adobe font metrics of Helvetica (from memory); within 7 % of what a
/// browser measures in Liberation Sans.
/// </remarks>
internal static class Lettered
{
    private const double Bold = 1.085;
    private const double LineHeight = 1.22;

    private static readonly short[] Widths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556,
        556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667,
        556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556,
        556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722,
        500, 500, 500, 334, 260, 334, 584,
    ];

    /// <summary>Width in mm.</summary>
    public static double WidthMm(string text, double sizePt, bool bold = false)
    {
        var sum = 0;
        foreach (var rune in text.EnumerateRunes())
            sum += WidthOf(rune);
        return sum / 1000.0 * sizePt * Look.MmPerPt * (bold ? Bold : 1);
    }

    /// <summary>Height of a line in mm.</summary>
    public static double HeightMm(double sizePt) => sizePt * Look.MmPerPt * LineHeight;

    /// <summary>From the top of a line to its foot, mm.</summary>
    public static double AscentMm(double sizePt) => sizePt * Look.MmPerPt * 0.93;

    /// <summary>Breaks text into lines of at most a width; a word that is too long is cut.</summary>
    public static IReadOnlyList<string> Wrapped(string text, double widthMm, double sizePt, bool bold = false)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(w => Cut(w, widthMm, sizePt, bold)))
        {
            if (line.Length > 0 && WidthMm($"{line} {word}", sizePt, bold) > widthMm)
            {
                lines.Add(line.ToString());
                line.Clear();
            }
            line.Append(line.Length > 0 ? " " : "").Append(word);
        }
        if (line.Length > 0)
            lines.Add(line.ToString());
        return lines;
    }

    /// <summary>Text cut to a width, with an ellipsis where something is lost.</summary>
    public static string Shortened(string text, double widthMm, double sizePt, bool bold = false)
    {
        if (WidthMm(text, sizePt, bold) <= widthMm) return text;
        var runes = text.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        while (runes.Count > 0 && WidthMm(string.Concat(runes) + "…", sizePt, bold) > widthMm) runes.RemoveAt(runes.Count - 1);
        return string.Concat(runes).TrimEnd() + "…";
    }

    private static IEnumerable<string> Cut(string word, double widthMm, double sizePt, bool bold)
    {
        var part = new StringBuilder();
        foreach (var rune in word.EnumerateRunes())
        {
            if (part.Length > 0 && WidthMm(part.ToString() + rune, sizePt, bold) > widthMm)
            {
                yield return part.ToString();
                part.Clear();
            }
            part.Append(rune.ToString());
        }
        yield return part.ToString();
    }

    private static int WidthOf(Rune rune) => rune.Value switch
    {
        >= 32 and < 127 => Widths[rune.Value - 32],
        0x202F => 200,
        '−' or '×' or '±' => 584,
        '·' => 333,
        >= 0x2E80 => 1000,
        _ => 600,
    };
}
