using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace Spindlewright.Jupyter.Tests;

/// <summary>A notebook server of its own, without a network but the loopback.</summary>
internal sealed class JupyterServer : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Process process;

    private JupyterServer(Process process, int port) => (this.process, Address) = (process, new Uri($"http://127.0.0.1:{port}/"));

    public Uri Address { get; }

    public Process Process => process;

    /// <summary>Starts a server that offers a folder and waits until it answers.</summary>
    public static async Task<JupyterServer> StartAsync(string jupyterData, string folder)
    {
        var port = FreePort();
        var start = Installed.Describe(
            Installed.Python(),
            [
                "-m", "notebook", "--no-browser", "--allow-root", "--ip=127.0.0.1", $"--port={port.ToString(CultureInfo.InvariantCulture)}",
                "--NotebookApp.token=", "--NotebookApp.password=", $"--notebook-dir={folder}",
            ],
            jupyterData);
        var process = Process.Start(start)!;
        // Nobody reads what it says; a full pipe would stop it.
        _ = process.StandardOutput.ReadToEndAsync();
        _ = process.StandardError.ReadToEndAsync();
        var server = new JupyterServer(process, port);
        await server.AnswersAsync();
        return server;
    }

    /// <summary>The process numbers of the kernels it runs, with their own.</summary>
    public int[] Kernels() => [.. Children(process.Id).SelectMany(child => Children(child).Prepend(child))];

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill();
        process.WaitForExit();
        process.Dispose();
    }

    private async Task AnswersAsync()
    {
        using var client = new HttpClient();
        var clock = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                if ((await client.GetAsync(new Uri(Address, "api"), TestContext.Current.CancellationToken)).IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException)
            {
                // Not yet.
            }

            Assert.True(clock.Elapsed < Patience && !process.HasExited, "The notebook server does not answer.");
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
    }

    private static IEnumerable<int> Children(int parent) =>
        Directory.EnumerateDirectories("/proc").Select(Path.GetFileName)
            .Where(name => int.TryParse(name, CultureInfo.InvariantCulture, out _))
            .Where(name => Parent(name!) == parent).Select(name => int.Parse(name!, CultureInfo.InvariantCulture));

    private static int Parent(string id)
    {
        try
        {
            var text = File.ReadAllText($"/proc/{id}/stat");
            return int.Parse(text[(text.LastIndexOf(')') + 4)..].Split(' ')[0], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
