using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using static Spindlewright.Figures.Html.Markup;
using P = global::Plotly.NET;

namespace Spindlewright.Figures.Html;

/// <summary>Writes a reader's own chart of Plotly.NET as a fragment that draws offline.</summary>
/// <remarks>
/// Plotly.NET's own pages ask a network for plotly.js, take random ids and write NaN as a word; this does none of that.
/// <see cref="UpgradeScript"/> draws it;
/// the chart keeps its own look and has no still form.
/// </remarks>
public static class ChartHtml
{
    private static readonly string[] NoNumbers = ["NaN", "Infinity", "-Infinity"];

    /// <summary>Writes the fragment.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="id">Its id in the page: lower-case words joined by hyphens.</param>
    /// <returns>A <c>figure</c> element; it ends in LF.</returns>
    /// <exception cref="PartException">No such id.</exception>
    public static string Write(P.GenericChart chart, string id)
    {
        Check.Id(id, "chart");
        var json = JsonNode.Parse(P.GenericChart.toJson(chart))!;
        foreach (var trace in json["data"]!.AsArray())
            Gap(trace);
        return $"<figure class=\"sw-figure\" id=\"{id}\" data-sw-figure=\"{id}\" data-sw-own>\n"
            + "<div class=\"sw-still sw-wide\"><p>This chart is drawn where the page holds plotly.js.</p></div>\n"
            + FigureHtml.Block(json.ToJsonString()) + "</figure>\n";
    }

    /// <summary>Turns words for what is no number into gaps, inside arrays only: a name may well be "NaN".</summary>
    private static void Gap(JsonNode? node)
    {
        if (node is JsonObject bag)
            foreach (var (_, value) in bag)
                Gap(value);
        if (node is not JsonArray array)
            return;
        var hasNumbers = array.Any(v => v is JsonValue number && number.TryGetValue<double>(out _));
        for (var i = 0; i < array.Count; i++)
            if (hasNumbers && array[i] is JsonValue value && value.TryGetValue<string>(out var word)
                && NoNumbers.Contains(word))
                array[i] = null;
            else
                Gap(array[i]);
    }
}
