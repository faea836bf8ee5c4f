using System.Globalization;
using System.Text.RegularExpressions;
using Spindlewright.Foundations.Reading;
using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>A syntax fault in words that say what to write.</summary>
/// <param name="Place">Where.</param>
/// <param name="Found">The line.</param>
/// <param name="Accepted">What is accepted.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="IsDoubled">True where the syntax is sound and a name is given twice.</param>
/// <param name="IsHeader">True where the line is a section's header.</param>
internal sealed record SyntaxFault(
    TextPlace Place, string Found, string Accepted, string Message, bool IsDoubled, bool IsHeader = false);

/// <summary>The lines whose content is not to be trusted.</summary>
/// <param name="Lines">Lines with a fault, from 1.</param>
/// <param name="From">All lines from this one on, since a quote is not closed.</param>
internal sealed record BrokenLines(IReadOnlySet<int> Lines, int From)
{
    /// <summary>Every line is sound.</summary>
    public static BrokenLines None { get; } = new(new HashSet<int>(), int.MaxValue);

    /// <summary>True where one of the lines is broken.</summary>
    public bool Touch(int first, int last)
    {
        if (last >= From) return true;
        for (var line = first; line <= last && Lines.Count > 0; line++)
            if (Lines.Contains(line))
                return true;
        return false;
    }
}

/// <summary>Turns what the parser reports into one fault a line, worded for people who write no TOML otherwise.</summary>
internal static partial class SyntaxFaults
{
    private const string Lines = "[section], key = \"value\", # remark";

    /// <summary>The first fault of each line, up to a quote that is not closed: behind it every line is turned.</summary>
    /// <remarks>
    /// The parser holds two names for one where their hash codes agree, about once in a million readings of a file of a
    /// hundred keys; a name reported as given twice is therefore compared with the one at the place reported.
    /// </remarks>
    /// <param name="document">The syntax tree with its diagnostics.</param>
    /// <param name="text">The text.</param>
    /// <returns>The faults in the order of the text, and the lines that hold them.</returns>
    public static (IReadOnlyList<SyntaxFault> Faults, BrokenLines Broken) Of(DocumentSyntax document, string text)
    {
        var errors = document.Diagnostics.Where(diagnostic => diagnostic.Kind == DiagnosticMessageKind.Error)
            .OrderBy(diagnostic => diagnostic.Span.Start.Line).ToList();
        if (errors.Count == 0) return ([], BrokenLines.None);
        var open = errors.Find(diagnostic => OpenQuotePattern().IsMatch(diagnostic.Message));
        var last = open is null ? int.MaxValue : open.Span.Start.Line + 1;
        var lines = text.Split('\n');
        var faults = new List<SyntaxFault>();
        foreach (var diagnostic in errors)
        {
            var place = new TextPlace(diagnostic.Span.Start.Line + 1, diagnostic.Span.Start.Column + 1);
            if (place.Line > last || Follows(faults, place.Line)) continue;
            var doubled = DoubledPattern().Match(diagnostic.Message);
            if (!doubled.Success) faults.Add(Worded(diagnostic, place, lines));
            else if (IsSameName(doubled)) faults.Add(Doubled(doubled, place));
        }
        var broken = faults.Where(fault => !fault.IsDoubled).Select(fault => fault.Place.Line).ToHashSet();
        return (faults, new BrokenLines(broken, last));
    }

    /// <summary>True on a line already told of, and on the line below a header without its bracket.</summary>
    private static bool Follows(List<SyntaxFault> faults, int line) => faults.Count > 0
        && (faults[^1].Place.Line == line || (faults[^1].Place.Line == line - 1 && faults[^1].IsHeader));

    private static SyntaxFault Worded(DiagnosticMessage diagnostic, TextPlace place, string[] lines)
    {
        var line = place.Line <= lines.Length ? lines[place.Line - 1].TrimEnd('\r') : "";
        var message = Advice(line, place.Column) ?? AsReported(diagnostic.Message);
        return new(place, line, Lines, message, IsDoubled: false, IsHeader: HeaderPattern().IsMatch(line));
    }

