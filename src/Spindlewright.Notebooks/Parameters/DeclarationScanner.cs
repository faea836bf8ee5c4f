namespace Spindlewright.Notebooks.Parameters;

/// <summary>Finds the simple declarations in a parameters cell.</summary>
/// <remarks>
/// Not a compiler: it cuts the cell into statements at the semicolons outside brackets and takes each that reads
/// <c>type name = value</c>. Whatever else stands in the cell is left alone, and the engine compiles the result anyway.
/// </remarks>
public static class DeclarationScanner
{
    private static readonly string[] Numbers = ["double", "float", "decimal"];
    private static readonly string[] WholeNumbers =
        ["int", "long", "short", "byte", "uint", "ulong", "ushort", "sbyte", "nint", "nuint"];

    /// <summary>Lists the declarations.</summary>
    /// <param name="code">The cell's text.</param>
    /// <returns>The parameters, in order.</returns>
    public static IReadOnlyList<Parameter> Scan(string code)
    {
        var found = new List<Parameter>();
        var statement = new List<CodeToken>();
        var (depth, hasValue) = (0, false);
        foreach (var token in CodeToken.Cut(code))
        {
            if (depth == 0 && token.Is(";"))
            {
                Declarations(code, statement, found);
                statement.Clear();
                hasValue = false;
                continue;
            }

            hasValue |= depth == 0 && token.Is("=");
            depth += token.Text is "(" or "[" or "{" ? 1 : token.Text is ")" or "]" or "}" ? -1 : 0;
            statement.Add(token);
            if (depth == 0 && token.Is("}") && !hasValue)
                statement.Clear(); // the end of a block or a function: no declaration runs across it
        }

        return found;
    }

    private static void Declarations(string code, List<CodeToken> statement, List<Parameter> found)
    {
        var at = 0;
        while (at < statement.Count && statement[at].Text is "const" or "static" or "readonly")
            at++;
        var typeStart = at;
        // The name is the last word before the first equals sign; the type is what stands before it.
        var equals = statement.FindIndex(token => token.Is("="));
        if (equals < typeStart + 2 || statement[equals - 1].Kind != TokenKind.Word
            || !statement[typeStart..(equals - 1)].TrueForAll(IsOfType)
            || statement[equals - 2].Is("."))
            return;
        var type = code[statement[typeStart].Start..statement[equals - 2].End];
        foreach (var (name, value) in Declarators(statement[(equals - 1)..]))
            found.Add(Make(code, type, name.TrimStart('@'), value));
    }

    private static bool IsOfType(CodeToken token) =>
        token.Kind == TokenKind.Word || token.Text is "." or "<" or ">" or "[" or "]" or "?" or ",";

    private static IEnumerable<(string Name, List<CodeToken> Value)> Declarators(List<CodeToken> tokens)
    {
        var (depth, start) = (0, 0);
        for (var at = 0; at <= tokens.Count; at++)
        {
            if (at < tokens.Count)
                depth += tokens[at].Text is "(" or "[" or "{" ? 1 : tokens[at].Text is ")" or "]" or "}" ? -1 : 0;
            if (at < tokens.Count && (depth > 0 || !tokens[at].Is(",")))
                continue;
            if (at >= start + 3 && tokens[start].Kind == TokenKind.Word && tokens[start + 1].Is("="))
                yield return (tokens[start].Text, tokens[(start + 2)..at]);
            start = at + 1;
        }
    }

    private static Parameter Make(string code, string type, string name, List<CodeToken> value)
    {
        var start = value[0].Start;
        var written = code[start..value[^1].End];
        var (kind, shownType, example) = Classify(type, value);
        return new Parameter(name, kind, shownType, start, written, example);
    }

    private static (ParameterKind Kind, string Type, string? Example) Classify(string type, List<CodeToken> value) => type switch
    {
        _ when Numbers.Contains(type) => (ParameterKind.Number, type, null),
        _ when WholeNumbers.Contains(type) => (ParameterKind.WholeNumber, type, null),
        "bool" => (ParameterKind.TrueOrFalse, type, null),
        "string" => (ParameterKind.Text, type, null),
        _ => Quantity(type, value) ?? (type == "var" ? Literal(value) : (ParameterKind.Other, type, null)),
    };

    /// <summary>Recognises <c>Power.FromKilowatts(0.75)</c> and <c>Read("0.75 kW")</c>, <c>Read&lt;Power&gt;("0.75 kW")</c>.</summary>
    private static (ParameterKind Kind, string Type, string? Example)? Quantity(string type, List<CodeToken> value)
    {
        var open = value.FindIndex(token => token.Is("("));
        if (open < 1 || !value[^1].Is(")"))
            return null;
        var declared = type == "var" ? "" : type[(type.LastIndexOf('.') + 1)..];
        if (open + 3 == value.Count && IsPlainText(value[open + 1]) && ReadCall(value[..open]) is { } asked)
            return (ParameterKind.Quantity, declared.Length > 0 ? declared : asked, Unquote(value[open + 1]));
        if (open >= 3 && value[open - 2].Is(".") && value[open - 1].Text.StartsWith("From", StringComparison.Ordinal)
            && value[open - 1].Text.Length > 4)
            return (ParameterKind.Quantity, declared.Length > 0 ? declared : value[open - 3].Text, null);
        return null;
    }

    /// <summary>The type asked for in a call of Read; empty when it does not say; null when it is no such call.</summary>
    private static string? ReadCall(List<CodeToken> call)
    {
        var read = call.FindLastIndex(token => token.Is("Read"));
        if (read < 0)
            return null;
        var rest = call[(read + 1)..];
        if (rest.Count == 0)
            return "";
        return rest[0].Is("<") && rest[^1].Is(">") && rest.Count >= 3 ? rest[^2].Text : null;
    }

    private static (ParameterKind Kind, string Type, string? Example) Literal(List<CodeToken> value)
    {
        var first = value.Count == 2 && value[0].Text is "-" or "+" ? value[1] : value[0];
        var isOne = value.Count == 1 || value[0].Text is "-" or "+" && value.Count == 2;
        if (!isOne)
            return (ParameterKind.Other, "var", null);
        if (first.Kind == TokenKind.Number)
            return NumberLiteral(first.Text);
        if (value.Count == 1 && first.Text is "true" or "false")
            return (ParameterKind.TrueOrFalse, "bool", null);
        return first.Kind == TokenKind.Text && IsPlainText(first)
            ? (ParameterKind.Text, "string", null) : (ParameterKind.Other, "var", null);
    }

    private static (ParameterKind Kind, string Type, string? Example) NumberLiteral(string text)
    {
        var isHex = text.StartsWith("0x", StringComparison.OrdinalIgnoreCase);
        return (isHex, char.ToLowerInvariant(text[^1])) switch
        {
            (false, 'f') => (ParameterKind.Number, "float", null),
            (false, 'm') => (ParameterKind.Number, "decimal", null),
            (false, 'd') => (ParameterKind.Number, "double", null),
            (false, _) when text.AsSpan().ContainsAny('.', 'e', 'E') => (ParameterKind.Number, "double", null),
            (_, 'l') => (ParameterKind.WholeNumber, "long", null),
            _ => (ParameterKind.WholeNumber, "int", null),
        };
    }

    private static bool IsPlainText(CodeToken token) => token.Kind == TokenKind.Text && token.Text[0] is '"' or '@';

    private static string Unquote(CodeToken token) => token.Text.TrimStart('@').Trim('"');
}
