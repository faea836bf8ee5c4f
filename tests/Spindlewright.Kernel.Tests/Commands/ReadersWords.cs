using System.Net;
using System.Text.RegularExpressions;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>The two rules for what a reader sees: no word that approves, and no modelled torque without its bound.</summary>
internal static partial class ReadersWords
{
    private static readonly string[] Forbidden =
    [
        "safe", "safely", "harmless", "acceptable", "OK", "okay", "low risk", "can be stopped by hand", "the glove will tear",
    ];

    /// <summary>The one sentence that may hold one of them.</summary>
    internal const string Allowed = "Not exceeding a published figure does not show that contact is harmless.";

    internal static void ApproveNothing(string where, string text) => Empty(where, Approving(text));

    /// <summary>Every line with a modelled torque has its bound.</summary>
    /// <returns>How many lines were held to it.</returns>
    internal static int KeepTheBound(string where, IEnumerable<string> lines)
    {
        var modelled = lines.Where(line => line.Contains("N·m", StringComparison.Ordinal) && Modelled().IsMatch(line)).ToList();
        Empty(where, modelled.Where(line => !HasBound(line)));
        return modelled.Count;
    }

    /// <summary>Both rules for a page of ours: every head of a table, paragraph, item and line of output; not the code of cells.</summary>
    /// <returns>How many pieces with a modelled torque or an overpowering speed were held to their bound.</returns>
    internal static int HoldOnPage(string where, string html)
    {
        var shown = Code().Replace(html, "");
        ApproveNothing(where, Plain(shown));
        var heads = TableHead().Matches(shown).Select(match => match.Value).Where(head => Modelled().IsMatch(head)).ToList();
        Empty(where, heads.Where(head => !HasBound(head)));
        var pieces = Piece().Matches(shown).SelectMany(match => match.Groups[1].Value == "pre" ? match.Value.Split('\n') : [match.Value]);
        return heads.Count + KeepTheBound(where, pieces.Select(Plain));
    }

    internal static IEnumerable<string> Approving(string text)
    {
        var rest = text.Replace(Allowed, "", StringComparison.Ordinal);
        return Forbidden.SelectMany(words => Regex.Matches(rest, $@"(?<![\w-]){Regex.Escape(words)}(?![\w-])", words == "OK" ? RegexOptions.None : RegexOptions.IgnoreCase))
            .Select(match => rest[Math.Max(0, match.Index - 40)..Math.Min(rest.Length, match.Index + 40)].ReplaceLineEndings(" "));
    }

    private static bool HasBound(string text) => text.Contains("bound", StringComparison.OrdinalIgnoreCase);

    private static string Plain(string html) => WebUtility.HtmlDecode(Tag().Replace(html, " "));

    private static void Empty(string where, IEnumerable<string> found)
    {
        if (found.ToList() is { Count: > 0 } all) Assert.Fail($"{where}: {string.Join("; ", all)}");
    }

    [GeneratedRegex("modelled|ideal boost|overpowered|would reach|short time|short-time|locked-rotor torque|pull-out torque", RegexOptions.IgnoreCase)]
    private static partial Regex Modelled();

    [GeneratedRegex("<thead>.*?</thead>", RegexOptions.Singleline)]
    private static partial Regex TableHead();

    [GeneratedRegex("<(p|li|pre|figcaption|summary)\\b[^>]*>.*?</\\1>", RegexOptions.Singleline)]
    private static partial Regex Piece();

    [GeneratedRegex("<(script|style)\\b[^>]*>.*?</\\1>|<pre class=\"sw-code\"[^>]*>.*?</pre>", RegexOptions.Singleline)]
    private static partial Regex Code();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tag();
}
