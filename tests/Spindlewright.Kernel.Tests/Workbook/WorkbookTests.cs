using System.Text;
using System.Text.RegularExpressions;
using Spindlewright.Figures.Interactive;
using Spindlewright.Kernel.Tests.Commands;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Workbook;

public sealed class WorkbookTests(WorkbookRuns runs) : IClassFixture<WorkbookRuns>
{
    private static readonly bool IsWriting = Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 };

    private IEnumerable<NotebookResult> Own => runs.Backwards.Take(WorkbookRuns.Workbook.Count);

    [Fact]
    public void Every_notebook_of_the_workbook_runs_to_its_end_on_the_demo_machine()
    {
        Assert.True(WorkbookRuns.Workbook.Count >= 2, "the workbook has two notebooks or more");
        Assert.All(Own, result => Assert.Null(result.Fault));
        Assert.All(Own, result => Assert.Contains("Boatyard fittings bench", Encoding.UTF8.GetString(result.Executed!.ToBytes()), StringComparison.Ordinal));
    }

    [Fact]
    public void Stored_outputs_are_what_running_the_notebook_gives()
    {
        foreach (var result in Own)
        {
            var current = StoredNotebook.Of(result.Executed!);
            if (IsWriting) AtomicFile.Write(result.Job.Source, current.ToBytes());
            var stored = NotebookReader.ReadFile(result.Job.Source);
            Assert.True(stored.Cells.Any(cell => cell.Outputs.Count > 0),
                $"{result.Name} is stored without outputs: run the tests with SPINDLEWRIGHT_WRITE_DOCS=1");
            Assert.Empty(StoredNotebook.Differences(stored, current));
        }
    }

    [Fact]
    public void Pages_of_the_workbook_approve_nothing_and_keep_the_bound()
    {
        var pages = Directory.GetFiles(Path.Combine(runs.Output, "notebooks"), "*.html");
        Assert.True(pages.Length >= WorkbookRuns.Workbook.Count, $"{pages.Length} pages");
        var held = pages.Sum(page => ReadersWords.HoldOnPage(Path.GetFileName(page), File.ReadAllText(page)));
        Assert.True(held >= 50, $"{held} pieces with a modelled torque");
    }

    [Fact]
    public void Stored_notebooks_are_written_as_we_write_them_and_name_their_kernel()
    {
        foreach (var source in WorkbookRuns.Workbook)
        {
            var stored = NotebookReader.ReadFile(source);
            Assert.Equal(stored.ToBytes(), File.ReadAllBytes(source));
            Assert.Equal("spindlewright", stored.Metadata["kernelspec"]!["name"]!.GetValue<string>());
            Assert.DoesNotContain("text/html", Encoding.UTF8.GetString(stored.ToBytes()), StringComparison.Ordinal);
            AssertNamesNobody(Encoding.UTF8.GetString(stored.ToBytes()));
        }
    }

    [Fact]
    public void Backwards_in_one_child_and_fresh_under_another_locale_give_the_same_bytes()
    {
        foreach (var backwards in runs.Backwards)
            Assert.Equal(
                Encoding.UTF8.GetString(backwards.Executed!.ToBytes()), File.ReadAllText(Path.Combine(runs.Output, "notebooks", backwards.Name)));
        Assert.Equal("1.5 none", MultilineText.Join(runs.Backwards[^2].Executed!.Cells[5].Outputs[0]!["text"]));
        Assert.Equal(1, runs.Program.ExitCode);
        Assert.Contains("b.ipynb: [3], cell 3 (id \"c3\"), line 1: DivideByZeroException", runs.Program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Notebooks_and_pages_name_no_path_host_or_user()
    {
        var files = Directory.GetFiles(Path.Combine(runs.Output, "notebooks"));
        Assert.Equal(2 * runs.Backwards.Count, files.Length);
        foreach (var file in files)
        {
            // The script of the interactive charts is the same everywhere and holds every short word there is.
            var text = File.ReadAllText(file).Replace(PlotlyScript.Source, "", StringComparison.Ordinal);
            AssertNamesNobody(text);
            Assert.DoesNotContain(runs.Output, text, StringComparison.Ordinal);
            Assert.DoesNotContain(WorkbookRuns.OwnWords, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_figure_of_a_page_stands_there_as_drawing_data_and_words()
    {
        foreach (var result in Own)
        {
            var page = File.ReadAllText(Path.Combine(runs.Output, "notebooks", Path.ChangeExtension(result.Name, ".html")));
            var figures = result.Executed!.Cells.SelectMany(cell => cell.Outputs).Count(output => output!["data"]?["image/svg+xml"] is not null);
            Assert.True(figures > 0, $"{result.Name} shows a figure");
            Assert.Equal(figures, page.Split("<figure ").Length - 1);
            Assert.Equal(figures, page.Split("<div class=\"sw-still sw-wide\"><svg ").Length - 1);
        }
    }

    private static void AssertNamesNobody(string text)
    {
        Assert.DoesNotContain(Repository.Root, text, StringComparison.Ordinal);
        Assert.DoesNotContain(Path.GetTempPath(), text, StringComparison.Ordinal);
        // A host may bear a name that is a word of the notebooks, such as "bench".
        var host = $@"\b{Regex.Escape(Environment.MachineName)}\b";
        if (!WorkbookRuns.Workbook.Any(source => Regex.IsMatch(File.ReadAllText(source), host)))
            Assert.DoesNotMatch(host, text);
    }
}
