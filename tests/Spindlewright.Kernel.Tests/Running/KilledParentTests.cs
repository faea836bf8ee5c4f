using System.Diagnostics;
using System.Globalization;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>The program, killed at any moment while it runs notebooks.</summary>
public sealed class KilledParentTests
{
    private const string FolderVariable = "SPINDLEWRIGHT_TEST_PARENT";

    private static readonly string[] Names = ["a", "b"];

    [Fact]
    public async Task A_killed_parent_leaves_no_process_and_only_whole_files()
    {
        using var folder = new Folder();
        const string Note = "File.AppendAllText(Environment.GetEnvironmentVariable(\"PIDS\"), $\"{Environment.ProcessId}\\n{System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id}\\n\");";
        folder.Add("a.ipynb", Note, "Console.WriteLine(new string('x', 200_000));");
        folder.Add("b.ipynb", Note, "Thread.Sleep(100); while (true) ;");
        var written = Directory.CreateDirectory(Path.Combine(folder.Out(""), "notebooks")).FullName;
        var random = new Random(7);
        for (var round = 0; round < 3; round++)
        {
            File.Copy(Path.Combine(folder.Path, "a.ipynb"), Path.Combine(written, "a.ipynb"), overwrite: true);
            await KillAParentAsync(folder, waitForCells: round < 2, random);
            foreach (var file in Names.Select(name => Path.Combine(written, name)))
            {
                if (File.Exists($"{file}.ipynb")) NotebookReader.ReadFile($"{file}.ipynb");
                if (File.Exists($"{file}.html"))
                    Assert.EndsWith("</html>\n", await File.ReadAllTextAsync($"{file}.html", TestContext.Current.CancellationToken));
            }
        }
    }

    private static async Task KillAParentAsync(Folder folder, bool waitForCells, Random random)
    {
        var pids = Path.Combine(folder.Path, "pids");
        await File.WriteAllTextAsync(pids, "", TestContext.Current.CancellationToken);
        var start = Commands.Program.Start(
            [new(FolderVariable, folder.Path), new("PIDS", pids)],
            ["run", .. Names.Select(name => Path.Combine(folder.Path, $"{name}.ipynb")), "--out", folder.Out("")]);
        using var parent = Process.Start(start)!;
        var clock = Stopwatch.StartNew();
        while (waitForCells && File.ReadLines(pids).Count() < 4 && clock.Elapsed < TimeSpan.FromSeconds(60))
            await Task.Delay(20, TestContext.Current.CancellationToken);
        await Task.Delay(random.Next(100, waitForCells ? 400 : 4000), TestContext.Current.CancellationToken);
        var children = Marked(folder);
        parent.Kill();
        if (waitForCells)
            Assert.True(children.Length >= 3, $"The parent ran {children.Length} processes.");
        await Gone.SoonAsync(children);
        Assert.Empty(Marked(folder));
        Assert.DoesNotContain(File.ReadLines(pids), pid => Gone.IsAlive(int.Parse(pid, CultureInfo.InvariantCulture)));
    }

    private static int[] Marked(Folder folder) => Gone.Carrying($"{FolderVariable}={folder.Path}");
}
