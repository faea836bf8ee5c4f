using System.Text;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Wording;

/// <summary>Says what a figure shows, in sentences with numbers: its alternative text and its plain form.</summary>
public static class FigureText
{
    private const int NamedSeries = 6;

    // Far above the last bits of a computed curve, far below what a reader could tell.
    private const double LevelShare = 1e-6;

    /// <summary>What the figure shows when still.</summary>
    /// <param name="figure">The figure.</param>
    /// <returns>A few sentences: axes, frames, then each legend entry with its range, the bound first.</returns>
    public static string Describe(Figure figure)
    {
        var text = new StringBuilder();
        text.Append(figure.Title).Append(": ").Append(Axes(figure)).Append('.');
        if (figure.Frames is { } frames)
            text.Append(' ').Append(Frames(frames)).Append('.');
        foreach (var entry in figure.StillMarks.Where(m => m is not TextMark).GroupBy(m => m.Legend)
            .OrderBy(g => g.Min(m => m.Role)))
            text.Append(' ').Append(Entry(figure, [.. entry])).Append('.');
        foreach (var remark in figure.StillMarks.OfType<TextMark>())
            text.Append(" Marked at ").Append(At(figure.X, remark.X)).Append(", ").Append(At(figure.Y, remark.Y))
                .Append(": ").Append(remark.Label).Append('.');
        return text.ToString();
    }

    /// <summary>The figure as plain text: description, notes, cautions and sources, each on its line.</summary>
    /// <param name="figure">The figure.</param>
    /// <returns>Lines ending in LF.</returns>
    public static string Plain(Figure figure)
    {
        var text = new StringBuilder();
        text.Append(figure.AltText).Append('\n');
        foreach (var note in figure.Notes)
            text.Append("Note: ").Append(note).Append('\n');
        foreach (var caution in figure.Cautions)
            text.Append("Caution: ").Append(caution).Append('\n');
        foreach (var source in figure.Sources)
            text.Append("Source: ").Append(source.InWords()).Append('\n');
        return text.ToString();
    }

    /// <summary>Which frame the still form shows and which there are besides.</summary>
    /// <param name="frames">The frames.</param>
    /// <returns>A sentence without its full stop.</returns>
    public static string Frames(FrameSet frames)
    {
        var others = frames.Frames.Where((_, i) => i != frames.Still).Select(frames.NameOf).ToList();
        var shown = $"Drawn at {frames.Parameter} {frames.NameOf(frames.Shown)}";
        return others.Count == 0 ? shown : $"{shown}; also computed at {Listed(others)}";
    }

    private static string Axes(Figure figure) => figure.Y.IsNames
        ? $"{Named(figure.X)} by {figure.Y.Label}"
        : $"{Named(figure.Y)} against {Named(figure.X)}";

    private static string Named(Axis axis)
    {
        var unit = axis.Unit.Length == 0 ? "" : axis.Unit;
        var scale = axis.Scale == AxisScale.Logarithmic ? "logarithmic" : "";
        var aside = string.Join(", ", new[] { unit, scale }.Where(s => s.Length > 0));
        return aside.Length == 0 ? axis.Label : $"{axis.Label} ({aside})";
    }

    private static string Entry(Figure figure, IReadOnlyList<Mark> marks)
    {
        var name = marks[0].Legend.WithCapital();
        if (marks.Count == 1)
        {
            var series = marks[0].Series.Length == 0 ? "" : $" ({marks[0].Series})";
            return $"{name}{series}: {Said(figure, marks[0])}";
        }
        if (marks.Count <= NamedSeries)
            return $"{name}: {string.Join("; ", marks.Select(m => $"{NameOf(figure, m)} {Said(figure, m)}"))}";
        var ys = marks.SelectMany(m => m.Extent).Where(p => double.IsFinite(p.Y)).Select(p => p.Y).ToList();
        return ys.Count == 0
            ? $"{name}: {marks.Count} of them"
            : $"{name}: {marks.Count} of them, {Span(figure.Y, ys.Min(), ys.Max())}";
    }

