using System.Text;

namespace Spindlewright.Figures.Html;

/// <summary>Text made fit for HTML, SVG and scripts. The one place where anything is escaped.</summary>
public static class Markup
{
    /// <summary>Escapes text for the content or a quoted attribute of HTML or XML.</summary>
    /// <param name="text">Any text.</param>
    /// <returns>Well-formed text; characters that XML forbids become U+FFFD.</returns>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
            switch (rune.Value)
            {
                case '&': escaped.Append("&amp;"); break;
                case '<': escaped.Append("&lt;"); break;
                case '>': escaped.Append("&gt;"); break;
                case '"': escaped.Append("&quot;"); break;
                case '\'': escaped.Append("&#39;"); break;
                case < 0x20 and not ('\t' or '\n' or '\r'):
                case 0xFFFE or 0xFFFF:
                    escaped.Append('\uFFFD');
                    break;
                default: escaped.Append(rune.ToString()); break;
            }
        return escaped.ToString();
    }

    /// <summary>Makes JSON fit to stand inside a script element.</summary>
    /// <param name="json">Well-formed JSON.</param>
    /// <returns>The same JSON; no element can be opened or closed by it.</returns>
    public static string EscapeJson(string json) => json
        .Replace("<", "\\u003c", StringComparison.Ordinal)
        .Replace(">", "\\u003e", StringComparison.Ordinal)
        .Replace("&", "\\u0026", StringComparison.Ordinal)
        .Replace("\u2028", "\\u2028", StringComparison.Ordinal)
        .Replace("\u2029", "\\u2029", StringComparison.Ordinal);
}
