using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>A run of each demo machine that tests share; they read what it wrote and leave it as it is.</summary>
public sealed class DemoRuns : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly Dictionary<string, (string Output, string Console)> made = [];

    internal string Output(string machine) => Made(machine).Output;

    internal string Console(string machine) => Made(machine).Console;

    internal string Results(string machine) => File.ReadAllText(Path.Combine(Output(machine), "results.json"));

    public void Dispose() => folder.Dispose();

    private (string Output, string Console) Made(string machine)
    {
        if (made.TryGetValue(machine, out var run)) return run;
        var output = Path.Combine(folder.Path, machine);
        var ended = Program.Study("--machine", folder.File($"{machine}.toml", DemoMachines.Text(machine)), "--out", output);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        return made[machine] = (output, ended.Output);
    }
}

public class RunTests(DemoRuns runs) : IClassFixture<DemoRuns>
{
    private const string Boatyard = "boatyard-fittings-bench";

    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Repository.File("docs/results.schema.json")));

    [Theory]
    [InlineData("boatyard-fittings-bench")]
    [InlineData("school-workshop")]
    [InlineData("measured-six-pole-bench")]
    public void Results_of_every_demo_machine_validate_against_the_schema(string machine)
    {
        var results = runs.Results(machine);
        var verdict = Schema.Evaluate(JsonDocument.Parse(results).RootElement, new() { OutputFormat = OutputFormat.List });
        Assert.True(verdict.IsValid, string.Join('\n', (verdict.Details ?? []).Where(detail => !detail.IsValid).Take(10).Select(detail => $"{detail.InstanceLocation} {string.Join(" ", detail.Errors?.Values.ToArray() ?? [])}")));
    }

    [Theory]
    [InlineData("school-workshop")]
    [InlineData("measured-six-pole-bench")]
    public void Console_and_report_of_other_machines_approve_nothing_and_keep_the_bound(string machine)
    {
        ReadersWords.ApproveNothing("console", runs.Console(machine));
        Assert.True(ReadersWords.KeepTheBound("console", runs.Console(machine).Split('\n')) > 0);
        var pages = Directory.GetFiles(runs.Output(machine), "*.html", SearchOption.AllDirectories);
        Assert.NotEmpty(pages);
        Assert.True(pages.Sum(page => ReadersWords.HoldOnPage(Path.GetFileName(page), File.ReadAllText(page))) > 0);
    }

    [Fact]
    public void The_schema_refuses_results_with_a_key_missing_or_unknown()
    {
        var tree = JsonNode.Parse(runs.Results("school-workshop"))!.AsObject();
        Assert.False(IsValid(Without(tree, "torques")));
        var added = (JsonObject)tree.DeepClone();
        added["unheard_of"] = 1;
        Assert.False(IsValid(added));

        static JsonObject Without(JsonObject from, string key)
        {
            var copy = (JsonObject)from.DeepClone();
            copy.Remove(key);
            return copy;
        }
    }

    [Fact]
    public void Every_file_but_the_provenance_is_the_same_bytes_elsewhere_under_another_locale_on_one_core_and_the_provenance_names_them_all()
    {
        using var folder = new TemporaryFolder();
        string[] outputs =
        [
            runs.Output(Boatyard),
            Study(
                folder, new("LANG", "de_DE.UTF-8"), new("LC_ALL", "de_DE.UTF-8"), new("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "0"),
                new("TZ", "Asia/Kolkata"), new("DOTNET_PROCESSOR_COUNT", "1"), new("DOTNET_EnableAVX512", "0"), new("DOTNET_EnableAVX512F", "0")),
        ];
        var names = Names(outputs[0]);
        Assert.Equal(names, Names(outputs[1]));
        foreach (var name in names.Where(name => name != "provenance.json"))
            Assert.Equal(File.ReadAllBytes(Path.Combine(outputs[0], name)), File.ReadAllBytes(Path.Combine(outputs[1], name)));
        var hashed = JsonNode.Parse(File.ReadAllText(Path.Combine(outputs[0], "provenance.json")))!["files_sha256"]!.AsObject();
        Assert.Equal(names.Where(name => name != "provenance.json"), hashed.Select(each => each.Key).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Results_are_the_same_bytes_without_wide_vectors_and_without_fused_operations()
    {
        using var folder = new TemporaryFolder();
        var output = Study(folder, new("DOTNET_EnableAVX2", "0"), new("DOTNET_EnableFMA", "0"));
        Assert.Equal(runs.Results(Boatyard), File.ReadAllText(Path.Combine(output, "results.json")));
    }

    [Fact]
    public void No_page_names_a_path_of_this_machine_or_asks_anything_of_the_network()
    {
        var output = runs.Output(Boatyard);
        foreach (var name in Names(output))
        {
            var text = File.ReadAllText(Path.Combine(output, name));
            Assert.DoesNotContain(output, text, StringComparison.Ordinal);
            Assert.DoesNotContain(Repository.Root, text, StringComparison.Ordinal);
        }
        // The interactive chart's script names addresses in its own code; the page around it must load none.
        var page = File.ReadAllText(Path.Combine(output, "index.html"));
        Assert.DoesNotMatch("""<(script|link|img|iframe)\b[^>]*\s(src|href)="(https?:)?//""", page);
    }

    [Fact]
    public void Text_of_a_machine_file_shows_as_text_everywhere()
    {
        using var folder = new TemporaryFolder();
        var text = DemoMachines.Boatyard("title = \"Boatyard fittings bench\"", "title = \"<script>alert(1)</script>\"")
            .Replace("name = \"1\"", "name = \"</title><script>alert(2)</script>&\"", StringComparison.Ordinal)
            .Replace("name = \"cleat bolt holes in bronze\"", "name = \"<img src=x onerror=alert(3)>\"", StringComparison.Ordinal);
        var output = Path.Combine(folder.Path, "out");
        Assert.Equal(0, Program.Study("--machine", folder.File("mine.toml", text), "--out", output).ExitCode);
        foreach (var name in Names(output).Where(name => name.EndsWith(".html", StringComparison.Ordinal) || name.EndsWith(".svg", StringComparison.Ordinal)))
        {
            var page = File.ReadAllText(Path.Combine(output, name));
            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
            Assert.DoesNotContain("<img src=x", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void New_writes_a_file_that_check_reads_and_run_computes()
    {
        using var folder = new TemporaryFolder();
        var file = Path.Combine(folder.Path, "mine.toml");
        Assert.Equal(0, Program.Run("new", file).ExitCode);
        var check = Program.Run("check", file);
        Assert.True(check.ExitCode == 0, check.Errors);
        Assert.Equal(3, Program.Run("new", file).ExitCode);
        Assert.Equal(0, Program.Study("--machine", file, "--out", Path.Combine(folder.Path, "out")).ExitCode);
    }

    private static string Study(TemporaryFolder folder, params KeyValuePair<string, string>[] environment)
    {
        var output = Path.Combine(folder.Path, "out");
        var ended = Program.Study(environment, "--out", output);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        return output;
    }

    private static bool IsValid(JsonObject tree) => Schema.Evaluate(JsonDocument.Parse(tree.ToJsonString()).RootElement).IsValid;

    private static List<string> Names(string folder) => [.. Directory
        .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(folder, file).Replace('\\', '/')).Order(StringComparer.Ordinal)];
}
