using System.Collections.Immutable;
using System.Text;
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

    /// <summary>A link for the report to every sheet.</summary>
    internal static IReadOnlyList<ReportLink> Links(ImmutableArray<PrintedSheet> sheets) =>
        [.. sheets.Select(sheet => new ReportLink(sheet.Title, $"{Folder}/{sheet.Id}.html", ""))];
}
