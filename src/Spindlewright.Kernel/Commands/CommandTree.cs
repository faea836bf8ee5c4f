using System.CommandLine;

namespace Spindlewright.Kernel.Commands;

/// <summary>The whole command line.</summary>
internal static class CommandTree
{
    internal static RootCommand Build() => new(
        "Studies a belt-driven bench drill run from a three-phase motor on an inverter. It compares computed figures with published ones; it approves nothing.")
    {
        RunCommand.Build(),
        SheetsCommand.Build(),
        CheckCommand.Build(),
        NewCommand.Build(),
        JupyterCommand.Build(),
    };

    /// <summary>Parses and runs; a wrong command line is said in plain words and ends with its own exit code.</summary>
    internal static int Run(string[] args)
    {
        var parsed = Build().Parse(args);
        if (parsed.Errors.Count == 0) return parsed.Invoke();
        var voice = new Voice();
        foreach (var error in parsed.Errors) voice.Complain(error.Message);
        voice.Complain("Ask with --help for what is accepted.");
        return ExitCode.Usage;
    }
}
