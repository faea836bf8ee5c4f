using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Runs notebooks in an engine, each in a session of its own, and writes them with their outputs.</summary>
/// <remarks>One failing notebook does not stop the others; its outputs up to the failing cell are kept.</remarks>
/// <param name="engine">Where the cells run; not disposed here.</param>
/// <param name="options">What holds for the run.</param>
public sealed class NotebookRunner(IExecutionEngine engine, RunOptions options)
{
    /// <summary>The tag of a cell that is meant to fail, so that the notebook goes on.</summary>
    public const string FailureExpectedTag = "raises-exception";

    private readonly Lock telling = new();

    /// <summary>Checks that every setting fits a notebook, without running or writing anything.</summary>
    /// <param name="jobs">The notebooks; those that cannot be read are passed over, since running them tells why.</param>
    /// <param name="options">The settings, and how they are read.</param>
    /// <exception cref="ParameterException">A setting fits no notebook.</exception>
    public static void Check(IEnumerable<NotebookJob> jobs, RunOptions options) =>
        Settings.Distribute([.. jobs.Select(job => Read(job, options).Item1).OfType<Notebook>()], options);

    /// <summary>Runs the notebooks.</summary>
    /// <param name="jobs">The notebooks.</param>
    /// <param name="cancellation">Interrupts the run; what ran so far is still written.</param>
    /// <returns>What came of each, in the order of <paramref name="jobs"/>.</returns>
    /// <exception cref="ParameterException">A setting fits no notebook; nothing ran.</exception>
    public async Task<IReadOnlyList<NotebookResult>> RunAsync(
        IReadOnlyList<NotebookJob> jobs, CancellationToken cancellation = default)
    {
        var results = new NotebookResult?[jobs.Count];
        var notebooks = new Notebook?[jobs.Count];
        for (var index = 0; index < jobs.Count; index++)
            (notebooks[index], results[index]) = Read(jobs[index], options);
        Settings.Distribute([.. notebooks.OfType<Notebook>()], options);
        await Parallel.ForEachAsync(
            Enumerable.Range(0, jobs.Count),
            new ParallelOptions { MaxDegreeOfParallelism = Math.Max(options.Workers, 1) },
            async (index, _) =>
            {
                var result = results[index]
                    ?? Write(await RunAsync(jobs[index], notebooks[index]!, cancellation).ConfigureAwait(false));
                results[index] = result;
                Tell(new NotebookFinished(result.Name, result));
            }).ConfigureAwait(false);
        return results!;
    }

    private static (Notebook?, NotebookResult?) Read(NotebookJob job, RunOptions options)
    {
        try
        {
            return (NotebookReader.ReadFile(job.Source, options.NotebookLimits), null);
        }
        catch (NotebookFormatException fault)
        {
            var told = fault.Message[(fault.Notebook.Length + 2)..];
            return (null, new NotebookResult(job, fault.Notebook, NotebookOutcome.Refused,
                new RunFault(fault.Notebook, null, "", null, "", told), null));
        }
    }

    private async Task<NotebookResult> RunAsync(NotebookJob job, Notebook notebook, CancellationToken cancellation)
    {
        foreach (var cell in notebook.Cells)
            cell.ClearOutputs();
        var cells = notebook.Cells.Where(cell => cell.Kind == CellKind.Code && cell.Source.AsSpan().Trim().Length > 0).ToList();
        Tell(new NotebookStarted(notebook.Name, cells.Count));
        try
        {
            cancellation.ThrowIfCancellationRequested();
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            patience.CancelAfter(options.Limits.OpenTime);
            var settings = new SessionSettings(job.Directory, options.Limits.MemoryBytes);
            var session = await engine.OpenAsync(settings, patience.Token).ConfigureAwait(false);
            await using (session.ConfigureAwait(false))
                return await RunCellsAsync(job, notebook, cells, session, cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            var told = cancellation.IsCancellationRequested
                ? new EngineLoss("Interrupted", "The run was interrupted.")
                : new EngineLoss("EngineNotStarted", "The process for cells was not ready in time.");
            return Failed(job, notebook, told, cancellation);
        }
        catch (EngineLostException lost)
        {
            return Failed(job, notebook, lost.Loss, cancellation);
        }
    }

    private async Task<NotebookResult> RunCellsAsync(
        NotebookJob job, Notebook notebook, List<Cell> cells, IExecutionSession session, CancellationToken cancellation)
    {
        var displays = new Dictionary<string, JsonObject>();
        for (var index = 0; index < cells.Count; index++)
        {
            var (cell, count) = (cells[index], index + 1);
            Tell(new CellStarted(notebook.Name, count, cells.Count));
            var collector = new OutputCollector(count, options.Limits.OutputBytes, options.Transformer, displays);
            var error = await CellRun.RunAsync(session, cell, collector, count, options.Limits, cancellation)
                .ConfigureAwait(false);
            if (error is null || (cell.Tags.Contains(FailureExpectedTag) && !cancellation.IsCancellationRequested))
                continue;
            // The error may lie in a function of an earlier cell: the line is then that of the earlier cell.
            var at = error.Cell is { } number && number <= cells.Count ? number : count;
            var fault = new RunFault(
                notebook.Name, at, cells[at - 1].ToString(), error.Line, error.Name, error.Message);
            var outcome = cancellation.IsCancellationRequested ? NotebookOutcome.Interrupted : NotebookOutcome.Failed;
            return new NotebookResult(job, notebook.Name, outcome, fault, notebook);
        }

        return new NotebookResult(job, notebook.Name, NotebookOutcome.Done, null, notebook);
    }

    private static NotebookResult Failed(
        NotebookJob job, Notebook notebook, EngineLoss loss, CancellationToken cancellation) => new(
        job, notebook.Name,
        cancellation.IsCancellationRequested ? NotebookOutcome.Interrupted : NotebookOutcome.Failed,
        new RunFault(notebook.Name, null, "", null, loss.Name, loss.Message), notebook);

    private static NotebookResult Write(NotebookResult result)
    {
        // Where no cell ran there is nothing to show, and what an earlier run wrote stays.
        if (result.Job.Target is not { } target || result.Fault is { Cell: null })
            return result;
        try
        {
            AtomicFile.Write(target, result.Executed!.ToBytes());
            return result;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return result with
            {
                Outcome = NotebookOutcome.NotWritten,
                Fault = new RunFault(result.Name, null, "", null, "", $"cannot be written: {fault.Message}"),
            };
        }
    }

    private void Tell(RunProgress news)
    {
        lock (telling)
            options.Progress?.Invoke(news);
    }
}
