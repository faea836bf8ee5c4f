namespace Spindlewright.Notebooks.Format;

/// <summary>How large a notebook may be before it is refused; size is looked at before anything is parsed.</summary>
/// <param name="MostBytes">Largest file, bytes.</param>
/// <param name="MostDepth">Deepest nesting of JSON objects and lists.</param>
/// <param name="MostCells">Largest number of cells.</param>
public sealed record NotebookLimits(int MostBytes = 64 * 1024 * 1024, int MostDepth = 100, int MostCells = 10_000)
{
    /// <summary>The limits used when none are named.</summary>
    public static NotebookLimits Default { get; } = new();
}
