using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>What a reader sees: no word that approves, and no modelled torque without its bound. Pages of the workbook are held by its own tests.</summary>
public sealed class WordingTests : IClassFixture<WordingTests.OneRun>
{
    private readonly OneRun run;

    public WordingTests(OneRun run) => this.run = run;

    public static TheoryData<string> Pages =>
    [
        "README.md", "docs/results.schema.json", .. Docs,
        .. Directory.EnumerateFiles(Repository.File("notebooks"), "*.ipynb").Select(file => $"notebooks/{Path.GetFileName(file)}"),
        .. DemoMachines.Names.Select(name => $"data/machines/{name}.toml"),
    ];

    private static IEnumerable<string> Docs =>
        Directory.EnumerateFiles(Repository.File("docs"), "*.md").Order(StringComparer.Ordinal).Select(file => $"docs/{Path.GetFileName(file)}");

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_of_ours_approves_nothing(string page) => ReadersWords.ApproveNothing(page, File.ReadAllText(Repository.File(page)));

    [Fact]
    public void Console_report_results_template_and_sheets_approve_nothing()
    {
        ReadersWords.ApproveNothing("console", run.Console);
        ReadersWords.ApproveNothing("report", run.Report);
        ReadersWords.ApproveNothing("results", run.Results);
        ReadersWords.ApproveNothing("template", run.Template);
        Assert.NotEmpty(run.Sheets);
        foreach (var (name, text) in run.Sheets) ReadersWords.ApproveNothing(name, text);
    }

    [Theory]
    [InlineData("This setting is safe.", true)]
    [InlineData("Everything OK", true)]
    [InlineData("Contact is harmless here.", true)]
    [InlineData("See docs/safety.md; safeguards; okra", false)]
    [InlineData(ReadersWords.Allowed, false)]
    public void The_scan_finds_what_it_looks_for(string text, bool found) => Assert.Equal(found, ReadersWords.Approving(text).Any());

    [Theory]
    [InlineData("<p>As modelled it gives 9.2 N·m.</p>")]
    [InlineData("<li>Overpowered with 10 N·m at 40 r/min.</li>")]
    [InlineData("<table><thead><tr><th>as modelled</th></tr></thead></table>")]
    [InlineData("<pre class=\"sw-output\">9 N·m as modelled\nthe bound stands on another line</pre>")]
    public void The_scan_finds_a_modelled_torque_without_its_bound(string page) =>
        Assert.Throws<Xunit.Sdk.FailException>(() => ReadersWords.HoldOnPage("a page", page));

    [Fact]
    public void Every_sentence_with_a_modelled_torque_has_the_bound_beside_it()
    {
        var findings = JsonNode.Parse(run.Results)!["findings"]!.AsArray().Select(finding => finding!["text"]!.GetValue<string>());
        var held = ReadersWords.KeepTheBound("findings and console", findings.Concat(run.Console.Split('\n')));
        Assert.True(held >= 4, "the findings hold no modelled torque any more: this test looks at nothing");
    }

    [Fact]
    public void Every_table_and_paragraph_of_the_report_with_a_modelled_torque_or_an_overpowering_speed_has_the_bound() =>
        Assert.True(ReadersWords.HoldOnPage("report", run.Report) >= 10, "the report has no modelled torques any more: this test looks at nothing");

    /// <summary>Every sheet that gives a torque of the machine names the bound.</summary>
    [Fact]
    public void A_sheet_with_torques_has_the_bound()
    {
        var withTorque = run.Sheets.Where(sheet => sheet.Text.Contains("N·m", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(withTorque);
        Assert.All(withTorque, sheet => Assert.Contains("bound", sheet.Text, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Lines of the documents that give a number; validation.md, which lists checks against books, excepted.</summary>
    [Fact]
    public void Documents_give_no_modelled_torque_without_the_bound_beside_it()
    {
        foreach (var page in Docs.Append("README.md").Where(page => page != "docs/validation.md"))
            ReadersWords.KeepTheBound(page, Regex.Split(File.ReadAllText(Repository.File(page)), "\n\n|\n(?=- |\\|)").Where(piece => Regex.IsMatch(piece, @"\d\s*N·m")));
    }

    [Fact]
    public void Cells_print_no_modelled_torque_without_the_bound_in_the_same_line()
    {
        var held = 0;
        foreach (var file in Directory.EnumerateFiles(Repository.File("notebooks"), "*.ipynb"))
            foreach (var output in NotebookReader.ReadFile(file).Cells.SelectMany(cell => cell.Outputs))
                held += output!["output_type"]!.GetValue<string>() == "stream"
                    ? ReadersWords.KeepTheBound(file, MultilineText.Join(output["text"]).Split('\n'))
                    : ReadersWords.KeepTheBound(file, [HeadOf(output["data"]?["text/plain"] is { } shown ? MultilineText.Join(shown) : "")]);
        Assert.True(held >= 20, "the notebooks print no modelled torques any more: this test looks at nothing");
    }

    /// <summary>Title and head of a table; a figure's words as they are.</summary>
    private static string HeadOf(string shown) => shown.IndexOf("\n---", StringComparison.Ordinal) is var rule and >= 0 ? shown[..rule] : shown;

    /// <summary>One run of the program without the workbook, and one of the sheets, for all tests of this class.</summary>
    public sealed class OneRun : IDisposable
    {
        private readonly TemporaryFolder folder = new();

        public OneRun()
        {
            var output = Path.Combine(folder.Path, "out");
            Console = Program.Study("--out", output).Output;
            Report = Regex.Replace(File.ReadAllText(Path.Combine(output, "index.html")), "<(script|style)[^>]*>.*?</\\1>", "", RegexOptions.Singleline);
            Results = File.ReadAllText(Path.Combine(output, "results.json"));
            Program.Run("new", Path.Combine(folder.Path, "new.toml"));
            Template = File.ReadAllText(Path.Combine(folder.Path, "new.toml"));
            Sheets =
            [
                .. Directory.EnumerateFiles(Path.Combine(output, "sheets"), "*.svg", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
                    .Select(file => (Path.GetFileName(file), File.ReadAllText(file))),
            ];
        }

        public string Console { get; }

        public string Report { get; }

        public string Results { get; }

        public string Template { get; }

        public IReadOnlyList<(string Name, string Text)> Sheets { get; }

        public void Dispose() => folder.Dispose();
    }
}
