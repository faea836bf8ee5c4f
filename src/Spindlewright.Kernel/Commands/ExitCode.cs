namespace Spindlewright.Kernel.Commands;

/// <summary>What the program's exit code says.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    internal const int Done = 0;

    /// <summary>A cell, a notebook or a check failed.</summary>
    internal const int Failed = 1;

    /// <summary>The input is wrong.</summary>
    internal const int Input = 2;

    /// <summary>A file cannot be written.</summary>
    internal const int CannotWrite = 3;

    /// <summary>The command line is wrong.</summary>
    internal const int Usage = 64;

    /// <summary>Interrupted.</summary>
    internal const int Interrupted = 130;
}
