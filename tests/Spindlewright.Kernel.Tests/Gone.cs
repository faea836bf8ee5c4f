using System.Diagnostics;
using System.Globalization;

namespace Spindlewright.Kernel.Tests;

/// <summary>Whether processes have ended.</summary>
internal static class Gone
{
    public static bool IsAlive(int id)
    {
        try
        {
            var text = File.ReadAllText($"/proc/{id}/stat");
            return text[text.LastIndexOf(')') + 2] is not ('Z' or 'X');
        }
        catch (IOException)
        {
            return false;
        }
    }

    /// <summary>Every live process that inherited a variable of the environment, given as <c>name=value</c>.</summary>
    public static int[] Carrying(string variable) =>
    [
        .. Directory.EnumerateDirectories("/proc").Select(Path.GetFileName)
            .Select(name => int.TryParse(name, CultureInfo.InvariantCulture, out var id) ? id : 0)
            .Where(id => id != 0 && IsAlive(id) && Environ(id).Contains(variable, StringComparison.Ordinal)),
    ];

    /// <summary>
    /// How long a killed process may take to be gone. On a quiet machine it is well under two seconds; what is looked for is
    /// a process that stays, so a loaded machine gets more.
    /// </summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    public static Task SoonAsync(params int[] ids) => SoonAsync(() => [.. ids.Where(IsAlive)]);

    public static async Task SoonAsync(Func<int[]> alive)
    {
        var clock = Stopwatch.StartNew();
        while (alive() is { Length: > 0 } left)
        {
            Assert.True(clock.Elapsed < Patience, $"Alive after {clock.Elapsed}: {string.Join(' ', left)}");
            await Task.Delay(20);
        }
    }

    private static string Environ(int id)
    {
        try
        {
            return File.ReadAllText($"/proc/{id}/environ");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return ""; // ended meanwhile, or somebody else's
        }
    }
}
