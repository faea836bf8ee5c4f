using System.Diagnostics;

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

    public static async Task WithinAsync(TimeSpan time, params int[] ids)
    {
        var clock = Stopwatch.StartNew();
        while (ids.Any(IsAlive))
        {
            Assert.True(clock.Elapsed < time, $"Alive after {clock.Elapsed}: {string.Join(' ', ids.Where(IsAlive))}");
            await Task.Delay(20);
        }
    }
}
