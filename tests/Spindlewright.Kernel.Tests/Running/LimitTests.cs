using System.Diagnostics;
using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>Notebooks that go too far, run by the real engine beside one that does not.</summary>
public sealed class LimitTests
{
    private static readonly RunLimits Limits = RunLimits.Default with
    {
        CellTime = TimeSpan.FromSeconds(60), MemoryBytes = 700L << 20, OutputBytes = 1 << 20,
    };

    [Fact]
    public async Task Every_notebook_that_goes_too_far_ends_in_a_clear_error_and_the_others_run()
    {
        const string First = "Console.WriteLine(\"kept\"); System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id";
        using var folder = new Folder();
        var jobs = new[]
        {
            folder.Add("loop.ipynb", First, "\n\nwhile (true) ;", "1"),
            folder.Add("grow.ipynb", First,
                "var all = new List<byte[]>(); while (true) { var b = new byte[4_000_000]; Array.Fill(b, (byte)1); all.Add(b); Thread.Sleep(2); }"),
            folder.Add("native.ipynb", First,
                "while (true) { var p = System.Runtime.InteropServices.Marshal.AllocHGlobal(8_000_000); for (var i = 0; i < 8_000_000; i += 4096) System.Runtime.InteropServices.Marshal.WriteByte(p, i, 1); Thread.Sleep(2); }"),
            folder.Add("exit.ipynb", First, "Environment.Exit(0);"),
            folder.Add("deep.ipynb", First, "int F(int n) => F(n + 1) + 1; F(0)"),
            folder.Add("throw.ipynb", "throw new InvalidOperationException(\"first cell\");", "1"),
            folder.Add("fine.ipynb", First, "2 + 2"),
        };
        await using var engine = new ChildEngine(reuse: true);
        // The loop alone needs the time limit; the others must not meet it on a busy machine.
        var brief = new RunOptions { Limits = Limits with { CellTime = TimeSpan.FromSeconds(5) } };
        var ample = new RunOptions { Limits = Limits, Workers = 2 };
        NotebookResult[] results =
        [
            .. await new NotebookRunner(engine, brief).RunAsync(jobs[..1], TestContext.Current.CancellationToken),
            .. await new NotebookRunner(engine, ample).RunAsync(jobs[1..], TestContext.Current.CancellationToken),
        ];

        Assert.Equal(
            ["TimeLimit", "MemoryLimit", "MemoryLimit", "ProcessEnded", "StackOverflow", "InvalidOperationException", null],
            results.Select(result => result.Fault?.Name));
        Assert.Equal("loop.ipynb: [2], cell 2 (id \"c2\"): TimeLimit: The cell ran longer than 5 s and was stopped.",
            results[0].Fault!.ToString());
        Assert.Equal("throw.ipynb: [1], cell 1 (id \"c1\"), line 1: InvalidOperationException: first cell",
            results[5].Fault!.ToString());
        Assert.Equal(1, NotebookResult.ExitCode(results));
        Assert.Equal("4", folder.Text("fine.ipynb", 2));
        foreach (var name in new[] { "loop", "grow", "native", "exit", "deep", "fine" })
        {
            var first = folder.Text($"{name}.ipynb", 1);
            Assert.StartsWith("kept\n", first);
            await Gone.WithinAsync(TimeSpan.FromSeconds(2), int.Parse(first[5..], System.Globalization.CultureInfo.InvariantCulture));
        }

        var loop = NotebookReader.ReadFile(folder.Out("loop.ipynb"));
        Assert.Equal("error", Assert.Single(loop.Cells[1].Outputs)!["output_type"]!.GetValue<string>());
        Assert.Empty(loop.Cells[2].Outputs);
        Assert.Null(loop.Cells[2].ExecutionCount);
        Assert.DoesNotContain("/", string.Concat(results.Select(result => result.Executed!.ToBytes()).Select(System.Text.Encoding.UTF8.GetString)
            .Select(text => text.Replace("text/plain", "").Replace("text/html", "").Replace("</", ""))));
    }

    [Fact]
    public async Task A_hundred_megabytes_are_cut_with_a_note_and_bounded_memory()
    {
        using var folder = new Folder();
        var job = folder.Add("much.ipynb",
            "for (var i = 0; i < 1_000_000; i++) Console.WriteLine(new string('x', 99));",
            "using (var raw = Console.OpenStandardOutput()) for (var i = 0; i < 1600; i++) raw.Write(new byte[65536]);",
            "1 + 1");
        await using var engine = new ChildEngine();
        var before = Process.GetCurrentProcess().WorkingSet64;
        var most = 0L;
        using var watch = new Timer(_ => most = Math.Max(most, Process.GetCurrentProcess().WorkingSet64), null, 0, 50);
        var runner = new NotebookRunner(engine, new RunOptions { Limits = Limits });
        var result = Assert.Single(await runner.RunAsync([job], TestContext.Current.CancellationToken));
        Assert.Equal(NotebookOutcome.Done, result.Outcome);
        Assert.EndsWith("Output cut: the cell wrote 100000000 bytes, 1048576 of them are kept.\n", folder.Text("much.ipynb", 1));
        Assert.EndsWith("Output cut: the cell wrote 104857600 bytes, 1048576 of them are kept.\n", folder.Text("much.ipynb", 2));
        Assert.Equal("2", folder.Text("much.ipynb", 3));
        Assert.True(most - before < 400L << 20, $"grew by {(most - before) >> 20} MiB");
    }

    [Fact]
    public async Task Forwards_backwards_and_fresh_give_the_same_bytes()
    {
        using var folder = new Folder();
        NotebookJob[] jobs =
        [
            folder.Add("a.ipynb", "var x = 1.5; Show(x); Console.WriteLine(x);", "new[] { 1, 2 }", "new { a = 1, b = \"<&>\" }",
                "Show(1).Replace(Power.FromKilowatts(2));", "Console.Error.Write(\"e\"); Console.Write(\"o\"); System.Diagnostics.Process.Start(\"echo\", \"raw\").WaitForExit();"),
            folder.Add("b.ipynb", """
                var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
                comma.NumberFormat.NumberDecimalSeparator = ",";
                CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = comma;
                Directory.SetCurrentDirectory("/tmp");
                Environment.SetEnvironmentVariable("X", "1");
                Console.SetOut(TextWriter.Null);
                """, "Console.WriteLine(1.5);", "int F(int n) => 1 / n;", "F(0)"),
            folder.Add("c.ipynb", "Console.WriteLine($\"{1.5} {Environment.GetEnvironmentVariable(\"X\") ?? \"none\"}\");",
                "File.ReadAllText(\"missing.txt\")"),
        ];
        var runs = new List<byte[][]>();
        foreach (var (reuse, backwards) in new[] { (true, false), (true, true), (false, false) })
        {
            await using var engine = new ChildEngine(reuse: reuse);
            var runner = new NotebookRunner(engine, new RunOptions());
            await runner.RunAsync(backwards ? [.. jobs.Reverse()] : jobs, TestContext.Current.CancellationToken);
            runs.Add([.. jobs.Select(job => File.ReadAllBytes(job.Target!))]);
        }

        Assert.Equal(runs[0], runs[1]);
        Assert.Equal(runs[0], runs[2]);
        Assert.Contains("1.5 none", folder.Text("c.ipynb", 1));
    }
}
