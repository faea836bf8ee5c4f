using System.Diagnostics;
using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>Notebooks that take more memory or write more than they may, run by the real engine.</summary>
public sealed class LimitTests
{
    private static readonly RunLimits Limits = RunLimits.Default with
    {
        CellTime = TimeSpan.FromSeconds(60), MemoryBytes = 700L << 20, OutputBytes = 1 << 20,
    };

    [Theory]
    [InlineData("var all = new List<byte[]>(); while (true) { var b = new byte[4_000_000]; Array.Fill(b, (byte)1); all.Add(b); Thread.Sleep(2); }")]
    [InlineData("while (true) { var p = System.Runtime.InteropServices.Marshal.AllocHGlobal(8_000_000); for (var i = 0; i < 8_000_000; i += 4096) System.Runtime.InteropServices.Marshal.WriteByte(p, i, 1); Thread.Sleep(2); }")]
    public async Task Memory_without_end_is_stopped_at_the_limit(string code)
    {
        using var folder = new Folder();
        await using var engine = new ChildEngine();
        var runner = new NotebookRunner(engine, new RunOptions { Limits = Limits });
        var job = folder.Add("grow.ipynb", "Console.Write(System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id);", code);
        var result = Assert.Single(await runner.RunAsync([job], TestContext.Current.CancellationToken));
        Assert.Equal("grow.ipynb: [2], cell 2 (id \"c2\"): MemoryLimit: The cell used more than 700 MiB of memory and was stopped.",
            result.Fault!.ToString());
        await Gone.SoonAsync(int.Parse(folder.Text("grow.ipynb", 1), System.Globalization.CultureInfo.InvariantCulture));
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
}
