using System.Text;
using Spindlewright.Figures.Wording;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Figures.Html;

/// <summary>Writes a table as a fragment of HTML.</summary>
public static class TableHtml
{
    /// <summary>The table with caption, heads with scope and unit, footnotes and sources.</summary>
    /// <param name="table">The table.</param>
    /// <param name="idSuffix">Added to the id, so that a table can stand twice in one page; may be empty.</param>
    /// <returns>A <c>div</c>; it ends in LF.</returns>
    public static string Write(Table table, string idSuffix = "")
    {
        var html = new StringBuilder();
        html.Append($"<div class=\"sw-table-box\" id=\"{table.Id}{Escape(idSuffix)}\">\n");
        html.Append($"<div class=\"sw-scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Escape(table.Title)}\">\n")
            .Append("<table class=\"sw-table\">\n");
        html.Append($"<caption>{Escape(table.Title)}");
        if (table.Caption.Length > 0)
            html.Append($"<span>{Escape(table.Caption)}</span>");
        html.Append("</caption>\n<thead><tr>");
        foreach (var column in table.Columns)
            html.Append($"<th scope=\"col\"{Class(column)}>{Escape(column.Header)}{Unit(column)}</th>");
        html.Append("</tr></thead>\n<tbody>\n");
        for (var i = 0; i < table.Rows.Length; i++)
            Row(html, table, i);
        html.Append("</tbody>\n</table>\n</div>\n");
        Footnotes(html, table);
        return html.Append("</div>\n").ToString();
    }

    private static void Row(StringBuilder html, Table table, int row)
    {
        html.Append(table.Emphasis.Contains(row) ? "<tr class=\"sw-emphasis\">" : "<tr>");
        for (var i = 0; i < table.Columns.Length; i++)
        {
            var text = Escape(TableText.Printed(table.Rows[row][i], table.Columns[i]));
            html.Append(i == 0
                ? $"<th scope=\"row\"{Class(table.Columns[i])}>{text}</th>"
                : $"<td{Class(table.Columns[i])}>{text}</td>");
        }
        html.Append("</tr>\n");
    }

    private static void Footnotes(StringBuilder html, Table table)
    {
        if (table.Footnotes.IsEmpty && table.Sources.IsEmpty)
            return;
        html.Append("<div class=\"sw-footnotes\">");
        foreach (var note in table.Footnotes)
            html.Append($"<p>{Escape(note)}</p>");
        if (table.Sources.Length > 0)
            html.Append($"<p>Sources: {Escape(string.Join("; ", table.Sources.Select(s => s.InWords())))}.</p>");
        html.Append("</div>\n");
    }

    private static string Class(Column column) => column.Align switch
    {
        Alignment.Right => " class=\"sw-right\"",
        Alignment.Centre => " class=\"sw-centre\"",
        _ => "",
    };

    private static string Unit(Column column) =>
        column.Unit.Length == 0 ? "" : $" <span class=\"sw-unit\">{Escape(column.Unit)}</span>";
}
