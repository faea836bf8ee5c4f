using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;

namespace Spindlewright.Notebooks.Running;

/// <summary>How far a cell may go; watched from outside, by a clock that nobody can set.</summary>
/// <param name="CellTime">Longest time of one cell.</param>
/// <param name="OutputBytes">Most output of one cell that is kept, bytes of UTF-8; the rest is cut with a note.</param>
/// <param name="MemoryBytes">Most resident memory of the session with what it started, bytes.</param>
/// <param name="OpenTime">Longest time until a session is ready.</param>
public sealed record RunLimits(TimeSpan CellTime, long OutputBytes, long MemoryBytes, TimeSpan OpenTime)
{
    /// <summary>Two minutes, 8 MiB, 2 GiB; two minutes until a session is ready.</summary>
    public static RunLimits Default { get; } =
        new(TimeSpan.FromMinutes(2), 8L << 20, 2L << 30, TimeSpan.FromMinutes(2));
}

/// <summary>A notebook to run.</summary>
/// <param name="Source">The file to read.</param>
/// <param name="Target">The file to write, with the outputs; null writes none.</param>
/// <param name="Directory">Current directory of the cells; null for that of the program.</param>
public sealed record NotebookJob(string Source, string? Target, string? Directory = null);

/// <summary>What holds for a whole run.</summary>
public sealed record RunOptions
{
    /// <summary>How far each cell may go.</summary>
    public RunLimits Limits { get; init; } = RunLimits.Default;

    /// <summary>How large a notebook may be.</summary>
    public NotebookLimits NotebookLimits { get; init; } = NotebookLimits.Default;

    /// <summary>Values for parameters; each goes to every notebook that declares its name.</summary>
    public IReadOnlyList<ParameterSetting> Settings { get; init; } = [];

    /// <summary>Reads quantities in <see cref="Settings"/>.</summary>
    public IQuantityReader? Quantities { get; init; }

    /// <summary>Changes what cells show before it is stored; null stores it as it comes.</summary>
    public IOutputTransformer? Transformer { get; init; }

    /// <summary>How many notebooks run at the same time, 1 or more.</summary>
    public int Workers { get; init; } = 1;

    /// <summary>Receives news of the run, one at a time.</summary>
    public Action<RunProgress>? Progress { get; init; }
}
