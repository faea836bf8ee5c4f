using System.Diagnostics;
using System.Globalization;
using Spindlewright.Jupyter.Tests.Clients;
using Spindlewright.Kernel.Tests;

namespace Spindlewright.Jupyter.Tests;

/// <summary>How a kernel ends, and that nothing of it is left.</summary>
public sealed class LifetimeTests
{
    private const string StartsAnother = "Console.Write(System.Diagnostics.Process.Start(\"sleep\", \"1000\").Id);";

    [Fact]
    public async Task A_shutdown_is_answered_and_leaves_no_process()
    {
        await using var kernel = new KernelProcess();
        using var client = kernel.Connect();
        var ids = Processes(kernel, client);
        var answer = client.AskControl("shutdown_request", new() { ["restart"] = false });
        Assert.Equal(("ok", false), (answer.Status, answer.Reply.Content["restart"]!.GetValue<bool>()));
        Assert.Single(answer.Of("shutdown_reply"));
        await Gone.SoonAsync(ids);
        await kernel.Process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, kernel.Process.ExitCode);
    }

    [Fact]
    public async Task A_shutdown_ends_a_kernel_that_is_at_work()
    {
        await using var kernel = new KernelProcess();
        using var client = kernel.Connect();
        var ids = Processes(kernel, client);
        client.AwaitPublished(client.Begin("Console.WriteLine(1); while (true) ;"), "stream");
        Assert.Equal("ok", client.AskControl("shutdown_request", new() { ["restart"] = false }).Status);
        await Gone.SoonAsync(ids);
    }

    [Fact]
    public async Task After_a_restart_the_same_ports_serve_a_kernel_without_variables()
    {
        await using var first = new KernelProcess();
        using (var client = first.Connect())
        {
            client.Execute("var before = 1;");
            Assert.True(client.AskControl("shutdown_request", new() { ["restart"] = true }).Reply.Content["restart"]!.GetValue<bool>());
            await Gone.SoonAsync(first.Id);
        }

        await using var second = new KernelProcess(first.Connection);
        using var again = second.Connect();
        var answer = again.Execute("before");
        Assert.Equal(1, answer.Count);
        Assert.Contains("CS0103", answer.Reply.Text("evalue"));
    }

    [Theory]
    [InlineData("KILL", "Console.WriteLine(1);")]
    [InlineData("KILL", "Console.WriteLine(1); while (true) ;")]
    [InlineData("TERM", "Console.WriteLine(1);")]
    [InlineData("TERM", "Console.WriteLine(1); while (true) ;")]
    public async Task Nothing_is_left_of_a_kernel_that_is_killed(string how, string code)
    {
        await using var kernel = new KernelProcess();
        using var client = kernel.Connect();
        var ids = Processes(kernel, client);
        client.AwaitPublished(client.Begin(code), "stream");
        using var killing = Process.Start("kill", ["-s", how, kernel.Id.ToString(CultureInfo.InvariantCulture)]);
        await Gone.SoonAsync(ids);
    }

    [Theory]
    [InlineData("Console.WriteLine(1);")]
    [InlineData("Console.WriteLine(1); while (true) ;")]
    public async Task Nothing_is_left_when_the_server_is_killed(string code)
    {
        using var server = Process.Start("sleep", "1000");
        await using var kernel = new KernelProcess(null, server.Id);
        using var client = kernel.Connect();
        var ids = Processes(kernel, client);
        client.AwaitPublished(client.Begin(code), "stream");
        server.Kill();
        await Gone.SoonAsync(ids);
    }

    [Fact]
    public async Task A_kernel_whose_server_ended_before_it_began_ends_too()
    {
        using var server = Process.Start("sleep", "0");
        await server.WaitForExitAsync(TestContext.Current.CancellationToken);
        await using var kernel = new KernelProcess(null, server.Id);
        await Gone.SoonAsync(kernel.Id);
    }

    [Theory]
    [InlineData("no such file", null, "Cannot read the connection file")]
    [InlineData("c.json", "{", "Cannot read the connection file")]
    [InlineData("c.json", "[]", "not a JSON object")]
    [InlineData("c.json", """{"transport":"ipc"}""", "transport is \"ipc\"; accepted: \"tcp\"")]
    [InlineData("c.json", """{"signature_scheme":"hmac-md5"}""", "accepted: \"hmac-sha256\"")]
    [InlineData("c.json", """{"shell_port":70000}""", "shell_port is missing or no port; accepted: a number from 1 to 65535")]
    public void A_connection_file_that_cannot_be_used_is_refused_with_the_reason(string name, string? text, string reason)
    {
        var folder = Directory.CreateTempSubdirectory("spindlewright-jupyter-").FullName;
        try
        {
            var file = Path.Combine(folder, name);
            if (text is not null)
                File.WriteAllText(file, text);
            var ended = Installed.RunProgram(folder, "jupyter", "serve", file);
            Assert.Equal(2, ended.ExitCode);
            Assert.Contains(reason, ended.Errors);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task A_port_that_is_taken_is_named()
    {
        await using var first = new KernelProcess();
        using var client = first.Connect();
        await using var second = new KernelProcess(first.Connection, errors: true);
        Assert.Contains("Cannot listen at tcp://127.0.0.1:", await second.Process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await second.Process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(1, second.Process.ExitCode);
    }

    /// <summary>The kernel, its process for cells, and a process that a cell started.</summary>
    private static int[] Processes(KernelProcess kernel, KernelClient client)
    {
        var started = int.Parse(client.Execute(StartsAnother).Stdout, CultureInfo.InvariantCulture);
        var cells = int.Parse(client.Execute("Environment.ProcessId").Result!, CultureInfo.InvariantCulture);
        int[] ids = [kernel.Id, cells, started];
        Assert.All(ids, id => Assert.True(Gone.IsAlive(id)));
        Assert.Equal(3, ids.Distinct().Count());
        return ids;
    }
}
