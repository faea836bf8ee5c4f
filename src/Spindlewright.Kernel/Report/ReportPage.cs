using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Spindlewright.Checks;
using Spindlewright.Figures;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Looks;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Showing;
using Spindlewright.Studies;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Report;

/// <summary>A page beside the report, such as an executed notebook.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Href">Where it lies, relative to the report.</param>
/// <param name="Note">What became of it; may be empty.</param>
internal sealed record ReportLink(string Title, string Href, string Note);

/// <summary>The one page that a reader opens: warnings, findings, figures, tables, defaults, checks, cautions.</summary>
internal sealed class ReportPage(
    StudyResults results, ImmutableArray<Figure> figures, ImmutableArray<Table> tables, IReadOnlyList<Verdict> verdicts,
    Handbook handbook, IReadOnlyList<ReportLink> links)
{
    private readonly StringBuilder html = new();

    /// <summary>Writes the page.</summary>
    /// <returns>An HTML document that asks nothing of the network; it ends in LF.</returns>
    public string Write()
    {
        Head();
        Warnings();
        Section("Before you read on", "cautions", () => html.Append(CautionHtml.Lines(Cautions.Sections[0])));
        Findings();
        Links();
        Section("Figures", "figures", () => { foreach (var figure in figures) html.Append(FigureHtml.Write(figure)); });
        Section("Tables", "tables", () => { foreach (var table in tables) html.Append(TableHtml.Write(table)); });
        Checks();
        Section("Cautions", "cautions-in-full", () =>
        {
            foreach (var section in Cautions.Sections) html.Append(CautionHtml.Section(section));
        });
        Sources();
        html.Append("</main>\n");
        html.Append($"<script>{PlotlyScript.Source}</script>\n<script>{UpgradeScript.Source()}</script>\n</body></html>\n");
        return html.ToString();
    }

    private void Head()
    {
        var title = results.Press.Title;
        html.Append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<link rel=\"icon\" href=\"data:,\">\n")
            .Append($"<title>{Escape(title)}: motor, inverter and spindle</title>\n")
            .Append($"<style>\n{LookCss.Write(Look.House)}{ReportStyle.Css}</style></head>\n<body>\n<main class=\"sw-page\">\n")
            .Append($"<h1>{Escape(title)}</h1>\n<p class=\"sw-lead\">What the motor and inverter of this machine give at the spindle, what they do not, and what a hand could meet. {Escape(Cautions.Opening)}</p>\n");
    }

    private void Warnings()
    {
        foreach (var warning in results.Press.Warnings)
            html.Append($"<p class=\"sw-caution\" role=\"note\"><strong>First:</strong> {Escape(warning)}</p>\n");
    }

    private void Findings() => Section("Findings", "findings", () =>
    {
        html.Append("<dl class=\"sw-findings\">\n");
        foreach (var finding in results.Findings)
            html.Append($"<dt>{Escape(finding.Title)}</dt><dd>{Escape(finding.Text)}</dd>\n");
        html.Append("</dl>\n");
    });

    private void Links()
    {
        if (links.Count == 0) return;
        Section("Workbook", "workbook", () =>
        {
            html.Append("<ul>\n");
            foreach (var link in links)
                html.Append($"<li><a href=\"{Escape(link.Href)}\">{Escape(link.Title)}</a>{(link.Note.Length > 0 ? $": {Escape(link.Note)}" : "")}</li>\n");
            html.Append("</ul>\n");
        });
    }

    private void Checks() => Section("Checks against published figures", "checks", () =>
    {
        html.Append($"<p>{Escape(CheckSummary.Sentence(verdicts))}</p>\n");
        html.Append(TableHtml.Write(CheckSummary.Table(verdicts)));
        html.Append("<details><summary>Every check</summary>\n").Append(TableHtml.Write(CheckSummary.Rows(verdicts))).Append("</details>\n");
    });

    private void Sources() => Section("Sources", "sources", () =>
    {
        var used = figures.SelectMany(figure => figure.Sources).Concat(tables.SelectMany(table => table.Sources))
            .Select(source => source.Key)
            .Concat(results.Press.Defaults.Select(each => each.Source))
            .Where(handbook.References.Contains).Distinct().Order(StringComparer.Ordinal);
        html.Append("<ul>\n");
        foreach (var key in used)
            html.Append(CultureInfo.InvariantCulture, $"<li>{Escape(key)}: {Escape(handbook.References[key].ToString())}</li>\n");
        html.Append("</ul>\n<p>Words for where a figure comes from: ")
            .Append(Escape(string.Join(", ", Enum.GetValues<Provenance>().Select(each => each.InWords()))))
            .Append(".</p>\n");
    });

    private void Section(string title, string id, Action body)
    {
        html.Append($"<section id=\"{id}\" aria-labelledby=\"{id}-title\">\n<h2 id=\"{id}-title\">{Escape(title)}</h2>\n");
        body();
        html.Append("</section>\n");
    }
}
