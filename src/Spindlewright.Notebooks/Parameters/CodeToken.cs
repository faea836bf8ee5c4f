namespace Spindlewright.Notebooks.Parameters;

internal enum TokenKind
{
    Word,
    Number,
    Text,
    Sign,
}

/// <summary>A piece of C# code.</summary>
internal readonly record struct CodeToken(TokenKind Kind, int Start, int End, string Text)
{
    internal bool Is(string text) => Text == text;

    /// <summary>Cuts C# into tokens, without comments and directives; what it does not know it takes as signs.</summary>
    internal static List<CodeToken> Cut(string code)
    {
        var tokens = new List<CodeToken>();
        for (var at = 0; at < code.Length;)
        {
            var end = EndOfGap(code, at);
            if (end > at)
            {
                at = end;
                continue;
            }

            (var kind, end) = EndOfToken(code, at);
            tokens.Add(new CodeToken(kind, at, end, code[at..end]));
            at = end;
        }

        return tokens;
    }

    private static int EndOfGap(string code, int at)
    {
        var rest = code.AsSpan(at);
        if (char.IsWhiteSpace(code[at]))
            return at + 1;
        if (rest.StartsWith("//") || (code[at] == '#' && IsFirstInLine(code, at)))
            return EndAfter(code, "\n", at);
        return rest.StartsWith("/*") ? EndAfter(code, "*/", at + 2) : at;
    }

    private static bool IsFirstInLine(string code, int at) =>
        code.AsSpan(code.LastIndexOf('\n', at) + 1, at - code.LastIndexOf('\n', at) - 1).IsWhiteSpace();

    private static (TokenKind Kind, int End) EndOfToken(string code, int at)
    {
        var quote = at;
        while (quote < code.Length && code[quote] is '$' or '@')
            quote++;
        if (quote < code.Length && code[quote] == '"')
            return (TokenKind.Text, EndOfText(code, quote, code.AsSpan(at, quote - at).Contains('@')));
        if (code[at] == '\'')
            return (TokenKind.Text, EndOfEscaped(code, at + 1, '\''));
        if (char.IsAsciiDigit(code[at]) || (code[at] == '.' && at + 1 < code.Length && char.IsAsciiDigit(code[at + 1])))
            return (TokenKind.Number, EndOfNumber(code, at));
        var end = code[at] == '@' ? at + 1 : at;
        while (end < code.Length && (char.IsLetterOrDigit(code[end]) || code[end] == '_'))
            end++;
        return end > at ? (TokenKind.Word, end) : (TokenKind.Sign, at + 1);
    }

    private static int EndOfNumber(string code, int at)
    {
        var end = at;
        while (end < code.Length && (char.IsLetterOrDigit(code[end]) || code[end] is '.' or '_'
                                     || (code[end] is '+' or '-' && code[end - 1] is 'e' or 'E' && !IsHex(code, at))))
        {
            if (code[end] == '.' && (end + 1 >= code.Length || !char.IsAsciiDigit(code[end + 1])))
                break;
            end++;
        }

        return end;
    }

    private static bool IsHex(string code, int at) => at + 1 < code.Length && code[at + 1] is 'x' or 'X';

    private static int EndOfText(string code, int quote, bool verbatim)
    {
        var quotes = 0;
        while (quote + quotes < code.Length && code[quote + quotes] == '"')
            quotes++;
        if (quotes >= 3)
            return EndAfter(code, new string('"', quotes), quote + quotes);
        if (!verbatim)
            return EndOfEscaped(code, quote + 1, '"');
        for (var at = quote + 1; at < code.Length; at++)
        {
            if (code[at] != '"')
                continue;
            if (at + 1 >= code.Length || code[at + 1] != '"')
                return at + 1;
            at++;
        }

        return code.Length;
    }

    private static int EndOfEscaped(string code, int at, char quote)
    {
        while (at < code.Length && code[at] != quote && code[at] != '\n')
            at += code[at] == '\\' ? 2 : 1;
        return Math.Min(at + 1, code.Length);
    }

    private static int EndAfter(string code, string mark, int from)
    {
        var at = from >= code.Length ? -1 : code.IndexOf(mark, from, StringComparison.Ordinal);
        return at < 0 ? code.Length : at + mark.Length;
    }
}
