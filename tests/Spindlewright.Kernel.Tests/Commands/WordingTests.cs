using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>What a reader sees: no word that approves, and no modelled torque without its bound.</summary>
public sealed partial class WordingTests : IClassFixture<WordingTests.OneRun>
{
    private static readonly string[] Forbidden =
    [
        "safe", "safely", "harmless", "acceptable", "OK", "okay", "low risk", "can be stopped by hand", "the glove will tear",
    ];

    /// <summary>The one sentence that may hold one of them.</summary>
    private const string Allowed = "Not exceeding a published figure does not show that contact is harmless.";

    private readonly OneRun run;

    public WordingTests(OneRun run) => this.run = run;

    public static TheoryData<string> Pages =>
    [
        "README.md", "docs/machine-file.md", "docs/units.md", "docs/validation.md", "docs/safety.md", "docs/results.schema.json",
        .. Directory.EnumerateFiles(Repository.File("notebooks"), "*.ipynb").Select(file => $"notebooks/{Path.GetFileName(file)}"),
        .. DemoMachines.Names.Select(name => $"data/machines/{name}.toml"),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_of_ours_approves_nothing(string page) => ApprovesNothing(page, File.ReadAllText(Repository.File(page)));

    [Fact]
    public void Console_report_results_and_template_approve_nothing()
    {
        ApprovesNothing("console", run.Console);
        ApprovesNothing("report", run.Report);
        ApprovesNothing("results", run.Results);
        ApprovesNothing("template", run.Template);
    }

    [Theory]
    [InlineData("This setting is safe.", true)]
    [InlineData("Everything OK", true)]
    [InlineData("Contact is harmless here.", true)]
    [InlineData("See docs/safety.md; safeguards; okra", false)]
    [InlineData(Allowed, false)]
    public void The_scan_finds_what_it_looks_for(string text, bool found) => Assert.Equal(found, Approving(text).Any());

    [Fact]
    public void Every_sentence_with_a_modelled_torque_has_the_bound_beside_it()
    {
        var sentences = JsonNode.Parse(run.Results)!["findings"]!.AsArray().Select(finding => finding!["text"]!.GetValue<string>())
            .Concat(run.Console.Split('\n')).ToList();
        var modelled = sentences.Where(line => line.Contains("N·m", StringComparison.Ordinal) && Modelled().IsMatch(line)).ToList();
        Assert.True(modelled.Count >= 4, "the findings hold no modelled torque any more: this test looks at nothing");
        Assert.All(modelled, line => Assert.Contains("bound", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_table_with_a_modelled_torque_or_an_overpowering_speed_has_a_column_for_the_bound()
    {
        var heads = TableHead().Matches(run.Report).Select(match => match.Value).ToList();
        var modelled = heads.Where(head => Modelled().IsMatch(head)).ToList();
        Assert.True(modelled.Count >= 2, "the report has no table of modelled torques any more: this test looks at nothing");
        Assert.All(modelled, head => Assert.Contains("bound", head, StringComparison.Ordinal));
    }

    [Fact]
    public void Cells_print_no_modelled_torque_without_the_bound_in_the_same_line()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.File("notebooks"), "*.ipynb"))
        {
            var lines = NotebookReader.ReadFile(file).Cells.SelectMany(cell => cell.Outputs)
                .Where(output => output!["output_type"]!.GetValue<string>() == "stream")
                .SelectMany(output => MultilineText.Join(output!["text"]).Split('\n'))
                .Where(line => line.Contains("N·m", StringComparison.Ordinal) && Modelled().IsMatch(line));
            Assert.All(lines, line => Assert.Contains("bound", line, StringComparison.Ordinal));
        }
    }

    private static void ApprovesNothing(string where, string text)
    {
        var found = Approving(text).ToList();
        if (found.Count > 0) Assert.Fail($"{where}: {string.Join("; ", found)}");
    }

    private static IEnumerable<string> Approving(string text)
    {
        var rest = text.Replace(Allowed, "", StringComparison.Ordinal);
        return Forbidden.SelectMany(words => Regex.Matches(rest, $@"(?<![\w-]){Regex.Escape(words)}(?![\w-])", words == "OK" ? RegexOptions.None : RegexOptions.IgnoreCase))
            .Select(match => rest[Math.Max(0, match.Index - 40)..Math.Min(rest.Length, match.Index + 40)].ReplaceLineEndings(" "));
    }

    [GeneratedRegex("modelled|ideal boost|overpowered|would reach|short time|short-time|locked-rotor torque|pull-out torque", RegexOptions.IgnoreCase)]
    private static partial Regex Modelled();

    [GeneratedRegex("<thead>.*?</thead>", RegexOptions.Singleline)]
    private static partial Regex TableHead();

    /// <summary>One run of the program without the workbook, for all tests of this class.</summary>
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
        }

        public string Console { get; }

        public string Report { get; }

        public string Results { get; }

        public string Template { get; }

        public void Dispose() => folder.Dispose();
    }
}
