using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Geometry;

namespace Spindlewright.Figures.Svg;

/// <summary>One entry of the legend: what it says and what its sample must show.</summary>
internal sealed record LegendEntry(
    string Text, RoleLook Look, bool Line, bool Dot, double Fill, double SampleMm, double WidthMm)
{
    /// <summary>The entries of a figure, the bound first; rules and words are named where they stand.</summary>
    public static IReadOnlyList<LegendEntry> Of(Figure figure, Look look) =>
    [
        .. figure.StillMarks.Where(m => m is not (TextMark or Rule)).GroupBy(m => m.Legend)
            .OrderBy(g => g.Min(m => m.Role)).Select(g => Of(g.Key, [.. g], look)),
    ];

    private static LegendEntry Of(string text, IReadOnlyList<Mark> marks, Look look)
    {
        var role = look.For(marks[0].Role, marks[0].Side);
        var fill = marks.Any(m => m is RangeBar) ? role.BarOpacity : marks.Any(m => m is Band) ? role.BandOpacity : -1;
        var line = marks.Any(m => m is Curve);
        var sample = look.Space.SampleMm * (line ? 1 : fill >= 0 ? 0.6 : 0.3);
        var width = sample + 1.5 + Lettered.WidthMm(text, look.Letters.LabelPt);
        return new(text, role, line, marks.Any(m => m is Points), fill, sample, width);
    }
}
