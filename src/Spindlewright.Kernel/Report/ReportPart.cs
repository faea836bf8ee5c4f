using System.Text;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Report;

/// <summary>A part of the report with its heading.</summary>
/// <param name="Id">Its anchor.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Body">Its content as HTML.</param>
/// <param name="Entries">What it holds that a reader may look for: anchor and title.</param>
internal sealed record ReportPart(string Id, string Title, string Body, IReadOnlyList<(string Id, string Title)> Entries)
{
    internal ReportPart(string id, string title, string body) : this(id, title, body, []) { }

    /// <summary>The part as HTML.</summary>
    internal string Html() =>
        $"<section id=\"{Id}\" aria-labelledby=\"{Id}-title\">\n<h2 id=\"{Id}-title\">{Escape(Title)}</h2>\n{Body}</section>\n";

    /// <summary>A list of contents with anchors.</summary>
    /// <param name="parts">The parts in order.</param>
    internal static string Contents(IEnumerable<ReportPart> parts)
    {
        var html = new StringBuilder("<nav class=\"sw-contents\" aria-label=\"Contents\">\n<ul>\n");
        foreach (var part in parts)
        {
            html.Append($"<li><a href=\"#{part.Id}\">{Escape(part.Title)}</a>");
            if (part.Entries.Count > 0)
                html.Append("<ul>").AppendJoin("", part.Entries.Select(entry => $"<li><a href=\"#{Escape(entry.Id)}\">{Escape(entry.Title)}</a></li>")).Append("</ul>");
            html.Append("</li>\n");
        }
        return html.Append("</ul>\n</nav>\n").ToString();
    }
}
