using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Svg;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Sheets;

/// <summary>One line of a cell.</summary>
/// <param name="Text">The words.</param>
/// <param name="Bold">True for heavy letters.</param>
/// <param name="Scale">Size over that of the table.</param>
internal readonly record struct CellLine(string Text, bool Bold = false, double Scale = 1);

/// <summary>A column of a table on paper.</summary>
/// <param name="Head">Lines of its head.</param>
/// <param name="At">Where its text stands.</param>
internal sealed record PaperColumn(IReadOnlyList<string> Head, TextAt At = TextAt.Middle);

/// <summary>A table drawn on paper, as large as its room allows.</summary>
internal sealed class PaperTable(string name, IReadOnlyList<PaperColumn> columns, IReadOnlyList<IReadOnlyList<IReadOnlyList<CellLine>>> rows)
{
    private const double GapMm = 3.2;
    private const double PadMm = 1.6;
    private const double StepPt = 0.25;

    /// <summary>Size of the head over that of the cells, at most.</summary>
    private const double HeadScale = 0.62;

    /// <summary>Size of the smallest letters, points: head and small lines never fall below it.</summary>
    private const double LeastPt = PrintedSheet.LeastPt;

    /// <summary>Rows that a heavier rule follows.</summary>
    public IReadOnlySet<int> RuledAfter { get; init; } = new HashSet<int>();

    /// <summary>Draws the table into a box with the largest letters that fit, up to a size.</summary>
    /// <exception cref="PartException">It does not fit with the smallest letters.</exception>
    public void Draw(Paper paper, Box box, double mostPt)
    {
        for (var size = mostPt; size >= LeastPt - 1e-9; size -= StepPt)
            if (Widths(size).Sum() <= box.Width && HeightOf(size) <= box.Height)
            {
                Draw(paper, box, Widths(size), size);
                return;
            }
        throw new PartException(
            name, "size", FormattableString.Invariant($"{box.Width:0} mm by {box.Height:0} mm"),
            FormattableString.Invariant($"at least {Widths(LeastPt).Sum() + 0.5:0} mm by {HeightOf(LeastPt) + 0.5:0} mm for the table, with letters of {LeastPt:0} points"));
    }

    private static double Sized(double scale, double sizePt) => Math.Max(LeastPt, scale * sizePt);

    private static double HeadPt(double sizePt) => Math.Min(15, Sized(HeadScale, sizePt));

    private List<double> Widths(double sizePt) => [.. columns.Select((column, i) => GapMm + Math.Max(
        column.Head.Select(line => Lettered.WidthMm(line, HeadPt(sizePt), bold: true)).DefaultIfEmpty().Max(),
        rows.SelectMany(row => row[i]).Select(line => Lettered.WidthMm(line.Text, Sized(line.Scale, sizePt), line.Bold)).DefaultIfEmpty().Max()))];

    private double HeadHeight(double sizePt) =>
        columns.Max(column => column.Head.Count) * Lettered.HeightMm(HeadPt(sizePt)) + PadMm;

    private static double Stack(IReadOnlyList<CellLine> cell, double sizePt) =>
        cell.Sum(line => Lettered.HeightMm(Sized(line.Scale, sizePt)));

    private double RowHeight(double sizePt) => rows.Max(row => row.Max(cell => Stack(cell, sizePt))) + PadMm;

    private double HeightOf(double sizePt) => HeadHeight(sizePt) + rows.Count * RowHeight(sizePt);

    private void Draw(Paper paper, Box box, List<double> widths, double sizePt)
    {
        var spread = (box.Width - widths.Sum()) / columns.Count;
        var lefts = widths.Select((_, i) => box.Left + widths.Take(i).Sum() + i * spread).ToList();
        double At(int column) => columns[column].At switch
        {
            TextAt.Start => lefts[column] + GapMm / 2,
            TextAt.End => lefts[column] + widths[column] + spread - GapMm / 2,
            _ => lefts[column] + (widths[column] + spread) / 2,
        };
        var headPt = HeadPt(sizePt);
        for (var column = 0; column < columns.Count; column++)
            for (var line = 0; line < columns[column].Head.Count; line++)
                paper.Text(
                    columns[column].Head[line], At(column), box.Top + line * Lettered.HeightMm(headPt), headPt, columns[column].At, bold: true);
        var top = box.Top + HeadHeight(sizePt);
        paper.Line(box.Left, top - PadMm / 2, box.Right, top - PadMm / 2, 1.2);
        var high = Math.Min((box.Bottom - top) / rows.Count, 1.7 * RowHeight(sizePt));
        for (var row = 0; row < rows.Count; row++, top += high)
        {
            for (var column = 0; column < columns.Count; column++) Cell(paper, rows[row][column], At(column), columns[column].At, top, high, sizePt);
            var below = top + high - PadMm / 2;
            paper.Line(box.Left, below, box.Right, below, RuledAfter.Contains(row) ? 1 : 0.35);
        }
    }

    private static void Cell(Paper paper, IReadOnlyList<CellLine> cell, double x, TextAt at, double top, double high, double sizePt)
    {
        var y = top + (high - PadMm - Stack(cell, sizePt)) / 2;
        foreach (var line in cell)
        {
            var size = Sized(line.Scale, sizePt);
            paper.Text(line.Text, x, y, size, at, line.Bold);
            y += Lettered.HeightMm(size);
        }
    }
}
