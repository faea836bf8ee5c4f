using System.Diagnostics;
using System.Globalization;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Runs one cell and holds it to its limits.</summary>
internal static class CellRun
{
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(100);

    /// <summary>Runs the cell and stores its outputs in it.</summary>
    /// <param name="session">Where it runs.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="collector">Gathers its outputs.</param>
    /// <param name="executionCount">The cell's number.</param>
    /// <param name="limits">How far it may go.</param>
    /// <param name="cancellation">Interrupts the run.</param>
    /// <returns>The error; null when the cell ran to its end.</returns>
    internal static async Task<ErrorEvent?> RunAsync(
        IExecutionSession session, Cell cell, OutputCollector collector, int executionCount, RunLimits limits,
        CancellationToken cancellation)
    {
        try
        {
            var running = session.ExecuteAsync(cell.Source, executionCount, collector.Add, CancellationToken.None);
            await WatchAsync(session, running, limits, cancellation).ConfigureAwait(false);
            if (await running.ConfigureAwait(false) == Outcome.Cancelled)
                collector.Add(new EngineLoss("Cancelled", "The cell was stopped.").ToError(executionCount));
        }
        catch (EngineLostException lost)
        {
            collector.Add(lost.Loss.ToError(executionCount));
        }

        cell.ExecutionCount = executionCount;
        cell.Node["outputs"] = collector.Finish();
        return collector.Error;
    }

    private static async Task WatchAsync(
        IExecutionSession session, Task running, RunLimits limits, CancellationToken cancellation)
    {
        var clock = Stopwatch.StartNew();
        while (!running.IsCompleted)
        {
            var left = limits.CellTime - clock.Elapsed;
            if (Reason(session, left, limits, cancellation) is { } reason)
                session.Kill(reason);
            var nap = left > TimeSpan.Zero && left < Look ? left : Look;
            await Task.WhenAny(running, Task.Delay(nap, CancellationToken.None)).ConfigureAwait(false);
        }
    }

    private static EngineLoss? Reason(
        IExecutionSession session, TimeSpan left, RunLimits limits, CancellationToken cancellation)
    {
        if (cancellation.IsCancellationRequested)
            return new EngineLoss("Interrupted", "The run was interrupted.");
        if (left <= TimeSpan.Zero)
            return new EngineLoss("TimeLimit", string.Create(CultureInfo.InvariantCulture,
                $"The cell ran longer than {limits.CellTime.TotalSeconds} s and was stopped."));
        return session.MeasureMemory() <= limits.MemoryBytes
            ? null
            : new EngineLoss("MemoryLimit", string.Create(CultureInfo.InvariantCulture,
                $"The cell used more than {limits.MemoryBytes >> 20} MiB of memory and was stopped."));
    }
}
