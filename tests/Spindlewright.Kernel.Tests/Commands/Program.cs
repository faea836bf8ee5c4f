using System.Diagnostics;

namespace Spindlewright.Kernel.Tests.Commands;

/// <summary>What a run of the program left behind.</summary>
/// <param name="ExitCode">Its exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Errors">Standard error.</param>
/// <param name="Took">How long it took.</param>
internal sealed record Ended(int ExitCode, string Output, string Errors, TimeSpan Took);

/// <summary>Runs the program as a user does: in a process of its own.</summary>
internal static class Program
{
    private static readonly DirectoryInfo NoWorkbook =
        Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "spindlewright-no-workbook", "notebooks")).Parent!;

    // The whole workbook on a machine that others use too.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(12);

    internal static Ended Run(params string[] arguments) => Run([], arguments);

    /// <summary>A run without the workbook, whose own tests stand elsewhere.</summary>
    internal static Ended Study(params string[] arguments) => Study([], arguments);

    /// <inheritdoc cref="Study(string[])"/>
    internal static Ended Study(IEnumerable<KeyValuePair<string, string>> environment, params string[] arguments) =>
        Run(environment, ["run", "--content", NoWorkbook.FullName, .. arguments]);

    internal static Ended Run(IEnumerable<KeyValuePair<string, string>> environment, params string[] arguments)
    {
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(Start(environment, arguments))!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        Assert.True(process.WaitForExit(Patience), "the program did not end");
        return new(process.ExitCode, output.Result, errors.Result, watch.Elapsed);
    }

    internal static ProcessStartInfo Start(IEnumerable<KeyValuePair<string, string>> environment, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "Spindlewright.Kernel.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        return start;
    }
}

/// <summary>A folder of its own that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    internal TemporaryFolder() => Path = Directory.CreateTempSubdirectory("spindlewright-test-").FullName;

    internal string Path { get; }

    internal string File(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
