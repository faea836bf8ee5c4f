using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>
/// Notebooks that go too far, given to the program beside one that does not. Memory without end and a hundred
/// megabytes of output, which take longer, stand with the engine's own tests of limits.
/// </summary>
public sealed class MisbehavingNotebooksTests : IDisposable
{
    /// <summary>Every process that the program starts inherits it.</summary>
    private const string Mark = "SPINDLEWRIGHT_TEST_MARK";

    private const string First = "Console.Write(\"kept\");";

    private readonly TemporaryFolder folder = new();

    [Fact]
    public async Task A_loop_without_end_is_stopped_at_the_time_limit()
    {
        var ended = await RunAsync("5 s", Named("loop", First, "// turns\nwhile (true) ;", "1"), Named("fine", First, "2 + 2"));
        Assert.Equal(
            "loop.ipynb: [2], cell 2 (id \"c2\"): TimeLimit: The cell ran longer than 5 s and was stopped.\n", ended.Errors);
        Assert.Equal(1, ended.ExitCode);
        Assert.Equal("kept", Text("loop", 1));
        var loop = Read("loop");
        Assert.Equal("TimeLimit", Assert.Single(loop.Cells[1].Outputs)!["ename"]!.GetValue<string>());
        Assert.Empty(loop.Cells[2].Outputs);
        Assert.Equal("4", Text("fine", 2));
    }

    [Fact]
    public async Task Whatever_a_notebook_does_the_others_run_and_no_process_is_left()
    {
        var ended = await RunAsync("60 s",
            Named("exit", First, "Environment.Exit(0);"),
            Named("deep", First, "int F(int n) => F(n + 1) + 1;\nF(0)"),
            Named("throw", "throw new InvalidOperationException(\"first cell\");", "1"),
            Named("state", First,
                "System.Diagnostics.Process.Start(\"setsid\", \"sleep 1000\"); Console.Write(\"left\");",
                "using (var raw = Console.OpenStandardOutput()) raw.Write(new byte[] { 0x41, 0xFF, 0x0A });",
                """
                CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture =
                    new CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } };
                Directory.SetCurrentDirectory("/");
                Environment.SetEnvironmentVariable("PATH", null);
                Console.Out.Close();
                Console.SetOut(TextWriter.Null);
                """, "Console.Write(1.5);"),
            Named("fine", First, "Console.Write(1.5);"));
        Assert.Equal(1, ended.ExitCode);
        Assert.Equal(
            [
                "deep.ipynb: [2], cell 2 (id \"c2\"): StackOverflow: The code called itself too deeply (stack overflow); its process ended.",
                "exit.ipynb: [2], cell 2 (id \"c2\"): ProcessEnded: The code ended its own process (exit code 0).",
                "throw.ipynb: [1], cell 1 (id \"c1\"), line 1: InvalidOperationException: first cell",
            ],
            ended.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
        foreach (var name in new[] { "exit", "deep", "state", "fine" }) Assert.Equal("kept", Text(name, 1));
        Assert.Equal("left", Text("state", 2));
        Assert.Equal("A\uFFFD\n", Text("state", 3));
        Assert.Equal("1.5", Text("state", 5));
        Assert.Equal("1.5", Text("fine", 2));
    }

    public void Dispose() => folder.Dispose();

    private async Task<Ended> RunAsync(string timeLimit, params string[] notebooks)
    {
        var ended = Program.Run(
            [new(Mark, folder.Path)],
            ["run", .. notebooks, "--time-limit", timeLimit, "--out", Path.Combine(folder.Path, "out")]);
        await Gone.SoonAsync(() => Gone.Carrying($"{Mark}={folder.Path}"));
        return ended;
    }

    private string Named(string name, params string[] cells) => folder.File($"{name}.ipynb", NotebookText.Of(cells));

    private Notebook Read(string name) => NotebookReader.ReadFile(Path.Combine(folder.Path, "out", "notebooks", $"{name}.ipynb"));

    private string Text(string name, int cell) => string.Concat(
        Read(name).Cells[cell - 1].Outputs.Select(output => MultilineText.Join(output!["text"] ?? output["data"]?["text/plain"])));
}
