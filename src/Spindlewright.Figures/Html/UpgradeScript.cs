using System.Text;
using System.Text.Json;
using Spindlewright.Figures.Looks;

namespace Spindlewright.Figures.Html;

/// <summary>The small script that puts interactive charts in the place of drawings.</summary>
public static class UpgradeScript
{
    private static readonly Lazy<string> Template = new(Read);

    /// <summary>The script, to stand at the end of a page after plotly.js.</summary>
    /// <param name="look">The look whose shades it changes on a dark screen; the house's unless given.</param>
    /// <returns>JavaScript without addresses; <c>spindlewrightUpgrade(element)</c> runs it again.</returns>
    public static string Source(Look? look = null)
    {
        var shades = (look ?? Look.House).Shades.All.ToDictionary(s => s.Light, s => s.Dark);
        return Template.Value.Replace("/*DARK*/{}", JsonSerializer.Serialize(shades), StringComparison.Ordinal);
    }

    private static string Read()
    {
        using var stream = typeof(UpgradeScript).Assembly.GetManifestResourceStream("upgrade.js")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
