using Spindlewright.Jupyter.Tests.Clients;

namespace Spindlewright.Jupyter.Tests;

/// <summary>Who is heard, and who is not.</summary>
public sealed class WireTests(KernelProcess kernel) : IClassFixture<KernelProcess>, IDisposable
{
    private const string Mark = "Console.Write(\"run\");";

    private readonly KernelClient client = kernel.Connect();

    public void Dispose() => client.Dispose();

    [Fact]
    public void The_heartbeat_echoes() => Assert.True(client.Beats());

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void A_message_changed_after_signing_is_dropped(int frame)
    {
        var (id, frames) = client.Frames("execute_request", new() { ["code"] = Mark });
        frames[frame][^2] ^= 1;
        client.Send(frames);
        Assert.Equal("ok", client.Execute("0").Status);
        Assert.False(client.IsAnswered(id));
    }

    [Fact]
    public void A_message_sent_again_is_dropped()
    {
        var (id, frames) = client.Frames("execute_request", new() { ["code"] = Mark });
        client.Send(frames);
        var first = client.Await(id);
        client.Send(frames);
        client.Send(frames, onControl: true);
        // Two replies to one request fail in the client.
        Assert.Equal(first.Count + 1, client.Execute("0").Count);
    }

    [Fact]
    public void Frames_that_are_no_message_are_dropped()
    {
        client.Send([[1, 2, 3]]);
        client.Send(["<IDS|MSG>"u8.ToArray(), [], [], []]);
        client.Send([[], "<IDS|MSG>"u8.ToArray(), [255], [254], [], [], []]);
        Assert.Equal("ok", client.Execute("0").Status);
    }

    [Fact]
    public void A_kind_of_message_that_is_not_known_is_passed_over()
    {
        var id = client.Send("of_no_such_kind", []);
        Assert.Equal(["busy", "idle"], client.AwaitIdle(id).Select(each => each.Text("execution_state")));
        Assert.False(client.IsAnswered(id));
    }

    [Fact]
    public void Two_clients_share_the_variables_and_each_gets_its_own_answers()
    {
        using var other = kernel.Connect();
        client.Execute("var shared = 1;");
        var mine = Enumerable.Range(0, 20).Select(i => client.Begin($"shared += 1; \"mine {i}\"")).ToList();
        var theirs = Enumerable.Range(0, 20).Select(i => other.Begin($"shared += 1; \"theirs {i}\"")).ToList();
        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"mine {i}"), mine.Select(id => client.Await(id).Result));
        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"theirs {i}"), theirs.Select(id => other.Await(id).Result));
        Assert.Equal("41", other.Execute("shared").Result);
        var seen = client.Begin("0");
        client.Await(seen);
        other.AwaitPublished(seen, "execute_result");
        Assert.False(other.IsAnswered(seen));
    }

    [Fact]
    public void Two_hundred_cells_wait_and_those_behind_an_error_are_not_run()
    {
        client.Execute("var ran = 0;");
        var before = Enumerable.Range(0, 100).Select(_ => client.Begin("ran++;")).ToList();
        var failing = client.Begin("throw new Exception(\"here\");");
        var behind = Enumerable.Range(0, 100).Select(_ => client.Begin("ran++;")).ToList();
        Assert.All(before, id => Assert.Equal("ok", client.Await(id).Status));
        Assert.Equal("error", client.Await(failing).Status);
        Assert.All(behind, id => Assert.Equal("aborted", client.Await(id).Status));
        Assert.Equal("100", client.Execute("ran").Result);
    }

    [Fact]
    public void Cells_behind_an_error_run_where_the_client_wants_it()
    {
        var failing = client.Begin("throw new Exception(\"here\");", stop: false);
        var behind = client.Begin("\"went on\"");
        Assert.Equal("error", client.Await(failing).Status);
        Assert.Equal("went on", client.Await(behind).Result);
    }

    [Fact]
    public void An_error_of_one_client_does_not_stop_the_cells_of_another()
    {
        using var other = kernel.Connect();
        var failing = client.Begin("Thread.Sleep(500); throw new Exception(\"here\");");
        client.AwaitPublished(failing, "execute_input");
        var behind = other.Begin("\"theirs\"");
        Assert.Equal("error", client.Await(failing).Status);
        Assert.Equal("theirs", other.Await(behind).Result);
    }
}
