namespace Spindlewright.Figures.Interactive;

/// <summary>Text made fit for plotly.js, which reads some tags, entities and templates in it.</summary>
internal static class PlotlyText
{
    /// <summary>Escapes text so that all of it shows.</summary>
    /// <param name="text">Any text.</param>
    /// <returns>Text without tags, entities or templates.</returns>
    public static string Escape(string text) => Whole(text)
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        // A dollar sign would open mathematics, a percent sign before a brace a template: a word joiner parts them.
        .Replace("$", "\u2060$\u2060", StringComparison.Ordinal)
        .Replace("%{", "%\u2060{", StringComparison.Ordinal);

    /// <summary>Half a surrogate pair, which JSON cannot carry, becomes U+FFFD.</summary>
    private static string Whole(string text) => string.Concat(text.EnumerateRunes());
}
