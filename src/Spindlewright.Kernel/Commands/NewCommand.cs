using System.CommandLine;
using System.Text;
using Spindlewright.Machines;
using Spindlewright.Machines.Text;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>new</c>: writes a commented machine file to fill in.</summary>
internal static class NewCommand
{
    private const string Opening =
        "A machine file. Fill in what you know; what you leave out is replaced by a pair of defaults, which the report lists.";

    private static readonly Argument<string> Output = new("FILE") { Description = "The file to write; it must not exist yet." };

    internal static Command Build()
    {
        var command = new Command("new", "Writes a commented machine file to fill in.") { Output };
        command.SetAction(parsed => Run(parsed.GetValue(Output)!, new Voice()));
        return command;
    }

    private static int Run(string file, Voice voice)
    {
        if (File.Exists(file) || Directory.Exists(file))
        {
            voice.Complain($"{file} exists already and is left as it is; name a file that does not exist.");
            return ExitCode.CannotWrite;
        }

        try
        {
            AtomicFile.Write(file, Encoding.UTF8.GetBytes(SpecTemplate.Toml(MachineFile.Spec, Opening)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            voice.Complain($"Cannot write {file}: {error.Message}");
            return ExitCode.CannotWrite;
        }

        voice.Say($"{file} written. Edit it, then: spindlewright check {file}");
        return ExitCode.Done;
    }
}
