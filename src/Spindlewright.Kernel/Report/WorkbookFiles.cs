using System.Collections.Immutable;
using System.Text;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Report;

/// <summary>Which notebooks the workbook has, and the pages that are made of them.</summary>
internal static class WorkbookFiles
{
    internal const string Folder = "notebooks";

    /// <summary>The notebooks of a folder, in reading order: they are numbered.</summary>
    internal static ImmutableArray<string> In(string contentRoot)
    {
        var folder = Path.Combine(contentRoot, Folder);
        return Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder, "*.ipynb").Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>Where an executed notebook is written.</summary>
    internal static string Target(string outputFolder, string source) =>
        Path.Combine(outputFolder, Folder, Path.GetFileName(source));

    /// <summary>The pages of the notebooks that ran, and what the report says of each.</summary>
    internal static (ImmutableArray<ReportFile> Pages, ImmutableArray<ReportLink> Links) Of(IReadOnlyList<NotebookResult> results)
    {
        var pages = ImmutableArray.CreateBuilder<ReportFile>();
        var links = ImmutableArray.CreateBuilder<ReportLink>();
        foreach (var result in results.Where(result => result.Executed is not null))
        {
            var name = $"{Folder}/{Path.GetFileNameWithoutExtension(result.Name)}.html";
            pages.Add(new(name, Encoding.UTF8.GetBytes(new NotebookPage(result.Executed!).Write("../index.html"))));
            var note = result.Fault is { } fault ? $"stopped: {fault}" : "";
            links.Add(new(NotebookPage.TitleOf(result.Executed!), name, note));
        }
        return (pages.ToImmutable(), links.ToImmutable());
    }
}
