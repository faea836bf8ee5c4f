using Spindlewright.Kernel.Engine;
using Spindlewright.Kernel.Report;
using Spindlewright.Kernel.Showing;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;
using Spindlewright.Notebooks.Running;
using UnitsNet;

namespace Spindlewright.Kernel.Commands;

/// <summary>Executes notebooks for <c>run</c> and tells how it goes.</summary>
internal sealed class WorkbookRun
{
    private readonly string folder;
    private readonly IReadOnlyList<NotebookJob> jobs;
    private readonly RunOptions options;
    private readonly Voice voice;

    /// <summary>Prepares a run.</summary>
    /// <param name="folder">The output folder, where cells run too.</param>
    /// <param name="notebooks">The files.</param>
    /// <param name="settings">Values for parameters.</param>
    /// <param name="timeLimit">Longest time of one cell.</param>
    /// <param name="voice">Where news is told.</param>
    /// <exception cref="ParameterException">A value fits no notebook; nothing ran, nothing was written.</exception>
    internal WorkbookRun(
        string folder, IReadOnlyList<string> notebooks, IReadOnlyList<ParameterSetting> settings, Duration timeLimit,
        Voice voice)
    {
        (this.folder, this.voice) = (folder, voice);
        var full = Path.GetFullPath(folder);
        jobs = [.. notebooks.Select(source => new NotebookJob(source, WorkbookFiles.Target(folder, source), full))];
        options = new RunOptions
        {
            Limits = RunLimits.Default with { CellTime = timeLimit.ToTimeSpan() },
            Settings = settings,
            Quantities = new TypedQuantities(),
            Transformer = new FigureDrawing(),
            Workers = Math.Min(2, Environment.ProcessorCount),
            Progress = Tell,
        };
        NotebookRunner.Check(jobs, options);
    }

    /// <summary>Executes the whole workbook in children that serve one notebook after another.</summary>
    /// <param name="input">The machine file.</param>
    /// <param name="cancellation">Interrupts the run.</param>
    internal Task<IReadOnlyList<NotebookResult>> WholeAsync(MachineInput input, CancellationToken cancellation) =>
        ExecuteAsync(input, reuse: true, cancellation);

    /// <summary>Executes the notebooks that a user named, each in a child of its own, and writes their pages.</summary>
    /// <param name="input">The machine file.</param>
    /// <param name="cancellation">Interrupts the run.</param>
    /// <returns>The exit code.</returns>
    internal async Task<int> NamedAsync(MachineInput input, CancellationToken cancellation)
    {
        var results = await ExecuteAsync(input, reuse: false, cancellation).ConfigureAwait(false);
        foreach (var page in WorkbookFiles.Of(results).Pages)
        {
            AtomicFile.Write(Path.Combine(folder, page.Name), page.Bytes);
            voice.Say($"Page: {Path.Combine(folder, page.Name)}");
        }
        return NotebookResult.ExitCode(results);
    }

    private async Task<IReadOnlyList<NotebookResult>> ExecuteAsync(
        MachineInput input, bool reuse, CancellationToken cancellation)
    {
        if (jobs.Count == 0) return [];
        // Cells run in the output folder, where they find the machine file.
        var machine = ReportFiles.Machine(input);
        AtomicFile.Write(Path.Combine(folder, machine.Name), machine.Bytes);
        await using var engine = new ChildEngine(reuse: reuse);
        return await new NotebookRunner(engine, options).RunAsync(jobs, cancellation).ConfigureAwait(false);
    }

    private void Tell(RunProgress news)
    {
        switch (news)
        {
            case NotebookStarted started:
                voice.Say(FormattableString.Invariant($"Notebook {started.Notebook}: {started.CodeCells} cells"));
                break;
            case CellStarted cell:
                voice.Say(FormattableString.Invariant($"Notebook {cell.Notebook}: cell {cell.Cell}/{cell.CodeCells}"));
                break;
            case NotebookFinished { Result.Fault: { } fault }:
                voice.Complain(fault.ToString());
                break;
        }
    }
}
