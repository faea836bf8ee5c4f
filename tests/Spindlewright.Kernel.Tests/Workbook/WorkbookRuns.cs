using Spindlewright.Kernel.Report;
using Spindlewright.Kernel.Tests.Commands;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Workbook;

/// <summary>
/// The workbook of the repository, and two notebooks that try to leave something behind, run twice: by the program under
/// another locale, elsewhere, two at a time, with a fresh child for each; and backwards, the two first, in one child that
/// serves them all.
/// </summary>
public sealed class WorkbookRuns : IAsyncLifetime
{
    internal const string OwnWords = "nobodys-own-words";

    private readonly TemporaryFolder folder = new();

    internal static IReadOnlyList<string> Workbook { get; } = WorkbookFiles.In(Repository.Root);

    /// <summary>In the order of the workbook, though they ran backwards.</summary>
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
        KeyValuePair<string, string>[] elsewhere =
        [
            new("LANG", "de_DE.UTF-8"), new("LC_ALL", "de_DE.UTF-8"), new("DOTNET_SYSTEM_GLOBALIZATION_INVARIANT", "0"),
            new("HOME", Home), new("USER", OwnWords), new("LOGNAME", OwnWords),
        ];
        var fresh = Task.Run(() => Commands.Program.Run(elsewhere, ["run", .. all, "--out", Output]));
        // No machine file lies in the folder where the cells run, so that the demo machine stands in.
        var backwards = await WarmRun.OfAsync(all.Reverse(), Directory.CreateDirectory(Path.Combine(folder.Path, "backwards")).FullName);
        (Program, Backwards) = (await fresh, [.. backwards.Reverse()]);
    }

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
