using System.Diagnostics;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using NetMQ;
using NetMQ.Sockets;

namespace Spindlewright.Jupyter.Tests.Clients;

/// <summary>A client of the protocol, written from its description and not from the kernel.</summary>
internal sealed class KernelClient : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();

    private readonly DealerSocket shell = new();
    private readonly DealerSocket control = new();
    private readonly SubscriberSocket ioPub = new();
    private readonly RequestSocket heartbeat = new();
    private readonly List<ReceivedMessage> published = [];
    private readonly Dictionary<string, ReceivedMessage> replies = [];
    private readonly byte[] key;
    private readonly string session = Guid.NewGuid().ToString("N");

    public KernelClient(JsonObject connection)
    {
        key = Encoding.UTF8.GetBytes(connection["key"]!.GetValue<string>());
        foreach (var (socket, port) in new (NetMQSocket, string)[]
                 { (shell, "shell_port"), (control, "control_port"), (ioPub, "iopub_port"), (heartbeat, "hb_port") })
        {
            socket.Options.ReceiveHighWatermark = 0;
            socket.Options.SendHighWatermark = 0;
            socket.Connect($"tcp://127.0.0.1:{connection[port]!.GetValue<int>()}");
        }

        ioPub.SubscribeToAnyTopic();
        WaitUntilHeard();
    }

    /// <summary>Asks on the shell and waits for the answer and for everything published.</summary>
    public Answer Ask(string type, JsonObject content) => Await(Send(type, content));

    /// <summary>Asks on the control channel.</summary>
    public Answer AskControl(string type, JsonObject content) => Await(Send(type, content, onControl: true));

    public Answer Execute(
        string code, bool silent = false, bool store = true, bool stop = true, JsonObject? expressions = null) =>
        Await(Begin(code, silent, store, stop, expressions));

    /// <summary>Sends a cell and does not wait.</summary>
    public string Begin(
        string code, bool silent = false, bool store = true, bool stop = true, JsonObject? expressions = null) =>
        Send("execute_request", new JsonObject
        {
            ["code"] = code, ["silent"] = silent, ["store_history"] = store, ["stop_on_error"] = stop,
            ["user_expressions"] = expressions ?? [], ["allow_stdin"] = false,
        });

    public string Send(string type, JsonObject content, bool onControl = false)
    {
        var (id, frames) = Frames(type, content);
        Send(frames, onControl);
        return id;
    }

    /// <summary>Sends frames as they are.</summary>
    public void Send(IEnumerable<byte[]> frames, bool onControl = false) =>
        (onControl ? control : shell).SendMultipartBytes(frames);

    /// <summary>Makes the frames of a message, signed.</summary>
    public (string Id, List<byte[]> Frames) Frames(string type, JsonObject content)
    {
        var id = Guid.NewGuid().ToString("N");
        var header = new JsonObject
        {
            ["msg_id"] = id, ["session"] = session, ["username"] = "tester", ["msg_type"] = type,
            ["date"] = "2025-01-01T00:00:00Z", ["version"] = "5.3",
        };
        byte[][] parts = [Bytes(header), "{}"u8.ToArray(), "{}"u8.ToArray(), Bytes(content)];
        var signature = HMACSHA256.HashData(key, parts.SelectMany(part => part).ToArray());
        return (id, [Delimiter, Encoding.ASCII.GetBytes(Convert.ToHexStringLower(signature)), .. parts]);
    }

    /// <summary>Waits for the reply to a request and for its end.</summary>
    public Answer Await(string id)
    {
        Until(() => replies.ContainsKey(id) && published.Any(each => IsIdle(each) && each.ParentId == id), $"answer to {id}");
        return new Answer(replies[id], [.. published.Where(each => each.ParentId == id)]);
    }

    /// <summary>Waits for the end of a request that has no reply.</summary>
    public IReadOnlyList<ReceivedMessage> AwaitIdle(string id)
    {
        Until(() => published.Any(each => IsIdle(each) && each.ParentId == id), $"end of {id}");
        return [.. published.Where(each => each.ParentId == id)];
    }

    /// <summary>Waits until something was published for a request.</summary>
    public void AwaitPublished(string id, string type) =>
        Until(() => published.Any(each => each.ParentId == id && each.Type == type), $"{type} of {id}");

    public bool IsAnswered(string id)
    {
        Drain();
        return replies.ContainsKey(id);
    }

    /// <summary>True when the heartbeat echoes.</summary>
    public bool Beats()
    {
        heartbeat.SendFrame("beat");
        return heartbeat.TryReceiveFrameString(TimeSpan.FromSeconds(5), out var echo) && echo == "beat";
    }

    public void Dispose()
    {
        foreach (var socket in new NetMQSocket[] { shell, control, ioPub, heartbeat })
        {
            socket.Options.Linger = TimeSpan.Zero;
            socket.Dispose();
        }
    }

    /// <summary>A subscription takes effect some time after it was made.</summary>
    private void WaitUntilHeard()
    {
        var clock = Stopwatch.StartNew();
        while (published.Count == 0)
        {
            Assert.True(clock.Elapsed < Patience, "The kernel published nothing.");
            Send("kernel_info_request", []);
            Thread.Sleep(50);
            Drain();
        }
    }

    private void Until(Func<bool> isDone, string what)
    {
        var clock = Stopwatch.StartNew();
        while (!isDone())
        {
            Assert.True(clock.Elapsed < Patience, $"No {what} came.");
            if (!Drain())
                Thread.Sleep(2);
        }
    }

    private bool Drain()
    {
        var any = false;
        foreach (var socket in new[] { shell, control })
            while (Receive(socket) is { } reply)
            {
                any = true;
                Assert.True(replies.TryAdd(reply.ParentId!, reply), $"Two replies to {reply.ParentId}.");
            }

        while (Receive(ioPub) is { } news)
        {
            any = true;
            published.Add(news);
        }

        return any;
    }

    private ReceivedMessage? Receive(NetMQSocket socket)
    {
        List<byte[]>? frames = null;
        if (!socket.TryReceiveMultipartBytes(ref frames!))
            return null;
        var at = frames!.FindIndex(frame => frame.AsSpan().SequenceEqual(Delimiter));
        var parts = frames.Skip(at + 2).Take(4).ToList();
        Assert.Equal(
            Convert.ToHexStringLower(HMACSHA256.HashData(key, parts.SelectMany(part => part).ToArray())),
            Encoding.ASCII.GetString(frames[at + 1]));
        return new ReceivedMessage(Object(parts[0]), Object(parts[1]), Object(parts[3]));
    }

    private static bool IsIdle(ReceivedMessage message) =>
        message.Type == "status" && message.Text("execution_state") == "idle";

    private static JsonObject Object(byte[] part) => JsonNode.Parse(part)!.AsObject();

    private static byte[] Bytes(JsonObject node) => Encoding.UTF8.GetBytes(node.ToJsonString());
}
