using System.Reflection;
using System.Text;

namespace Spindlewright.Figures.Interactive;

/// <summary>plotly.js as the Plotly.NET package carries it: nothing is drawn from a network.</summary>
public static class PlotlyScript
{
    private static readonly Lazy<string> Script = new(
        () => Read(name => name.EndsWith(".min.js", StringComparison.Ordinal)));
    private static readonly Lazy<string> Terms = new(
        () => Read(name => name.EndsWith(".LICENSE.txt", StringComparison.Ordinal)));

    /// <summary>The minified script, some 3.6 MB.</summary>
    public static string Source => Script.Value;

    /// <summary>Its licence; ships wherever the script ships.</summary>
    public static string Licence => Terms.Value;

    private static string Read(Func<string, bool> named)
    {
        var assembly = typeof(global::Plotly.NET.GenericChart).Assembly;
        var name = assembly.GetManifestResourceNames().Single(
            n => n.Contains(".plotly-", StringComparison.Ordinal) && named(n));
        using var stream = assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
