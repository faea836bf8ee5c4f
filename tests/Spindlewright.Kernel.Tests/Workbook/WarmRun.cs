using Spindlewright.Kernel.Engine;
using Spindlewright.Kernel.Showing;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Workbook;

/// <summary>Notebooks one after the other in one child that serves them all.</summary>
internal static class WarmRun
{
    /// <summary>Runs them; nothing is written.</summary>
    /// <param name="notebooks">Their files.</param>
    /// <param name="directory">Where the cells run and look for a machine file.</param>
    internal static async Task<IReadOnlyList<NotebookResult>> OfAsync(IEnumerable<string> notebooks, string directory)
    {
        await using var engine = new ChildEngine(reuse: true);
        var runner = new NotebookRunner(engine, new RunOptions { Transformer = new FigureDrawing() });
        return await runner.RunAsync([.. notebooks.Select(source => new NotebookJob(source, null, directory))]);
    }
}
