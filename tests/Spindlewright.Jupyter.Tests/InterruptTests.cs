using Spindlewright.Jupyter.Tests.Clients;

namespace Spindlewright.Jupyter.Tests;

/// <summary>Interrupts: asked first, ended when that does not help, and what was lost is said.</summary>
public sealed class InterruptTests(KernelProcess kernel) : IClassFixture<KernelProcess>, IDisposable
{
    private const string Begun = "Console.WriteLine(\"begun\");";

    private readonly KernelClient client = kernel.Connect();

    public void Dispose() => client.Dispose();

    [Theory]
    [InlineData("while (true) ;")]
    [InlineData("for (var i = 0L; ; i++) { try { i++; } catch { } }")]
    [InlineData("Thread.Sleep(Timeout.Infinite);")]
    public void A_cell_that_can_be_stopped_is_and_its_variables_are_kept(string code)
    {
        client.Execute("var kept = 7;");
        var answer = Interrupted(code);
        Assert.Equal(("error", "Interrupted"), (answer.Status, answer.Reply.Text("ename")));
        Assert.Contains("are kept", answer.Reply.Text("evalue"));
        Assert.Single(answer.Of("error"));
        Assert.Equal("7", client.Execute("kept").Result);
    }

    [Fact]
    public void The_tightest_loop_can_be_stopped_again_and_again()
    {
        client.Execute("var kept = 7;");
        for (var round = 0; round < 3; round++)
            Assert.Contains("are kept", Interrupted("while (true) ;").Reply.Text("evalue"));
        Assert.Equal("7", client.Execute("GC.Collect(); kept").Result);
    }

    [Fact]
    public void A_cell_that_cannot_be_stopped_is_ended_and_says_that_the_variables_are_lost()
    {
        client.Execute("var lost = 7; var shown = Show(1);");
        var answer = Interrupted("await Task.Delay(Timeout.Infinite);");
        Assert.Equal(("error", "Interrupted"), (answer.Status, answer.Reply.Text("ename")));
        Assert.Contains("variables of this session are lost", answer.Reply.Text("evalue"));
        Assert.Single(answer.Of("error"));
        Assert.Equal("42", client.Execute("40 + 2").Result);
        Assert.Contains("CS0103", client.Execute("lost").Reply.Text("evalue"));
    }

    [Fact]
    public void Cells_that_wait_behind_an_interrupted_one_are_not_run()
    {
        client.Execute("var ran = 0;");
        var running = client.Begin($"{Begun} while (true) ;");
        var behind = client.Begin("ran++;");
        client.AwaitPublished(running, "stream");
        Interrupt();
        Assert.Equal("error", client.Await(running).Status);
        Assert.Equal("aborted", client.Await(behind).Status);
        Assert.Equal("0", client.Execute("ran").Result);
    }

    [Fact]
    public void An_interrupt_while_nothing_runs_changes_nothing()
    {
        Interrupt();
        Assert.Equal("2", client.Execute("1 + 1").Result);
    }

    [Fact]
    public void An_interrupt_at_once_is_not_lost()
    {
        var running = client.Begin("while (true) ;");
        client.AwaitPublished(running, "execute_input");
        Interrupt();
        Assert.Equal("Interrupted", client.Await(running).Reply.Text("ename"));
        Assert.Equal("2", client.Execute("1 + 1").Result);
    }

    [Theory]
    [InlineData("Environment.Exit(3);", "ProcessEnded")]
    [InlineData("int F(int n) => F(n + 1) + 1; F(0)", "StackOverflow")]
    public void A_cell_that_ends_its_process_says_so_and_the_next_one_works(string code, string name)
    {
        var answer = client.Execute(code);
        Assert.Equal(name, Assert.Single(answer.Of("error")).Text("ename"));
        Assert.Contains("variables of this session are lost", answer.Reply.Text("evalue"));
        Assert.Equal("2", client.Execute("1 + 1").Result);
    }

    [Fact]
    public void A_process_that_ended_between_cells_is_told_before_a_cell_runs_without_its_variables()
    {
        client.Execute("var before = 1; new Thread(() => { Thread.Sleep(300); Environment.Exit(4); }).Start();");
        Thread.Sleep(1500);
        client.Ask("is_complete_request", new() { ["code"] = "1" });
        Assert.Contains("are lost", client.Execute("Console.Write(1)").Reply.Text("evalue"));
        Assert.Equal("2", client.Execute("1 + 1").Result);
    }

    private Answer Interrupted(string code)
    {
        var running = client.Begin($"{Begun} {code}");
        client.AwaitPublished(running, "stream");
        Thread.Sleep(100);
        Interrupt();
        return client.Await(running);
    }

    private void Interrupt()
    {
        var answer = client.AskControl("interrupt_request", []);
        Assert.Equal("ok", answer.Status);
        Assert.Equal(["busy", "idle"], answer.States);
    }
}
