using System.Globalization;
using System.Text;

namespace Spindlewright.Foundations.Reading;

/// <summary>Text of unknown origin made fit for a message: one line, short, no control characters.</summary>
public static class Printable
{
    /// <summary>Most characters kept of a text found.</summary>
    public const int Longest = 60;

    /// <summary>Escapes and shortens.</summary>
    /// <param name="text">Any text, such as bytes of an unknown file.</param>
    /// <returns>At most <see cref="Longest"/> characters of it; what cannot be printed stands as \uXXXX.</returns>
    public static string Of(string? text)
    {
        if (string.IsNullOrEmpty(text)) return "";
        var built = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (built.Length >= Longest) return built.Append('…').ToString();
            if (IsPlain(rune)) built.Append(rune.ToString());
            else built.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
        }
        return built.ToString();
    }

    private static bool IsPlain(Rune rune) => Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control
        or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse
        or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
        && rune != Rune.ReplacementChar;
}
