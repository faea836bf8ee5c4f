using System.Diagnostics;
using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Engine;

/// <summary>What code can do to its process, and that nothing of it outlives the session.</summary>
public sealed class MisbehavingCodeTests(WarmEngine warm)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("new Thread(() => throw new Exception(\"apart\")).Start(); Thread.Sleep(5000);", "UnhandledException", "apart")]
    [InlineData("Environment.FailFast(\"enough\");", "ProcessEnded", "enough")]
    [InlineData("System.Diagnostics.Process.GetCurrentProcess().Kill();", "ProcessKilled", "signal 9")]
    public async Task The_end_of_the_process_is_told_with_its_cause(string code, string name, string part)
    {
        await using var engine = new ChildEngine();
        await using var session = await engine.OpenAsync(new SessionSettings(), Stop);
        var id = ((ChildSession)session).ProcessId;
        var seen = new List<EngineEvent>();
        var lost = await Assert.ThrowsAsync<EngineLostException>(
            () => session.ExecuteAsync($"Console.WriteLine(\"before\");\n{code}", 1, seen.Add, Stop));
        Assert.Equal(name, lost.Loss.Name);
        Assert.Contains(part, lost.Loss.Message);
        Assert.Equal("before\n", string.Concat(seen.OfType<StreamEvent>().Select(each => each.Text)));
        await Gone.SoonAsync(id);
        await Assert.ThrowsAsync<EngineLostException>(() => session.ExecuteAsync("1", 2, _ => { }, Stop));
    }

    [Fact]
    public async Task Raw_bytes_on_standard_output_belong_to_the_cell()
    {
        await using var session = await warm.Engine.OpenAsync(new SessionSettings(), Stop);
        var ran = await session.RunAsync("""
            using (var raw = Console.OpenStandardOutput()) raw.Write(new byte[] { 0x41, 0xFF, 0x42, 0x0A });
            System.Diagnostics.Process.Start("echo", "from a child").WaitForExit();
            Console.Write("last");
            """);
        Assert.Null(ran.Error);
        Assert.Equal("A�B\nfrom a child\n",
            string.Concat(ran.Events.OfType<StreamEvent>().Where(each => each.IsRaw).Select(each => each.Text)));
        Assert.Equal("2", (await session.RunAsync("1 + 1", 2)).Returned);
    }

    [Fact]
    public async Task Closing_the_console_hurts_nobody()
    {
        await using var session = await warm.Engine.OpenAsync(new SessionSettings(), Stop);
        await session.RunAsync("Console.Out.Close(); Console.Error.Dispose(); Console.SetOut(TextWriter.Null);");
        Assert.Equal("still", (await session.RunAsync("Console.Write(\"still\");", 2)).Stdout);
    }

    [Fact]
    public async Task Reading_the_console_finds_its_end()
    {
        await using var session = await warm.Engine.OpenAsync(new SessionSettings(), Stop);
        var ran = await session.RunAsync(
            "Console.Write(Console.ReadLine() is null); Console.Write(Console.OpenStandardInput().ReadByte());");
        Assert.Equal("True-1", ran.Stdout);
    }

    [Fact]
    public async Task A_reused_child_starts_from_where_it_began()
    {
        await using var engine = new ChildEngine(reuse: true);
        var here = Directory.GetCurrentDirectory();
        int first;
        await using (var session = await engine.OpenAsync(new SessionSettings(), Stop))
        {
            first = ((ChildSession)session).ProcessId;
            var ran = await session.RunAsync("""
                var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
                comma.NumberFormat.NumberDecimalSeparator = ",";
                CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = comma;
                Environment.SetEnvironmentVariable("LEFT_BEHIND", "yes");
                Environment.SetEnvironmentVariable("PATH", null);
                Directory.SetCurrentDirectory("/");
                Console.SetOut(TextWriter.Null);
                Environment.ExitCode = 9;
                """);
            Assert.Null(ran.Error);
        }

        await using (var session = await engine.OpenAsync(new SessionSettings(), Stop))
        {
            Assert.Equal(first, ((ChildSession)session).ProcessId);
            var ran = await session.RunAsync("""
                Console.WriteLine(1.5);
                Console.WriteLine(new Thread(() => Console.WriteLine(2.5)) is var thread);
                thread.Start(); thread.Join();
                Console.WriteLine(Environment.GetEnvironmentVariable("LEFT_BEHIND") ?? "gone");
                Console.WriteLine(Environment.GetEnvironmentVariable("PATH") is null);
                Console.WriteLine(Directory.GetCurrentDirectory());
                """);
            Assert.Equal($"1.5\nTrue\n2.5\ngone\nFalse\n{here}\n", ran.Stdout);
            Assert.Equal(Outcome.Failed, (await session.RunAsync("comma", 2)).Outcome);
        }
    }

    [Fact]
    public async Task Processes_left_behind_end_with_the_session_though_its_child_lives_on()
    {
        await using var engine = new ChildEngine(reuse: true);
        int[] left;
        await using (var session = await engine.OpenAsync(new SessionSettings(), Stop))
        {
            // A child; one in a session of its own; an orphan in a session of its own; such an orphan without the mark.
            var ran = await session.RunAsync("""
                using System.Diagnostics;
                string Sh(string line)
                {
                    using var p = Process.Start(new ProcessStartInfo("sh", ["-c", line]) { RedirectStandardOutput = true });
                    return p.StandardOutput.ReadLine();
                }
                Console.WriteLine(Process.Start("sleep", "1000").Id);
                Console.WriteLine(Process.Start("setsid", "sleep 1000").Id);
                Console.WriteLine(Sh("setsid sleep 1000 >/dev/null & echo $!"));
                Console.WriteLine(Sh("env -i setsid sleep 1000 >/dev/null & echo $!"));
                """);
            left = [.. ran.Stdout.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)];
            Assert.Equal(4, left.Count(Gone.IsAlive));
        }

        await Gone.SoonAsync(left);
    }

    [Fact]
    public async Task Killing_the_child_takes_what_it_started_along()
    {
        await using var engine = new ChildEngine();
        await using var session = await engine.OpenAsync(new SessionSettings(), Stop);
        var id = ((ChildSession)session).ProcessId;
        var left = int.Parse((await session.RunAsync("System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id")).Returned!,
            System.Globalization.CultureInfo.InvariantCulture);
        var running = await session.StartAsync("while (true) ;", 2);
        Process.GetProcessById(id).Kill();
        var lost = await Assert.ThrowsAsync<EngineLostException>(() => running);
        Assert.Equal("ProcessKilled", lost.Loss.Name);
        await Gone.SoonAsync(id, left);
    }

    [Fact]
    public async Task Code_that_awaits_for_ever_costs_its_process_when_cancelled()
    {
        await using var session = await warm.Engine.OpenAsync(new SessionSettings(), Stop);
        var running = await session.StartAsync("await Task.Delay(-1);");
        Assert.False(await session.CancelAsync(TimeSpan.FromSeconds(1)));
        var lost = await Assert.ThrowsAsync<EngineLostException>(() => running);
        Assert.Contains("variables are lost", lost.Loss.Message);
    }

    [Fact]
    public async Task Memory_counts_the_whole_tree()
    {
        await using var engine = new ChildEngine();
        await using var session = await engine.OpenAsync(new SessionSettings(), Stop);
        var before = session.MeasureMemory();
        Assert.InRange(before, 30L << 20, 1L << 30);
        await session.RunAsync("var block = new byte[300_000_000]; Array.Fill(block, (byte)1);");
        Assert.InRange(session.MeasureMemory() - before, 250L << 20, 600L << 20);
    }
}
