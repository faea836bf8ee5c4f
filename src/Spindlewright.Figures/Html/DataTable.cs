using System.Collections.Immutable;
using Spindlewright.Figures.Wording;

namespace Spindlewright.Figures.Html;

/// <summary>Puts the numbers of a figure into a table, for readers who cannot or will not read a drawing.</summary>
public static class DataTable
{
    private const int RowsOfMark = 9;

    /// <summary>The numbers of the still form; of a long line every so many points, its ends always.</summary>
    /// <param name="figure">The figure.</param>
    /// <returns>A table with one row a point.</returns>
    public static Table Of(Figure figure)
    {
        var spans = figure.StillMarks.Any(m => m is Band or RangeBar);
        ImmutableArray<Column> columns =
        [
            new("what", Align: Alignment.Left),
            new(figure.X.Label, figure.X.Unit, Format: new(Significant: 4)),
            spans
                ? new(
                    $"{figure.Y.Label}, or to", (figure.Y.IsNames ? figure.X : figure.Y).Unit, Format: new(Significant: 4))
                : new(figure.Y.Label, figure.Y.Unit, Format: new(Significant: 4)),
        ];
        var thinned = figure.StillMarks.Any(m => Count(m) > RowsOfMark);
        ImmutableArray<string> notes = thinned
            ? [$"Of longer lines {RowsOfMark} points are listed, the ends among them."] : [];
        var caption = figure.Frames is { } frames ? FigureText.Frames(frames) + "." : null;
        return new(figure.Id + "-data", "Data of the figure", columns,
            [.. figure.StillMarks.SelectMany(m => Rows(figure, m))], caption, notes);
    }

    private static int Count(Mark mark) =>
        mark switch { Curve c => c.Xs.Length, Points p => p.Xs.Length, Band b => b.Xs.Length, _ => 1 };

    private static IEnumerable<ImmutableArray<Cell>> Rows(Figure figure, Mark mark) => mark switch
    {
        Curve c => Picked(c.Xs.Length).Select(i => Row(c.FullName, c.Xs[i], c.Ys[i])),
        Points p => Picked(p.Xs.Length)
            .Select(i => Row(p.FullName, p.Xs[i], figure.Y.IsNames ? NameAt(figure, p.Ys[i]) : p.Ys[i])),
        Band b => Picked(b.Xs.Length).Select(i => Row(
            b.FullName, b.Xs[i],
            $"{NumberText.Significant(b.Lower[i], 4)} to {NumberText.Significant(b.Upper[i], 4)}")),
        RangeBar r => [Row(BarName(figure, r), r.From, r.To)],
        Rule { Direction: RuleDirection.Level } r => [Row(r.Label, Cell.Empty, r.At)],
        Rule r => [Row(r.Label, r.At, Cell.Empty)],
        TextMark t => [Row(t.Label, t.X, figure.Y.IsNames ? NameAt(figure, t.Y) : t.Y)],
        _ => [],
    };

    private static Cell NameAt(Figure figure, double at) =>
        figure.Y.Ticks.FirstOrDefault(t => Math.Abs(t.Position - at) < 0.5)?.Label ?? (Cell)at;

    private static string BarName(Figure figure, RangeBar bar) =>
        bar.Series.Length > 0 || !figure.Y.IsNames ? bar.FullName : $"{NameAt(figure, bar.At).Words}, {bar.Legend}";

    private static ImmutableArray<Cell> Row(string what, Cell x, Cell y) => [what, x, y];

    private static IEnumerable<int> Picked(int count) => count <= RowsOfMark
        ? Enumerable.Range(0, count)
        : Enumerable.Range(0, RowsOfMark).Select(i => (int)Math.Round(i * (count - 1.0) / (RowsOfMark - 1)));
}
