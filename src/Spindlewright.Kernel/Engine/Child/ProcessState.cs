using System.Collections;
using System.Globalization;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>What cells can change in their process: kept at its start, put back when a session begins.</summary>
internal sealed class ProcessState
{
    private readonly Dictionary<string, string> environment = ReadEnvironment();
    private readonly string directory = Directory.GetCurrentDirectory();

    /// <summary>Puts everything back.</summary>
    /// <param name="sessionDirectory">The current directory to set; null for the one of the start.</param>
    internal void Restore(string? sessionDirectory)
    {
        foreach (var name in ReadEnvironment().Keys.Where(name => !environment.ContainsKey(name)))
            Environment.SetEnvironmentVariable(name, null);
        foreach (var (name, value) in environment)
            Environment.SetEnvironmentVariable(name, value);
        Directory.SetCurrentDirectory(sessionDirectory ?? directory);
        RestoreCulture();
        Environment.ExitCode = 0;
    }

    /// <summary>Sets the invariant culture for this thread and for those to come.</summary>
    internal static void RestoreCulture()
    {
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
    }

    private static Dictionary<string, string> ReadEnvironment() =>
        Environment.GetEnvironmentVariables().Cast<DictionaryEntry>()
            .ToDictionary(entry => (string)entry.Key, entry => (string?)entry.Value ?? "");
}
