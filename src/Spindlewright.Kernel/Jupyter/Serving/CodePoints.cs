namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Places in code: the protocol counts code points, the language counts UTF-16 units, lines and columns.</summary>
internal static class CodePoints
{
    /// <summary>Turns a number of code points from the beginning into UTF-16 units; beyond the end is the end.</summary>
    internal static int ToUnits(string code, int points)
    {
        var units = 0;
        for (var left = points; left > 0 && units < code.Length; left--)
            units += char.IsSurrogatePair(code, units) ? 2 : 1;
        return units;
    }

    /// <summary>Turns UTF-16 units from the beginning into a number of code points.</summary>
    internal static int FromUnits(string code, int units)
    {
        var points = 0;
        for (var at = 0; at < units; points++)
            at += char.IsSurrogatePair(code, at) ? 2 : 1;
        return points;
    }

    /// <summary>Turns UTF-16 units from the beginning into line and column, both from 0.</summary>
    internal static (int Line, int Column) Place(string code, int units)
    {
        var before = code.AsSpan(0, units);
        return (before.Count('\n'), units - before.LastIndexOf('\n') - 1);
    }
}
