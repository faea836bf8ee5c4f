using System.Collections.Frozen;
using System.Text;

namespace Spindlewright.Foundations.Reading;

/// <summary>Brings the many ways to type one unit to a single form, and builds the ways to type a product.</summary>
/// <remarks>Only characters are evened out here; letter case and words are never touched.</remarks>
internal static class UnitText
{
    private static readonly FrozenDictionary<char, string> Even = new Dictionary<char, string>
    {
        ['·'] = " ", ['\u22C5'] = " ", ['\u2219'] = " ", ['\u2022'] = " ", ['*'] = " ", ['\u00D7'] = " ",
        ['²'] = "2", ['³'] = "3", ['¹'] = "1", ['^'] = "", ['\u207B'] = "-", ['\u2212'] = "-",
        ['\u03BC'] = "u", ['µ'] = "u", ['\u2126'] = "Ω", ['\u212A'] = "K",
        ['\u2044'] = "/", ['\u2215'] = "/", ['″'] = "\"", ['”'] = "\"",
        ['º'] = "°", ['\u2103'] = "°C", ['\u2109'] = "°F",
    }.ToFrozenDictionary();

    /// <summary>One form for all typings of a unit: plain digits, single spaces, none beside a slash.</summary>
    public static string Normalise(ReadOnlySpan<char> typed)
    {
        var built = new StringBuilder(typed.Length);
        foreach (var character in typed)
        {
            if (Even.TryGetValue(character, out var text)) built.Append(text);
            else built.Append(char.IsWhiteSpace(character) ? ' ' : character);
        }
        var words = built.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var joined = string.Join(' ', words).Replace(" per ", "/", StringComparison.Ordinal);
        return joined.Replace(" /", "/", StringComparison.Ordinal).Replace("/ ", "/", StringComparison.Ordinal)
            .Replace("° ", "°", StringComparison.Ordinal);
    }

    /// <summary>The ways to type a product: joined by a raised dot, a space, nothing, a point or a hyphen.</summary>
    public static IEnumerable<string> Product(string first, string second) =>
        [$"{first}·{second}", $"{first} {second}", $"{first}{second}", $"{first}.{second}", $"{first}-{second}"];
}
