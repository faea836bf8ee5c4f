using System.Globalization;
using NetMQ;
using NetMQ.Sockets;

namespace Spindlewright.Kernel.Jupyter.Wire;

/// <summary>The five sockets of a kernel, on one thread that never runs a cell and never draws.</summary>
/// <remarks>
/// No queue is bounded: the library would drop what is published beyond a bound without a word, and a cell's output is
/// bounded where it arises.
/// </remarks>
internal sealed class KernelSockets : IDisposable
{
    private static readonly TimeSpan Linger = TimeSpan.FromSeconds(1);

    private readonly RouterSocket shell = new();
    private readonly RouterSocket control = new();
    private readonly RouterSocket stdin = new();
    private readonly RouterSocket heartbeat = new();
    private readonly PublisherSocket ioPub = new();
    private readonly NetMQQueue<Action> work = new();
    private readonly NetMQPoller poller;
    private readonly Action<List<byte[]>> onShell;
    private readonly Lock closing = new();
    private bool isClosed;

    /// <summary>Listens.</summary>
    /// <param name="at">Where.</param>
    /// <param name="onShell">Takes what arrives on the shell; called on the thread of the sockets.</param>
    /// <param name="onControl">Takes what arrives on the control channel; called on the thread of the sockets.</param>
    /// <exception cref="IOException">A port is taken.</exception>
    internal KernelSockets(ConnectionFile at, Action<List<byte[]>> onShell, Action<List<byte[]>> onControl)
    {
        this.onShell = onShell;
        Bind(shell, at.Ip, at.Shell);
        Bind(control, at.Ip, at.Control);
        Bind(stdin, at.Ip, at.Stdin);
        Bind(heartbeat, at.Ip, at.Heartbeat);
        Bind(ioPub, at.Ip, at.IoPub);
        shell.ReceiveReady += (_, _) => onShell(Receive(shell));
        control.ReceiveReady += (_, _) => onControl(Receive(control));
        stdin.ReceiveReady += (_, _) => Receive(stdin);
        heartbeat.ReceiveReady += (_, _) => Send(heartbeat, Receive(heartbeat));
        work.ReceiveReady += (_, _) => work.Dequeue()!();
        poller = [shell, control, stdin, heartbeat, ioPub, work];
        poller.RunAsync("jupyter sockets", isBackgroundThread: true);
    }

    /// <summary>Answers on the shell.</summary>
    internal void SendShell(IReadOnlyList<byte[]> frames) => Do(() => Send(shell, frames));

    /// <summary>Answers on the control channel.</summary>
    internal void SendControl(IReadOnlyList<byte[]> frames) => Do(() => Send(control, frames));

    /// <summary>Publishes.</summary>
    internal void Publish(IReadOnlyList<byte[]> frames) => Do(() => Send(ioPub, frames));

    /// <summary>Hands on what has reached the shell by now, and then does something, in one go.</summary>
    /// <param name="then">What is done on the thread of the sockets.</param>
    internal void AfterReceiving(Action then) => Do(() =>
    {
        var frames = new List<byte[]>();
        while (shell.TryReceiveMultipartBytes(ref frames!))
        {
            onShell(frames);
            frames = [];
        }

        then();
    });

    /// <summary>Sends what is waiting, and lets go of the ports.</summary>
    public void Dispose()
    {
        using (var done = new ManualResetEventSlim())
        {
            Do(done.Set);
            lock (closing)
                isClosed = true;
            done.Wait(Linger);
        }

        poller.Dispose();
        NetMQSocket[] all = [shell, control, stdin, heartbeat, ioPub];
        foreach (var socket in all)
            socket.Dispose();
        work.Dispose();
        NetMQConfig.Cleanup(block: true);
    }

    /// <summary>Does something on the thread of the sockets; what a cell still says after the end is dropped.</summary>
    private void Do(Action action)
    {
        lock (closing)
            if (!isClosed)
                work.Enqueue(action);
    }

    private static void Bind(NetMQSocket socket, string ip, int port)
    {
        socket.Options.Linger = Linger;
        socket.Options.SendHighWatermark = 0;
        socket.Options.ReceiveHighWatermark = 0;
        if (socket is RouterSocket)
            socket.Options.RouterHandover = true;
        var address = string.Create(CultureInfo.InvariantCulture, $"tcp://{ip}:{port}");
        try
        {
            socket.Bind(address);
        }
        catch (NetMQException fault)
        {
            throw new IOException($"Cannot listen at {address}: {fault.Message}", fault);
        }
    }

    private static List<byte[]> Receive(RouterSocket socket) => socket.ReceiveMultipartBytes();

    private static void Send(NetMQSocket socket, IReadOnlyList<byte[]> frames)
    {
        var message = new NetMQMessage(frames.Count);
        foreach (var frame in frames)
            message.Append(frame);
        // A client that has gone away is no reason to wait.
        socket.TrySendMultipartMessage(message);
    }
}
