using System.Text;
using System.Text.Json;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Kernel.Jupyter.Spec;

/// <summary>The script that a notebook page loads from the kernel's folder: the look, and charts in place of drawings.</summary>
internal static class PageScript
{
    /// <summary>Says in the page whether its ground is dark; the script keeps it.</summary>
    private const string DarkGround = ":root[data-sw-ground=dark]";

    /// <summary>Writes the script.</summary>
    internal static string Write() => Read("kernel.js")
        .Replace("/*CSS*/\"\"", JsonSerializer.Serialize(LookCss.Write(Look.House, DarkGround) + Read("kernel.css")), StringComparison.Ordinal)
        .Replace("/*UPGRADE*/", UpgradeScript.Source(), StringComparison.Ordinal);

    private static string Read(string name)
    {
        using var stream = typeof(PageScript).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
