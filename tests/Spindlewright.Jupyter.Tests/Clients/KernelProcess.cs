using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;

namespace Spindlewright.Jupyter.Tests.Clients;

/// <summary>A kernel started as a server starts it.</summary>
public sealed class KernelProcess : IAsyncDisposable
{
    private readonly string file;
    private readonly Process process;

    public KernelProcess() : this(null)
    {
    }

    internal KernelProcess(JsonObject? connection, int? parent = null, bool errors = false)
    {
        Connection = connection ?? NewConnection();
        file = Path.Combine(Path.GetTempPath(), $"spindlewright-test-{Guid.NewGuid():N}.json");
        File.WriteAllText(file, Connection.ToJsonString());
        var start = new ProcessStartInfo("dotnet", [Installed.ProgramFile, "jupyter", "serve", file]) { RedirectStandardError = errors };
        start.Environment.Remove("JPY_PARENT_PID");
        if (parent is { } id)
            start.Environment["JPY_PARENT_PID"] = id.ToString(CultureInfo.InvariantCulture);
        process = Process.Start(start)!;
    }

    internal JsonObject Connection { get; }

    internal int Id => process.Id;

    internal Process Process => process;

    /// <summary>A client that the kernel hears and that hears it.</summary>
    internal KernelClient Connect() => new(Connection);

    public ValueTask DisposeAsync()
    {
        if (!process.HasExited)
            process.Kill();
        process.WaitForExit();
        process.Dispose();
        File.Delete(file);
        return ValueTask.CompletedTask;
    }

    private static JsonObject NewConnection()
    {
        // All are held at once, so that no two are the same.
        var listeners = Enumerable.Range(0, 5).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToList();
        listeners.ForEach(each => each.Start());
        var ports = listeners.ConvertAll(each => ((IPEndPoint)each.LocalEndpoint).Port);
        listeners.ForEach(each => each.Dispose());
        return new JsonObject
        {
            ["transport"] = "tcp", ["ip"] = "127.0.0.1", ["signature_scheme"] = "hmac-sha256",
            ["key"] = Guid.NewGuid().ToString(), ["shell_port"] = ports[0], ["control_port"] = ports[1],
            ["iopub_port"] = ports[2], ["stdin_port"] = ports[3], ["hb_port"] = ports[4],
        };
    }
}
