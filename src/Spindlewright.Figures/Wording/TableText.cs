using System.Text;

namespace Spindlewright.Figures.Wording;

/// <summary>Writes a table as aligned plain text.</summary>
public static class TableText
{
    /// <summary>The table with its title, headings, units, rows, footnotes and sources.</summary>
    /// <param name="table">The table.</param>
    /// <returns>Lines ending in LF; no line ends in a space.</returns>
    public static string Write(Table table)
    {
        var rows = table.Rows.Select(row => row.Select((cell, i) => Printed(cell, table.Columns[i])).ToArray())
            .ToList();
        var widths = table.Columns.Select((c, i) =>
            Math.Max(Math.Max(Width(c.Header), Width(c.Unit)), rows.Count == 0 ? 0 : rows
                .Max(r => Width(r[i])))).ToArray();
        var text = new StringBuilder();
        text.Append(table.Title).Append('\n');
        if (table.Caption.Length > 0)
            text.Append(table.Caption).Append('\n');
        text.Append('\n');
        Line(text, [.. table.Columns.Select(c => c.Header)], table, widths, "");
        if (table.Columns.Any(c => c.Unit.Length > 0))
            Line(text, [.. table.Columns.Select(c => c.Unit)], table, widths, "");
        text.Append(string.Join("  ", widths.Select(w => new string('-', w)))).Append('\n');
        for (var i = 0; i < rows.Count; i++)
            Line(text, rows[i], table, widths, table.Emphasis.Contains(i) ? "  <" : "");
        foreach (var note in table.Footnotes)
            text.Append('\n').Append(note);
        foreach (var source in table.Sources)
            text.Append("\nSource: ").Append(source.InWords());
        return text.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>A cell as its column prints it.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="column">Its column.</param>
    /// <returns>Its words or figures; a dash for the empty cell.</returns>
    public static string Printed(Cell cell, Column column) =>
        cell.Number is { } number ? NumberText.As(number, column.Format) : cell.Words ?? "–";

    private static void Line(StringBuilder text, string[] cells, Table table, int[] widths, string tail)
    {
        var line = string.Join("  ", cells
            .Select((cell, i) => Padded(OneLine(cell), widths[i], table.Columns[i].Align)));
        text.Append((line + tail).TrimEnd()).Append('\n');
    }

    private static string Padded(string cell, int width, Alignment align)
    {
        var room = width - Width(cell);
        var left = align switch { Alignment.Right => room, Alignment.Centre => room / 2, _ => 0 };
        return new string(' ', left) + cell + new string(' ', room - left);
    }

    private static string OneLine(string cell) => cell.ReplaceLineEndings(" ").Replace('\t', ' ');

    private static int Width(string cell) => OneLine(cell).EnumerateRunes().Count();
}
