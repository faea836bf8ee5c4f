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

/// <summary>The one page that a reader opens: cautions, the picture, findings, figures, tables, defaults, checks.</summary>
internal sealed class ReportPage(
    StudyResults results, ImmutableArray<Figure> figures, ImmutableArray<Table> tables, IReadOnlyList<Verdict> verdicts,
    Handbook handbook, IReadOnlyList<ReportLink> links, string sheets)
{
    private const string HowToRead =
        "Heavy line: the bound, the most that a hand or a loose workpiece could meet on that belt position. Band: as modelled; "
        + "drilling can count on its lower edge only. Dashed: what boost or a vector mode would give back.";

    /// <summary>Writes the page.</summary>
    /// <returns>An HTML document that asks nothing of the network; it ends in LF.</returns>
    public string Write()
    {
        List<ReportPart> parts = [.. Parts()];
        return new StringBuilder()
            .Append(Head())
            .Append(ReportPart.Contents(parts))
            .Append("<main>\n").AppendJoin("", parts.Select(part => part.Html())).Append("</main>\n</div>\n")
            .Append($"<script>{PlotlyScript.Source}</script>\n<script>{UpgradeScript.Source()}</script>\n</body></html>\n")
            .ToString();
    }

    private IEnumerable<ReportPart> Parts()
    {
        yield return new("picture", "What reaches the spindle", $"<p class=\"sw-how\">{HowToRead}</p>\n{FigureHtml.Write(figures[0])}");
        yield return new("findings", "Findings", Findings());
        if (links.Count > 0) yield return new("workbook", "Workbook", Links(links));
        yield return new("sheets", "Sheets for the wall", sheets);
        if (results.Sizing is { } sizing) yield return SizingPart.Of(sizing, [.. figures.Where(SizingPart.Holds)], [.. tables.Where(SizingPart.Holds)]);
        var others = figures.Skip(1).Where(figure => !SizingPart.Holds(figure)).ToList();
        yield return new(
            "figures", "More figures", string.Concat(others.Select(figure => FigureHtml.Write(figure))),
            [.. others.Select(figure => (figure.Id, figure.Title))]);
        var rest = tables.Where(table => !SizingPart.Holds(table)).ToList();
        yield return new(
            "tables", "Tables", string.Concat(rest.Select(table => TableHtml.Write(table))),
            [.. rest.Select(table => (table.Id, table.Title))]);
        yield return new("checks", "Checks against published figures", Checks());
        yield return new("cautions-in-full", "Cautions", string.Concat(Cautions.Sections.Select(CautionHtml.Section)));
        yield return new("sources", "Sources", Sources());
    }

    private string Head()
    {
        var title = Escape(results.Press.Title);
        return $"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <link rel="icon" href="data:,">
            <title>{title}: motor, inverter and spindle</title>
            <style>
            {LookCss.Write(Look.House)}{ReportStyle.Css}</style></head>
            <body>
            <div class="sw-page sw-report">
            <header>
            <h1>{title}</h1>
            {TitleBlock.Html(results.Press)}<p class="sw-lead">What the motor and inverter of this machine give at the spindle, what they do not, and what a hand could meet. {Escape(Cautions.Opening)}</p>
            {Warnings()}<section class="sw-before" aria-labelledby="before-title">
            <h2 id="before-title">{Escape(Cautions.Sections[0].Title)}</h2>
            {CautionHtml.Lines(Cautions.Sections[0])}</section>
            </header>

            """.ReplaceLineEndings("\n");
    }

    private string Warnings() => string.Concat(results.Press.Warnings.Select(warning =>
        $"<p class=\"sw-caution\" role=\"note\"><strong>First:</strong> {Escape(warning)}</p>\n"));

    private string Findings()
    {
        var html = new StringBuilder("<dl class=\"sw-findings\">\n");
        foreach (var finding in results.Findings)
            html.Append($"<div><dt>{Escape(finding.Title)}</dt><dd><p class=\"sw-answer\">{Escape(finding.Answer)}</p>")
                .Append(finding.Detail.Length > 0 ? $"<p>{Escape(finding.Detail)}</p>" : "").Append("</dd></div>\n");
        return html.Append("</dl>\n").ToString();
    }

    internal static string Links(IReadOnlyList<ReportLink> links)
    {
        var html = new StringBuilder("<ul>\n");
        foreach (var link in links)
            html.Append($"<li><a href=\"{Escape(link.Href)}\">{Escape(link.Title)}</a>{(link.Note.Length > 0 ? $": {Escape(link.Note)}" : "")}</li>\n");
        return html.Append("</ul>\n").ToString();
    }

    private string Checks() =>
        $"<p>{Escape(CheckSummary.Sentence(verdicts))}</p>\n{TableHtml.Write(CheckSummary.Table(verdicts))}"
        + $"<details class=\"sw-appendix\"><summary>Every check</summary>\n{TableHtml.Write(CheckSummary.Rows(verdicts))}</details>\n";

    private string Sources()
    {
        var used = figures.SelectMany(figure => figure.Sources).Concat(tables.SelectMany(table => table.Sources))
            .Select(source => source.Key)
            .Concat(results.Press.Defaults.Select(each => each.Source))
            .Where(handbook.References.Contains).Distinct().Order(StringComparer.Ordinal);
        var html = new StringBuilder("<ul>\n");
        foreach (var key in used)
            html.Append(CultureInfo.InvariantCulture, $"<li>{Escape(key)}: {Escape(handbook.References[key].ToString())}</li>\n");
        return html.Append("</ul>\n<p>Words for where a figure comes from: ")
            .Append(Escape(string.Join(", ", Enum.GetValues<Provenance>().Select(each => each.InWords()))))
            .Append(".</p>\n").ToString();
    }
}