    private static string NameOf(Figure figure, Mark mark)
    {
        if (mark.Series.Length > 0)
            return mark.Series;
        if (mark is RangeBar bar && figure.Y.IsNames)
            return figure.Y.Ticks.FirstOrDefault(t => Math.Abs(t.Position - bar.At) < 0.5)?.Label ?? mark.Label;
        return mark is Rule ? "" : mark.Label;
    }

    private static string Said(Figure figure, Mark mark) => mark switch
    {
        Curve curve => Line(figure, [.. curve.Extent]),
        Points points => Dots(figure, [.. points.Xs.Zip(points.Ys)]),
        Band band => Between(figure, band),
        RangeBar bar => Span(figure.X, bar.From, bar.To),
        Rule rule => Ruled(rule, rule.Direction == RuleDirection.Level ? figure.Y : figure.X),
        _ => mark.Label,
    };

    private static string Line(Figure figure, IReadOnlyList<(double X, double Y)> all)
    {
        var points = all.Where(p => double.IsFinite(p.Y)).ToList();
        if (points.Count == 0)
            return "no values";
        var (least, most) = (points.MinBy(p => p.Y), points.MaxBy(p => p.Y));
        var reach = Span(figure.X, points.Min(p => p.X), points.Max(p => p.X));
        var gaps = points.Count == all.Count ? "" : ", with gaps";
        if (most.Y - least.Y <= 0.002 * Math.Max(Math.Abs(most.Y), Math.Abs(least.Y)))
            return $"{At(figure.Y, most.Y)} over {reach}{gaps}";
        var (first, last) = Top(all, most.Y);
        var highest = At(figure.X, first) == At(figure.X, last) ? $"at {At(figure.X, first)}" : $"from {Span(figure.X, first, last)}";
        return $"{Span(figure.Y, least.Y, most.Y)} over {reach}, highest {highest}{gaps}";
    }

    /// <summary>The first top from end to end: on a level one the last bits would choose a point.</summary>
    private static (double First, double Last) Top(IReadOnlyList<(double X, double Y)> all, double most)
    {
        bool IsTop((double X, double Y) point) => most - point.Y <= LevelShare * Math.Abs(most);
        var top = all.SkipWhile(point => !IsTop(point)).TakeWhile(IsTop).Select(point => point.X).ToList();
        return (top.Min(), top.Max());
    }

    private static string Dots(Figure figure, IReadOnlyList<(double X, double Y)> all)
    {
        var points = all.Where(p => double.IsFinite(p.Y)).ToList();
        if (points.Count == 0)
            return "no points";
        if (figure.Y.IsNames)
            return $"{points.Count} points, {Span(figure.X, points.Min(p => p.X), points.Max(p => p.X))}";
        var count = points.Count == 1 ? "1 point" : $"{points.Count} points";
        return $"{count}, {Span(figure.Y, points.Min(p => p.Y), points.Max(p => p.Y))}";
    }

    /// <summary>A rule by its label, with its value where the label does not say it.</summary>
    private static string Ruled(Rule rule, Axis axis) =>
        rule.Label.Contains(NumberText.Significant(rule.At), StringComparison.Ordinal)
            ? rule.Label
            : $"{rule.Label} at {At(axis, rule.At)}";

    private static string Between(Figure figure, Band band)
    {
        var lower = band.Lower.Where(double.IsFinite).ToList();
        var upper = band.Upper.Where(double.IsFinite).ToList();
        return lower.Count == 0 || upper.Count == 0
            ? "no values"
            : $"within {Span(figure.Y, lower.Min(), upper.Max())} over {Span(figure.X, band.Xs.Min(), band.Xs.Max())}";
    }

    private static string Span(Axis axis, double least, double most)
    {
        var (from, to) = (NumberText.Significant(least), NumberText.Significant(most));
        return from == to ? At(axis, most) : $"{from} to {At(axis, most)}";
    }

    private static string At(Axis axis, double value)
    {
        var tick = axis.IsNames ? axis.Ticks.FirstOrDefault(t => Math.Abs(t.Position - value) < 0.5) : null;
        if (tick is not null)
            return tick.Label;
        var number = NumberText.Significant(value);
        return axis.Unit.Length == 0 ? number : $"{number} {axis.Unit}";
    }

    private static string Listed(List<string> items) =>
        items.Count == 1 ? items[0] : $"{string.Join(", ", items.Take(items.Count - 1))} and {items[^1]}";
}
