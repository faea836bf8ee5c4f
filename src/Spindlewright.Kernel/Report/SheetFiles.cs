using System.Collections.Immutable;
using System.Text;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Sheets;

namespace Spindlewright.Kernel.Report;

/// <summary>The files of the sheets for the wall.</summary>
internal static class SheetFiles
{
    /// <summary>The folder that they lie in, below the report.</summary>
    internal const string Folder = "sheets";

    /// <summary>Drawing and page of every sheet.</summary>
    internal static IEnumerable<ReportFile> Of(ImmutableArray<PrintedSheet> sheets) => sheets.SelectMany(sheet => (ReportFile[])
    [
        new($"{Folder}/{sheet.Id}.svg", Encoding.UTF8.GetBytes(sheet.Svg)),
        new($"{Folder}/{sheet.Id}.html", Encoding.UTF8.GetBytes(sheet.Html())),
    ]);

    /// <summary>The section of the report: a link to every sheet, and why one is left out.</summary>
    internal static string Section(ImmutableArray<PrintedSheet> sheets, IReadOnlyList<string> leftOut) =>
        "<p>Print them on A4 at 100 %. The command <code>sheets</code> also prints them to PDF where a Chromium is present.</p>\n"
        + ReportPage.Links([.. sheets.Select(sheet => new ReportLink(sheet.Title, $"{Folder}/{sheet.Id}.html", ""))])
        + string.Concat(leftOut.Select(reason => $"<p>Left out: {Markup.Escape(reason)}</p>\n"));
}
