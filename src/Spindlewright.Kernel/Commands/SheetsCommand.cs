using System.Collections.Immutable;
using System.CommandLine;
using Spindlewright.Figures.Sheets;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Printing;
using Spindlewright.Kernel.Report;
using Spindlewright.Notebooks.Format;
using Spindlewright.Studies;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>sheets</c>: speed plate, wall charts, drill-and-tap table and machine card, to print and hang up.</summary>
internal static class SheetsCommand
{
    private static readonly Option<string?> Machine = new("--machine", "-m")
    {
        Description = "The machine file (TOML); the boatyard bench that comes with this project where left out.",
        HelpName = "FILE",
    };

    private static readonly Option<string> Output = new("--out", "-o")
    {
        Description = "The folder to write; the sheets lie in its folder sheets.",
        HelpName = "DIR",
        DefaultValueFactory = _ => "out",
    };

    internal static Command Build()
    {
        var command = new Command("sheets", "Draws the sheets for the workshop wall as SVG and as pages to print, and prints them to PDF where a Chromium is present.")
        {
            Machine, Output,
        };
        command.SetAction((parsed, cancellation) =>
            RunAsync(parsed.GetValue(Machine), parsed.GetValue(Output)!, new Voice(), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string? machine, string folder, Voice voice, CancellationToken cancellation)
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
        try
        {
            var results = voice.InSteps("Studies", StudyResults.Steps.Count, step => StudyResults.Of(press, handbook, progress: step));
            var sheets = WallSheets.All(results, handbook);
            foreach (var file in SheetFiles.Of(sheets)) AtomicFile.Write(Path.Combine(folder, file.Name), file.Bytes);
            await PrintAsync(folder, sheets, voice, cancellation).ConfigureAwait(false);
            voice.Say(Cautions.Sections[1].Lines[0]);
            voice.Say($"Sheets: {Path.Combine(folder, SheetFiles.Folder)}");
            return ExitCode.Done;
        }
        catch (PartException fault)
        {
            voice.Complain($"{fault.Message} Nothing was written.");
            return ExitCode.Input;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            voice.Complain($"Cannot write to {folder}: {error.Message}");
            return ExitCode.CannotWrite;
        }
    }

    private static async Task PrintAsync(
        string folder, ImmutableArray<PrintedSheet> sheets, Voice voice, CancellationToken cancellation)
    {
        if (PagePrinter.Find(Environment.GetEnvironmentVariable("PATH")) is not { } printer)
        {
            voice.Say("No Chromium is present, so no PDF was made: open the pages in a browser and print them at 100 %.");
            return;
        }
        for (var i = 0; i < sheets.Length; i++)
        {
            voice.Say(FormattableString.Invariant($"Printing {i + 1}/{sheets.Length}: {sheets[i].Title}"));
            var pdf = await printer.PrintAsync(sheets[i].Html(), cancellation).ConfigureAwait(false);
            AtomicFile.Write(Path.Combine(folder, SheetFiles.Folder, $"{sheets[i].Id}.pdf"), pdf);
        }
    }
}
