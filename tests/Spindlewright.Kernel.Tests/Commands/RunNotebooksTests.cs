using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>One run of named notebooks, some of them unreadable, with values for parameters and another machine.</summary>
public sealed class NamedRun : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public NamedRun()
    {
        Ended = Program.Run(
            "run", folder.File("bad.ipynb", "motor"), folder.File("three.ipynb", "{\"nbformat\": 3, \"worksheets\": []}"),
            folder.File("set.ipynb", NotebookText.Of(
                "#tag parameters\ndouble boost = 1;\nvar power = Power.FromKilowatts(0.75);\nvar name = \"a\";",
                "Console.Write($\"{boost} {power.Kilowatts} {name}\");")),
            folder.File("machine.ipynb", NotebookText.Of(
                "#tag parameters\nint poles = 4;", "Console.Write($\"{poles} {ThisMachine(Handbook.FromEmbedded()).Title}\");")),
            "--set", "boost=2.5", "--set", "power=1.1 kW", "--set", "name=\"b\\c", "--set", "poles=6",
            "--machine", folder.File("mine.toml", DemoMachines.Text("school-workshop")), "--out", Output);
    }

    internal Ended Ended { get; }

    internal string Output => Path.Combine(folder.Path, "some", "where");

    internal string Written(string name, int cell) => MultilineText.Join(
        NotebookReader.ReadFile(Path.Combine(Output, "notebooks", name)).Cells[cell - 1].Outputs[0]!["text"]);

    public void Dispose() => folder.Dispose();
}

public sealed class RunNotebooksTests(NamedRun run) : IClassFixture<NamedRun>
{
    [Fact]
    public void Values_of_every_kind_reach_the_notebooks_that_declare_them() =>
        Assert.Equal("2.5 1.1 \"b\\c", run.Written("set.ipynb", 2));

    [Fact]
    public void The_machine_of_the_run_reaches_the_cells() =>
        Assert.Equal("6 School workshop", run.Written("machine.ipynb", 2)[.."6 School workshop".Length]);

    [Fact]
    public void Unreadable_notebooks_are_told_and_the_others_run()
    {
        Assert.Equal(2, run.Ended.ExitCode);
        Assert.Matches(@"bad\.ipynb: line 1, byte \d+: is not JSON", run.Ended.Errors);
        Assert.Contains("three.ipynb: field \"nbformat\": is 3; accepted: 4", run.Ended.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Ended.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_lies_in_the_output_folder_with_a_page_for_each_notebook_that_ran() =>
        Assert.Equal(
            ["machine.toml", "notebooks/machine.html", "notebooks/machine.ipynb", "notebooks/set.html", "notebooks/set.ipynb"],
            Directory.EnumerateFiles(run.Output, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(run.Output, file)).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("bost=2", "there is no parameter \"bost\"", "boost (a number such as 1.5), power (Power with its unit)")]
    [InlineData("boost=2,5", "boost", "write the decimal mark as a point, 2.5")]
    [InlineData("power=1.1 mm", "power", "accepted:")]
    [InlineData("power=1.1", "power", "accepted:")]
    [InlineData("boost", "\"boost\" sets nothing", "NAME=VALUE")]
    public void A_value_that_fits_nothing_is_refused_before_anything_runs(string set, string what, string accepted)
    {
        using var folder = new TemporaryFolder();
        var notebook = folder.File("a.ipynb", NotebookText.Of(
            "#tag parameters\ndouble boost = 1;\nvar power = Power.FromKilowatts(0.75);"));
        var output = Path.Combine(folder.Path, "out");
        var ended = Program.Run("run", notebook, "--set", set, "--out", output);
        Assert.Equal(2, ended.ExitCode);
        Assert.Contains(what, ended.Errors, StringComparison.Ordinal);
        Assert.Contains(accepted, ended.Errors, StringComparison.Ordinal);
        Assert.Equal("", ended.Output);
        Assert.False(Directory.Exists(output));
    }

    [Fact]
    public void The_whole_workbook_of_a_content_folder_is_linked_in_the_report_with_what_became_of_it()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "notebooks"));
        folder.File("notebooks/1-belts.ipynb", NotebookText.Of("1 + 1"));
        folder.File("notebooks/2-hands.ipynb", NotebookText.Of("1", "throw new Exception(\"told <here>\");"));
        var output = Path.Combine(folder.Path, "out");
        var ended = Program.Run("run", "--content", folder.Path, "--out", output);
        Assert.Equal(1, ended.ExitCode);
        Assert.Contains("2-hands.ipynb: [2], cell 2 (id \"c2\"), line 1: Exception: told <here>", ended.Errors, StringComparison.Ordinal);
        var report = File.ReadAllText(Path.Combine(output, "index.html"));
        foreach (var page in new[] { "notebooks/1-belts.html", "notebooks/2-hands.html" })
        {
            Assert.Contains($"href=\"{page}\"", report, StringComparison.Ordinal);
            Assert.Contains("href=\"../index.html\"", File.ReadAllText(Path.Combine(output, page)), StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(output, Path.ChangeExtension(page, ".ipynb"))));
        }
        Assert.Contains("Exception: told &lt;here&gt;", report, StringComparison.Ordinal);
        var provenance = File.ReadAllText(Path.Combine(output, "provenance.json"));
        Assert.Contains("notebooks/2-hands.html", provenance, StringComparison.Ordinal);
    }

    [Fact]
    public void A_content_folder_without_notebooks_and_two_notebooks_of_one_name_are_refused()
    {
        using var folder = new TemporaryFolder();
        var nowhere = Program.Run("run", "--content", folder.Path);
        Assert.Equal(2, nowhere.ExitCode);
        Assert.Contains("holds no folder notebooks", nowhere.Errors, StringComparison.Ordinal);
        var twice = Program.Run("run", "one/a.ipynb", "two/a.ipynb");
        Assert.Equal(2, twice.ExitCode);
        Assert.Contains("one/a.ipynb and two/a.ipynb", twice.Errors, StringComparison.Ordinal);
    }
}
