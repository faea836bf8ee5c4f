using System.CommandLine;
using Spindlewright.Checks;
using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Report;
using Spindlewright.Studies;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>run</c>: from a machine file to results, figures and a report.</summary>
internal static class RunCommand
{
    private static readonly Option<string?> Machine = new("--machine", "-m")
    {
        Description = "The machine file (TOML); the boatyard bench that comes with this project where left out.",
        HelpName = "FILE",
    };

    private static readonly Option<string> Output = new("--out", "-o")
    {
        Description = "The folder to write.",
        HelpName = "DIR",
        DefaultValueFactory = _ => "out",
    };

    private static readonly Option<ulong> Seed = new("--seed")
    {
        Description = "Seed of everything drawn at random.",
        DefaultValueFactory = _ => StudyResults.DefaultSeed,
    };

    internal static Command Build()
    {
        var command = new Command("run", "Runs the studies of a machine and writes results, figures and a report.") { Machine, Output, Seed };
        command.SetAction(parsed => Run(
            parsed.GetValue(Machine), parsed.GetValue(Output)!, parsed.GetValue(Seed), new Voice()));
        return command;
    }

    private static int Run(string? machine, string folder, ulong seed, Voice voice)
    {
        var handbook = Handbook.FromEmbedded();
        var input = MachineInput.Read(machine, handbook);
        if (input.Reading.Press is not { } press)
        {
            input.Complain(voice);
            voice.Complain("Nothing was written.");
            return ExitCode.Input;
        }

        foreach (var warning in press.Warnings) voice.Stress($"First: {warning}");
        var results = voice.InSteps(
            "Studies", StudyResults.Steps.Count, step => StudyResults.Of(press, handbook, seed, step));
        var verdicts = voice.InSteps("Checks", 1, step =>
        {
            step("published figures");
            return CheckRunner.RunAll(handbook);
        });
        return Write(folder, ReportFiles.Of(results, verdicts, handbook, []), input, voice)
            ? Report(results, verdicts, folder, voice)
            : ExitCode.CannotWrite;
    }

    private static bool Write(string folder, IReadOnlyList<ReportFile> files, MachineInput input, Voice voice)
    {
        try
        {
            ReportFiles.Write(folder, files, input.Bytes, input.Name);
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            voice.Complain($"Cannot write to {folder}: {error.Message}");
            return false;
        }
    }

    private static int Report(StudyResults results, IReadOnlyList<Verdict> verdicts, string folder, Voice voice)
    {
        foreach (var finding in results.Findings) voice.Say($"{finding.Title}: {finding.Text}");
        voice.Say(CheckSummary.Sentence(verdicts));
        voice.Say(Cautions.Sections[1].Lines[0]);
        voice.Say($"Report: {Path.Combine(folder, "index.html")}");
        return verdicts.Any(verdict => verdict.Outcome == Outcome.Fail) ? ExitCode.Failed : ExitCode.Done;
    }
}
