using System.CommandLine;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>check</c>: reads a machine file and says every fault, or what it came to.</summary>
internal static class CheckCommand
{
    private static readonly Argument<string> Input = new("FILE") { Description = "The machine file (TOML)." };

    internal static Command Build()
    {
        var command = new Command("check", "Reads a machine file and lists every fault with its line.") { Input };
        command.SetAction(parsed => Run(parsed.GetValue(Input)!, new Voice()));
        return command;
    }

    private static int Run(string file, Voice voice)
    {
        var input = MachineInput.Read(file, Handbook.FromEmbedded());
        if (input.Reading.Press is not { } press)
        {
            input.Complain(voice);
            return ExitCode.Input;
        }

        foreach (var warning in press.Warnings) voice.Stress($"First: {warning}");
        voice.Say($"{file}: no fault. {press.Title}: {press.Belts.Count} belt positions, {press.Work.Count} holes, {press.Defaults.Count} defaults stand in for what is not given.");
        return ExitCode.Done;
    }
}