    private static SyntaxFault Doubled(Match doubled, TextPlace place)
    {
        var name = Printable.Of(doubled.Groups["name"].Value);
        return new(place, name, "", string.Create(CultureInfo.InvariantCulture,
            $"{name} is given twice; it stands first on line {doubled.Groups["line"].Value}"), IsDoubled: true);
    }

    /// <summary>
    /// True where the header or key that stands first spells the doubled name: a header from its beginning, a key of a
    /// section by the end of the name. Either may go on, since <c>a.b = 1</c> also makes <c>a</c>.
    /// </summary>
    private static bool IsSameName(Match doubled)
    {
        var name = Parts(doubled.Groups["name"].Value);
        var first = Parts(doubled.Groups["first"].Value);
        return doubled.Groups["header"].Success ? first.Take(name.Length).SequenceEqual(name)
            : Enumerable.Range(1, Math.Min(name.Length, first.Length))
                .Any(count => first.Take(count).SequenceEqual(name.TakeLast(count)));
    }

    private static string[] Parts(string name) =>
        [.. name.Split('.').Select(part => part.Trim().Trim('"', '\'').Trim())];

    private static string? Advice(string line, int column)
    {
        if (line.Length > 300) return null;
        if (line.AsSpan().IndexOfAny('“', '”', '„') >= 0) return "quotes are the straight ones, \"0.75 kW\"";
        if (HeaderPattern().Match(line) is { Success: true } header)
            return $"a section's name stands alone in brackets; write [{Printable.Of(header.Groups["name"].Value)}]";
        var pair = PairPattern().Match(line);
        if (!pair.Success)
            return ColonPattern().Match(line) is { Success: true } colon
                ? $"a value follows an equals sign; write {Printable.Of(colon.Groups["key"].Value)} = …" : null;
        var (key, value) = (pair.Groups["key"].Value.Trim(), pair.Groups["value"].Value.Trim());
        if (key.Contains(' ', StringComparison.Ordinal) && !key.Contains('"', StringComparison.Ordinal))
            return $"a key is one word; write {Printable.Of(key.Replace(' ', '_'))}";
        if (value.Length == 0) return $"a value is missing after {Printable.Of(key)} =";
        if (value[0] is '"' or '\'')
            return value.Count(character => character == value[0]) % 2 == 1 ? "a quote is opened and not closed" : null;
        return value[0] is '[' or '{' || column <= line.IndexOf('=', StringComparison.Ordinal) ? null
            : $"words and values with a unit stand in quotes; write {Printable.Of(key)} = \"{Printable.Of(value)}\"";
    }

    private static string AsReported(string message) =>
        $"this is no TOML: {Printable.Of(char.ToLowerInvariant(message[0]) + message[1..].Replace('\n', ' '))}";

    [GeneratedRegex(
        @"^The key `(?<name>[^`]*)` is already defined at \((?<line>\d+),\d+\) with `\s*(?<header>\[+)?(?<first>[^\]=`]*)",
        RegexOptions.NonBacktracking)]
    private static partial Regex DoubledPattern();

    [GeneratedRegex(@"^Invalid (newline in a string|End-Of-File found)", RegexOptions.NonBacktracking)]
    private static partial Regex OpenQuotePattern();

    [GeneratedRegex(@"^\s*\[{0,2}\s*(?<name>[A-Za-z0-9_.-]+)\s*\]{0,2}\s*$", RegexOptions.NonBacktracking)]
    private static partial Regex HeaderPattern();

    [GeneratedRegex(@"^(?<key>[^=#]*)=(?<value>[^#]*)", RegexOptions.NonBacktracking)]
    private static partial Regex PairPattern();

    [GeneratedRegex(@"^\s*(?<key>[A-Za-z0-9_.-]+)\s*:", RegexOptions.NonBacktracking)]
    private static partial Regex ColonPattern();
}
