using System.CommandLine;
using Spindlewright.Kernel.Jupyter.Spec;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>jupyter install</c> and <c>jupyter uninstall</c>: make the kernel known to Jupyter, and unknown again.</summary>
internal static class JupyterSpecCommands
{
    private static readonly Option<bool> User = new("--user") { Description = "For this user (the default)." };

    private static readonly Option<string?> Prefix = new("--prefix")
    {
        Description = "For the installation below this folder: DIR/share/jupyter/kernels.",
        HelpName = "DIR",
    };

    private static readonly Option<bool> SysPrefix = new("--sys-prefix") { Description = "For the Python environment that is active." };

    internal static Command Install() => Build(
        "install", "Makes the kernel known to Jupyter.",
        (folder, voice) =>
        {
            KernelSpec.Install(folder);
            voice.Say($"{folder} written. Open a notebook and choose the kernel \"Spindlewright (C#)\".");
            return ExitCode.Done;
        });

    internal static Command Uninstall() => Build(
        "uninstall", "Removes what install wrote.",
        (folder, voice) =>
        {
            if (!KernelSpec.Uninstall(folder))
            {
                voice.Complain($"{folder} holds no such kernel; nothing was removed.");
                return ExitCode.Input;
            }

            voice.Say(Directory.Exists(folder)
                ? $"The kernel was removed; {folder} stays, since other files lie in it."
                : $"{folder} removed.");
            return ExitCode.Done;
        });

    private static Command Build(string name, string description, Func<string, Voice, int> act)
    {
        var command = new Command(name, description) { User, Prefix, SysPrefix };
        command.Validators.Add(result =>
        {
            Option[] places = [User, Prefix, SysPrefix];
            if (places.Count(each => result.GetResult(each) is { Implicit: false }) > 1)
                result.AddError("Of --user, --prefix and --sys-prefix one can stand at a time.");
        });
        command.SetAction(parsed => Run(parsed, act, new Voice()));
        return command;
    }

    private static int Run(ParseResult parsed, Func<string, Voice, int> act, Voice voice)
    {
        var prefix = parsed.GetValue(Prefix);
        var folder = parsed.GetValue(SysPrefix) ? KernelPlace.OfActivePython()
            : prefix is null ? KernelPlace.OfUser() : KernelPlace.Below(prefix);
        if (folder is null)
        {
            voice.Complain("No Python environment is active; name its folder with --prefix DIR.");
            return ExitCode.Input;
        }

        try
        {
            return act(folder, voice);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            voice.Complain($"Cannot change {folder}: {error.Message}");
            return ExitCode.CannotWrite;
        }
    }
}
