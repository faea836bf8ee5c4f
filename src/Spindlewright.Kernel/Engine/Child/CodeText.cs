namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Places in code.</summary>
internal static class CodeText
{
    /// <summary>Turns line and column, both from 0, into UTF-16 units from the beginning; beyond the end is the end.</summary>
    internal static int Offset(string code, int line, int column)
    {
        var start = 0;
        for (var at = 0; at < line; at++)
        {
            var end = code.IndexOf('\n', start);
            if (end < 0)
                return code.Length;
            start = end + 1;
        }

        var stop = code.IndexOf('\n', start);
        return Math.Min(start + Math.Max(column, 0), stop < 0 ? code.Length : stop);
    }

    /// <summary>The line and column, both from 0, of the end of a text.</summary>
    internal static (int Line, int Column) Place(string text) =>
        (text.Count(c => c == '\n'), text.Length - text.LastIndexOf('\n') - 1);

    /// <summary>The bounds of the name around a place.</summary>
    internal static (int Start, int End) WordAt(string code, int offset)
    {
        var (start, end) = (offset, offset);
        while (start > 0 && IsPartOfName(code[start - 1]))
            start--;
        while (end < code.Length && IsPartOfName(code[end]))
            end++;
        return (start, end);
    }

    /// <summary>What the line after the code begins with: the last line's indent, one step more after a brace.</summary>
    internal static string NextIndent(string code)
    {
        var last = code[(code.LastIndexOf('\n') + 1)..];
        var indent = last[..(last.Length - last.TrimStart().Length)];
        return last.TrimEnd().EndsWith('{') ? $"{indent}    " : indent;
    }

    private static bool IsPartOfName(char c) => char.IsLetterOrDigit(c) || c == '_';
}
