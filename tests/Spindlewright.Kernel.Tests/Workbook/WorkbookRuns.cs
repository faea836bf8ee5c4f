using Spindlewright.Kernel.Engine;
using Spindlewright.Kernel.Report;
using Spindlewright.Kernel.Showing;
using Spindlewright.Kernel.Tests.Commands;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Workbook;

/// <summary>
/// The workbook of the repository, and two notebooks that try to leave something behind, run three times: forwards
/// and backwards in one child that serves them all, and by the program under another locale, elsewhere, two at a time,
/// with a fresh child for each.
/// </summary>
public sealed class WorkbookRuns : IAsyncLifetime
{
    internal const string OwnWords = "nobodys-own-words";

    private readonly TemporaryFolder folder = new();

    internal static IReadOnlyList<string> Workbook { get; } = WorkbookFiles.In(Repository.Root);

    internal IReadOnlyList<NotebookResult> Forwards { get; private set; } = [];

    internal IReadOnlyList<NotebookResult> Backwards { get; private set; } = [];

    internal Ended Program { get; private set; } = null!;

    internal string Output => Path.Combine(folder.Path, "out");

    internal string Home => Path.Combine(folder.Path, OwnWords);

    public async ValueTask InitializeAsync()
    {
        string[] all =
        [
            .. Workbook,
            folder.File("a.ipynb", NotebookText.Of(
                "var x = 1.5; Show(x); Console.WriteLine(x);", "new[] { 1, 2 }", "new { a = 1, b = \"<&>\" }",
                "Show(1).Replace(Power.FromKilowatts(2));",
                "Console.Error.Write(\"e\"); Console.Write(\"o\"); System.Diagnostics.Process.Start(\"echo\", \"raw\").WaitForExit();",
                "Console.Write($\"{1.5} {Environment.GetEnvironmentVariable(\"X\") ?? \"none\"}\");", "File.ReadAllText(\"missing.txt\")")),
            folder.File("b.ipynb", NotebookText.Of("""
                var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
                comma.NumberFormat.NumberDecimalSeparator = ",";
                CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = comma;
                Directory.SetCurrentDirectory("/tmp");
                Environment.SetEnvironmentVariable("X", "1");
                Console.SetOut(TextWriter.Null);
                """, "Console.WriteLine(1.5);", "int F(int n) => 1 / n;", "F(0)")),
        ];
        var (forwards, backwards) = (WarmAsync(all, "forwards"), WarmAsync([.. all.Reverse()], "backwards"));
        (Forwards, Backwards) = (await forwards, [.. (await backwards).Reverse()]);
        KeyValuePair<string, string>[] elsewhere =
        [
            new("LANG", "de_DE.UTF-8"), new("LC_ALL", "de_DE.UTF-8"), new("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "0"),
            new("HOME", Home), new("USER", OwnWords), new("LOGNAME", OwnWords),
        ];
        Program = Commands.Program.Run(elsewhere, ["run", .. all, "--out", Output]);
    }

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }

    /// <summary>No machine file lies in the folder where the cells run, so that the demo machine stands in.</summary>
    private async Task<IReadOnlyList<NotebookResult>> WarmAsync(string[] notebooks, string name)
    {
        var directory = Directory.CreateDirectory(Path.Combine(folder.Path, name)).FullName;
        await using var engine = new ChildEngine(reuse: true);
        var runner = new NotebookRunner(engine, new RunOptions { Transformer = new FigureDrawing() });
        return await runner.RunAsync([.. notebooks.Select(source => new NotebookJob(source, null, directory))]);
    }
}
