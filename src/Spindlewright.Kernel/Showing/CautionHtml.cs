using System.Text;
using Spindlewright.Studies;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Showing;

/// <summary>The cautions as fragments of HTML, for reports, notebook pages and cells.</summary>
internal static class CautionHtml
{
    /// <summary>One section with its heading.</summary>
    internal static string Section(CautionSection section) => $"<h3>{Escape(section.Title)}</h3>\n{Lines(section)}";

    /// <summary>The points of a section.</summary>
    internal static string Lines(CautionSection section)
    {
        var html = new StringBuilder("<ul>\n");
        foreach (var line in section.Lines) html.Append($"<li>{Escape(line)}</li>\n");
        return html.Append("</ul>\n").ToString();
    }
}
