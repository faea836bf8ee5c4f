using System.Globalization;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Notebooks.Running;

/// <summary>News of a run.</summary>
/// <param name="Notebook">Name of the notebook.</param>
public abstract record RunProgress(string Notebook);

/// <summary>A notebook begins.</summary>
/// <param name="Notebook">Name of the notebook.</param>
/// <param name="CodeCells">How many cells will run.</param>
public sealed record NotebookStarted(string Notebook, int CodeCells) : RunProgress(Notebook);

/// <summary>A cell begins.</summary>
/// <param name="Notebook">Name of the notebook.</param>
/// <param name="Cell">Its number among the code cells, from 1.</param>
/// <param name="CodeCells">How many cells will run.</param>
public sealed record CellStarted(string Notebook, int Cell, int CodeCells) : RunProgress(Notebook);

/// <summary>A notebook has ended.</summary>
/// <param name="Notebook">Name of the notebook.</param>
/// <param name="Result">What came of it.</param>
public sealed record NotebookFinished(string Notebook, NotebookResult Result) : RunProgress(Notebook);

/// <summary>How a notebook ended.</summary>
public enum NotebookOutcome
{
    /// <summary>Every cell ran.</summary>
    Done,

    /// <summary>A cell failed or went too far.</summary>
    Failed,

    /// <summary>The file is no notebook that can be read.</summary>
    Refused,

    /// <summary>The result could not be written.</summary>
    NotWritten,

    /// <summary>The run was interrupted.</summary>
    Interrupted,
}

/// <summary>Where and why a notebook failed.</summary>
/// <param name="Notebook">Name of the notebook.</param>
/// <param name="Cell">Number of the cell that ran, among the code cells from 1; null when the file is meant.</param>
/// <param name="Place">The same cell as the file counts, such as <c>cell 3 (id "ab")</c>; empty when the file is meant.</param>
/// <param name="Line">Line of the cell from 1; null when unknown.</param>
/// <param name="Name">Kind of error.</param>
/// <param name="Message">What went wrong.</param>
public sealed record RunFault(string Notebook, int? Cell, string Place, int? Line, string Name, string Message)
{
    /// <summary>Says it in one line.</summary>
    /// <returns>Notebook, cell, line, kind and message.</returns>
    public override string ToString()
    {
        var cell = Cell is { } number
            ? string.Create(CultureInfo.InvariantCulture, $": [{number}], {Place}") : "";
        var line = Line is { } at ? string.Create(CultureInfo.InvariantCulture, $", line {at}") : "";
        return Name.Length == 0 ? $"{Notebook}{cell}{line}: {Message}" : $"{Notebook}{cell}{line}: {Name}: {Message}";
    }
}

/// <summary>What came of one notebook.</summary>
/// <param name="Job">What was asked.</param>
/// <param name="Name">Name of the notebook.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Fault">Where and why it failed; null when it did not.</param>
/// <param name="Executed">The notebook with its outputs, up to a failing cell; null when it could not be read.</param>
public sealed record NotebookResult(
    NotebookJob Job, string Name, NotebookOutcome Outcome, RunFault? Fault, Notebook? Executed)
{
    /// <summary>The exit code of a run.</summary>
    /// <param name="results">What came of its notebooks.</param>
    /// <returns>130 interrupted, 3 not written, 1 a cell failed, 2 a notebook refused, 0 done; the first that holds.</returns>
    public static int ExitCode(IReadOnlyList<NotebookResult> results)
    {
        (NotebookOutcome, int)[] codes =
        [
            (NotebookOutcome.Interrupted, 130), (NotebookOutcome.NotWritten, 3),
            (NotebookOutcome.Failed, 1), (NotebookOutcome.Refused, 2),
        ];
        return codes.FirstOrDefault(code => results.Any(result => result.Outcome == code.Item1)).Item2;
    }
}
