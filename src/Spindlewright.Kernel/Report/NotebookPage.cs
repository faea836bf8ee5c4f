using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Markdig;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Looks;
using Spindlewright.Kernel.Showing;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Studies;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Report;

/// <summary>An executed notebook as a page that asks nothing of the network.</summary>
/// <param name="notebook">The notebook with its outputs.</param>
internal sealed class NotebookPage(Notebook notebook)
{
    private const string Svg = FigureDrawing.Svg;

    // The richest first; what stands further down is for readers that cannot show it.
    private static readonly string[] Richest = [FigureDrawing.Html, Svg, "image/png", "text/markdown", MimeBundle.PlainText];

    private static readonly MarkdownPipeline Markdown = new MarkdownPipelineBuilder().UsePipeTables().Build();

    private readonly StringBuilder html = new();

    /// <summary>The heading of a notebook: its first one, or else its name.</summary>
    internal static string TitleOf(Notebook notebook)
    {
        var heading = notebook.Cells.Where(cell => cell.Kind == CellKind.Markdown)
            .SelectMany(cell => cell.Source.Split('\n')).FirstOrDefault(line => line.StartsWith("# ", StringComparison.Ordinal));
        return heading is null ? Path.GetFileNameWithoutExtension(notebook.Name) : heading[2..].Trim();
    }

    /// <summary>Writes the page.</summary>
    /// <param name="homeHref">Where the report lies; null for none.</param>
    /// <returns>An HTML document; it ends in LF.</returns>
    internal string Write(string? homeHref)
    {
        var title = TitleOf(notebook);
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<link rel=\"icon\" href=\"data:,\">\n")
            .Append($"<title>{Escape(title)}</title>\n<style>\n{LookCss.Write(Look.House)}{ReportStyle.Css}{Css}</style></head>\n<body>\n<main class=\"sw-page\">\n");
        if (homeHref is not null) html.Append($"<p><a href=\"{Escape(homeHref)}\">Report</a></p>\n");
        html.Append($"<aside class=\"sw-caution\" aria-label=\"Cautions\"><p>{Escape(Cautions.Opening)}</p>\n")
            .Append($"<details><summary>Cautions</summary>\n{string.Concat(Cautions.Sections.Select(CautionHtml.Section))}</details></aside>\n");
        foreach (var cell in notebook.Cells) Cell(cell);
        html.Append("</main>\n");
        html.Append($"<script>{PlotlyScript.Source}</script>\n<script>{UpgradeScript.Source()}</script>\n</body></html>\n");
        return html.ToString();
    }

    private void Cell(Cell cell)
    {
        switch (cell.Kind)
        {
            case CellKind.Markdown:
                html.Append($"<section class=\"sw-prose\">\n{Markdig.Markdown.ToHtml(cell.Source, Markdown)}</section>\n");
                break;
            case CellKind.Code:
                Code(cell);
                foreach (var output in cell.Outputs) Output(output!.AsObject());
                break;
            default:
                html.Append($"<pre class=\"sw-raw\">{Escape(cell.Source)}</pre>\n");
                break;
        }
    }

    /// <summary>A cell tagged as an answer is folded away, so that a learner can try first.</summary>
    private void Code(Cell cell)
    {
        var number = cell.ExecutionCount is { } count ? count.ToString(CultureInfo.InvariantCulture) : " ";
        var code = $"<pre class=\"sw-code\" tabindex=\"0\" aria-label=\"Cell {number}\"><code>{Escape(cell.Source)}</code></pre>\n";
        html.Append(cell.Tags.Contains("hide-input") ? $"<details><summary>Code of this cell</summary>\n{code}</details>\n" : code);
    }

    private void Output(JsonObject output)
    {
        switch (output["output_type"]!.GetValue<string>())
        {
            case "stream":
                html.Append($"<pre class=\"sw-output\">{Escape(MultilineText.Join(output["text"]))}</pre>\n");
                break;
            case "error":
                var traceback = string.Join('\n', output["traceback"]!.AsArray().Select(line => line!.GetValue<string>()));
                html.Append($"<pre class=\"sw-output sw-error\">{Escape(traceback)}</pre>\n");
                break;
            default:
                Bundle(output["data"]!.AsObject());
                break;
        }
    }

    private void Bundle(JsonObject data)
    {
        if (Richest.FirstOrDefault(data.ContainsKey) is not { } type) return;
        var text = MultilineText.Join(data[type]);
        html.Append(type switch
        {
            FigureDrawing.Html => $"<div class=\"sw-shown\">{text}</div>\n",
            Svg => $"<div class=\"sw-still\">{text}</div>\n",
            "image/png" => $"<p><img alt=\"\" src=\"data:image/png;base64,{Escape(text.Trim())}\"></p>\n",
            "text/markdown" => $"<section class=\"sw-prose\">\n{Markdig.Markdown.ToHtml(text, Markdown)}</section>\n",
            _ => $"<pre class=\"sw-output\">{Escape(text)}</pre>\n",
        });
    }

    private const string Css = """
        .sw-prose{max-width:46rem}
        .sw-prose table{border-collapse:collapse}
        .sw-prose th,.sw-prose td{text-align:left;padding:.2rem .8rem .2rem 0;border-bottom:.4pt solid var(--sw-hairline)}
        .sw-prose code{font-family:var(--sw-mono);font-size:.92em}
        .sw-code,.sw-output,.sw-raw{font:.82em/1.45 var(--sw-mono);overflow-x:auto;padding:.6rem .8rem;margin:.9rem 0 .4rem}
        .sw-code{background:var(--sw-tint);border-left:.2rem solid var(--sw-hairline)}
        .sw-output{margin:.2rem 0 .9rem;white-space:pre-wrap}
        .sw-error{border-left:.28rem solid var(--sw-ink)}
        .sw-page details>summary{cursor:pointer}

        """;
}
