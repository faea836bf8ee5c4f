using System.Reflection;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>What stands ready in every session: the library's assemblies and its namespaces.</summary>
/// <remarks>
/// The plotting package's namespaces are never imported: it owns names, such as Chart and Figure, that notebooks use
/// in their own sense.
/// </remarks>
internal static class Preamble
{
    private static readonly Assembly[] Own =
    [
        typeof(Foundations.Guard).Assembly,
        Assembly.Load("Spindlewright.Figures"),
    ];

    /// <summary>The assemblies that code can use without naming them.</summary>
    internal static IReadOnlyList<Assembly> Assemblies { get; } =
    [
        .. Own, typeof(Preamble).Assembly, typeof(UnitsNet.Power).Assembly,
        // For a reader's own charts, by their full names: Plotly.NET.Trace2D, Plotly.NET.GenericChart.
        Assembly.Load("Plotly.NET"), Assembly.Load("FSharp.Core"), Assembly.Load("DynamicObj"),
    ];

    /// <summary>The first submission of every session.</summary>
    internal static string Code { get; } = string.Join('\n', Lines());

    private static IEnumerable<string> Lines()
    {
        string[] general = ["System.Collections.Immutable", "System.Globalization", "System.IO", "System.Threading", "UnitsNet", "UnitsNet.Units"];
        var own = Own.SelectMany(assembly => assembly.GetExportedTypes()).Select(type => type.Namespace!)
            .Where(name => name.StartsWith("Spindlewright", StringComparison.Ordinal));
        return general.Concat(own).Distinct().Order(StringComparer.Ordinal)
            .Select(name => $"using {name};")
            .Append($"using static {typeof(CellOutput).FullName};")
            .Append($"using static {typeof(Showing.Workbook).FullName};")
            // The compiler's own start, a second and more, falls into this statement: a cell's time limit is the cell's.
            .Append("Console.Write(\"\");");
    }
}
