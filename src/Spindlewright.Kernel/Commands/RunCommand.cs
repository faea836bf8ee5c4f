using System.CommandLine;
using Spindlewright.Checks;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Report;
using Spindlewright.Notebooks.Parameters;
using Spindlewright.Notebooks.Running;
using Spindlewright.Studies;
using UnitsNet;

namespace Spindlewright.Kernel.Commands;

/// <summary><c>run</c>: from a machine file to results, figures, a report and executed notebooks.</summary>
internal static class RunCommand
{
    private static readonly Argument<string[]> NotebookFiles = new("NOTEBOOK")
    {
        Description = "Notebooks to execute; where none is named, the whole workbook beside the report.",
        Arity = ArgumentArity.ZeroOrMore,
        Validators =
        {
            // A mistyped option would otherwise pass for the name of a notebook.
            result =>
            {
                foreach (var token in result.Tokens.Where(token => token.Value.StartsWith('-')))
                    result.AddError($"There is no option {token.Value}.");
            },
        },
    };

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

    private static readonly Option<string[]> Set = new("--set")
    {
        Description = "A value for a parameter of a notebook; may stand several times.",
        HelpName = "NAME=VALUE",
    };

    private static readonly Option<Duration> TimeLimit = new("--time-limit")
    {
        Description = "Longest time of one cell, with its unit.",
        HelpName = "TIME",
        DefaultValueFactory = _ => Duration.FromMinutes(2),
        CustomParser = argument =>
        {
            if (QuantityReader.TryRead(argument.Tokens[0].Value, QuantityKinds.Duration, out var limit, out var fault)
                && limit.Seconds is > 0 and <= 86_400)
                return limit;
            argument.AddError($"--time-limit: {fault?.What ?? "not between 0 and a day"}; accepted: a time such as \"5 s\".");
            return default;
        },
    };

    private static readonly Option<string?> Content = new("--content")
    {
        Description = "The folder that holds notebooks/ and data/; the nearest one upwards where left out.",
        HelpName = "DIR",
    };

    internal static Command Build()
    {
        var command = new Command("run", "Runs the studies of a machine and the workbook; writes results, figures, a report and the executed notebooks.")
        {
            NotebookFiles, Machine, Output, Set, TimeLimit, Seed, Content,
        };
        command.SetAction((parsed, cancellation) => RunAsync(parsed, new Voice(), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parsed, Voice voice, CancellationToken cancellation)
    {
        var (handbook, folder) = (Handbook.FromEmbedded(), parsed.GetValue(Output)!);
        var input = MachineInput.Read(parsed.GetValue(Machine), handbook);
        if (input.Reading.Press is not { } press)
        {
            input.Complain(voice);
            voice.Complain("Nothing was written.");
            return ExitCode.Input;
        }

        if (NotebooksFault(parsed) is { } wrong)
        {
            voice.Complain(wrong);
            return ExitCode.Input;
        }

        try
        {
            var workbook = new WorkbookRun(folder, Notebooks(parsed), Settings(parsed), parsed.GetValue(TimeLimit), voice);
            // Before the studies: where no folder can be made, nobody waits for results.
            Directory.CreateDirectory(folder);
            foreach (var warning in press.Warnings) voice.Stress($"First: {warning}");
            if (IsNamed(parsed)) return await workbook.NamedAsync(input, cancellation).ConfigureAwait(false);
            var results = voice.InSteps(
                "Studies", StudyResults.Steps.Count, step => StudyResults.Of(press, handbook, parsed.GetValue(Seed), step, cancellation));
            var notebooks = await workbook.WholeAsync(input, cancellation).ConfigureAwait(false);
            return Finish(folder, input, results, notebooks, handbook, voice);
        }
        catch (ParameterException faults)
        {
            foreach (var fault in faults.Faults) voice.Complain(fault);
            return ExitCode.Input;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            voice.Complain($"Cannot write to {folder}: {error.Message}");
            return ExitCode.CannotWrite;
        }
    }

    private static bool IsNamed(ParseResult parsed) => parsed.GetValue(NotebookFiles)!.Length > 0;

    private static IReadOnlyList<string> Notebooks(ParseResult parsed) => IsNamed(parsed)
        ? parsed.GetValue(NotebookFiles)!
        : WorkbookFiles.In(parsed.GetValue(Content) ?? ContentRoot.Find(Environment.CurrentDirectory));

    /// <summary>What is wrong with the choice of notebooks; null when nothing is.</summary>
    private static string? NotebooksFault(ParseResult parsed)
    {
        if (parsed.GetValue(Content) is { } content && !Directory.Exists(Path.Combine(content, WorkbookFiles.Folder)))
            return $"--content: {content} holds no folder {WorkbookFiles.Folder}; accepted: the folder above {WorkbookFiles.Folder}/.";
        // Both would be written to one place, and the first would be lost.
        var twice = parsed.GetValue(NotebookFiles)!.GroupBy(Path.GetFileNameWithoutExtension, StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(same => same.Count() > 1);
        return twice is null
            ? null
            : $"Two notebooks are named {twice.Key}: {string.Join(" and ", twice)}; accepted: names that differ, or one run for each.";
    }

    private static List<ParameterSetting> Settings(ParseResult parsed) =>
        [.. (parsed.GetValue(Set) ?? []).Select(ParameterSetting.Parse)];

    private static int Finish(
        string folder, MachineInput input, StudyResults results, IReadOnlyList<NotebookResult> notebooks,
        Handbook handbook, Voice voice)
    {
        var verdicts = voice.InSteps("Checks", 1, step =>
        {
            step("published figures");
            return CheckRunner.RunAll(handbook);
        });
        var (pages, links) = WorkbookFiles.Of(notebooks);
        ReportFiles.Write(folder, [.. ReportFiles.Of(input, results, verdicts, handbook, links), .. pages], input);
        foreach (var finding in results.Findings) voice.Say($"{finding.Title}: {finding.Text}");
        voice.Say(CheckSummary.Sentence(verdicts));
        voice.Say(Cautions.Sections[1].Lines[0]);
        voice.Say($"Report: {Path.Combine(folder, "index.html")}");
        var failed = verdicts.Any(verdict => verdict.Outcome == Outcome.Fail) ? ExitCode.Failed : ExitCode.Done;
        return Math.Max(failed, NotebookResult.ExitCode(notebooks));
    }
}
