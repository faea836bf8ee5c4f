using System.CommandLine;
using Spindlewright.Kernel.Engine;
using Spindlewright.Kernel.Jupyter.Serving;
using Spindlewright.Kernel.Jupyter.Wire;
using Spindlewright.Kernel.Showing;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>jupyter</c>: the kernel for Jupyter and for editors that speak its protocol.</summary>
internal static class JupyterCommand
{
    private static readonly Argument<string> Connection = new("CONNECTION")
    {
        Description = "The connection file that the server wrote.",
    };

    internal static Command Build() => new("jupyter", "The kernel for Jupyter and for editors that speak its protocol.")
    {
        JupyterSpecCommands.Install(),
        JupyterSpecCommands.Uninstall(),
        Serve(),
    };

    private static Command Serve()
    {
        var command = new Command("serve", "Serves one kernel; a Jupyter server starts it, not a person.") { Connection };
        command.SetAction((parsed, cancellation) => ServeAsync(parsed.GetValue(Connection)!, new Voice(), cancellation));
        return command;
    }

    private static async Task<int> ServeAsync(string connection, Voice voice, CancellationToken cancellation)
    {
        try
        {
            var at = ConnectionFile.Read(connection);
            using var gone = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            await using var engine = new ChildEngine();
            await using var server = new KernelServer(at, engine, new FigureDrawing(), voice.Complain);
            var serving = server.ServeAsync(gone.Token);
            await Task.WhenAny(serving, ParentWatch.WaitAsync(gone.Token)).ConfigureAwait(false);
            await gone.CancelAsync().ConfigureAwait(false);
            await serving.ConfigureAwait(false);
            return ExitCode.Done;
        }
        catch (ConnectionFileException wrong)
        {
            voice.Complain(wrong.Message);
            return ExitCode.Input;
        }
        catch (IOException taken)
        {
            voice.Complain(taken.Message);
            return ExitCode.Failed;
        }
    }
}
