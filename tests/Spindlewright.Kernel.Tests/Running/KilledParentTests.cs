using System.Diagnostics;
using System.Globalization;
using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>
/// A parent killed at any moment: the test program itself, started again as the parent, runs notebooks and is killed.
/// </summary>
public sealed class KilledParentTests
{
    private const string FolderVariable = "SPINDLEWRIGHT_TEST_PARENT";

    private static readonly string[] Names = ["a.ipynb", "b.ipynb"];

    [Fact]
    public async Task A_killed_parent_leaves_no_process_and_only_whole_files()
    {
        using var folder = new Folder();
        const string Note = "File.AppendAllText(Environment.GetEnvironmentVariable(\"PIDS\"), $\"{Environment.ProcessId}\\n{System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id}\\n\");";
        folder.Add("a.ipynb", Note, "Console.WriteLine(new string('x', 200_000));");
        folder.Add("b.ipynb", Note, "Thread.Sleep(100); while (true) ;");
        var random = new Random(7);
        for (var round = 0; round < 4; round++)
        {
            Directory.CreateDirectory(folder.Out(""));
            await File.WriteAllBytesAsync(folder.Out("a.ipynb"), File.ReadAllBytes(Path.Combine(folder.Path, "a.ipynb")),
                TestContext.Current.CancellationToken);
            await KillAParentAsync(folder, waitForCells: round < 2, random);
            foreach (var name in Names.Where(name => File.Exists(folder.Out(name))))
                NotebookReader.ReadFile(folder.Out(name));
        }
    }

    private static async Task KillAParentAsync(Folder folder, bool waitForCells, Random random)
    {
        var pids = Path.Combine(folder.Path, "pids");
        await File.WriteAllTextAsync(pids, "", TestContext.Current.CancellationToken);
        var start = new ProcessStartInfo(Environment.ProcessPath!,
            ["--filter-method", $"*.{nameof(The_parent_that_is_killed)}", "--explicit", "on"])
        {
            RedirectStandardOutput = true,
            Environment = { [FolderVariable] = folder.Path, ["PIDS"] = pids },
        };
        using var parent = Process.Start(start)!;
        var clock = Stopwatch.StartNew();
        while (waitForCells && File.ReadLines(pids).Count() < 4 && clock.Elapsed < TimeSpan.FromSeconds(60))
            await Task.Delay(20, TestContext.Current.CancellationToken);
        await Task.Delay(random.Next(100, waitForCells ? 400 : 4000), TestContext.Current.CancellationToken);
        var children = Marked(folder.Path);
        parent.Kill();
        if (waitForCells)
            Assert.True(children.Length >= 3, $"The parent ran {children.Length} processes.");
        await Gone.WithinAsync(TimeSpan.FromSeconds(2), children);
        Assert.Empty(Marked(folder.Path));
        Assert.DoesNotContain(File.ReadLines(pids), pid => Gone.IsAlive(int.Parse(pid, CultureInfo.InvariantCulture)));
    }

    /// <summary>Every live process that inherited the test's variable.</summary>
    private static int[] Marked(string folder) =>
    [
        .. Directory.EnumerateDirectories("/proc").Select(Path.GetFileName)
            .Select(name => int.TryParse(name, CultureInfo.InvariantCulture, out var id) ? id : 0)
            .Where(id => id != 0 && Gone.IsAlive(id) && Environ(id).Contains($"{FolderVariable}={folder}")),
    ];

    private static string Environ(int id)
    {
        try
        {
            return File.ReadAllText($"/proc/{id}/environ");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    /// <summary>Runs only when the test above starts it.</summary>
    [Fact(Explicit = true)]
    public async Task The_parent_that_is_killed()
    {
        var folder = Environment.GetEnvironmentVariable(FolderVariable);
        Assert.SkipWhen(folder is null, "Runs only as the parent that another test kills.");
        await using var engine = new ChildEngine(reuse: true);
        var jobs = Names
            .Select(name => new NotebookJob(Path.Combine(folder!, name), Path.Combine(folder!, "out", name))).ToList();
        await new NotebookRunner(engine, new RunOptions()).RunAsync(jobs, TestContext.Current.CancellationToken);
    }
}
