using System.Diagnostics;
using System.Globalization;
using Microsoft.Win32.SafeHandles;
using Spindlewright.Kernel.Engine.Processes;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Tells when the server that started the kernel is gone, however it went.</summary>
internal static class ParentWatch
{
    /// <summary>Where a server leaves its process number, or on Windows a handle of its process.</summary>
    internal const string Variable = "JPY_PARENT_PID";

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(250);

    /// <summary>Waits for the end of the server; for ever when nobody left a number.</summary>
    /// <param name="cancellation">Ends the waiting.</param>
    internal static async Task WaitAsync(CancellationToken cancellation)
    {
        var told = Environment.GetEnvironmentVariable(Variable);
        if (!long.TryParse(told, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number <= 1)
            await Task.Delay(Timeout.Infinite, cancellation).ConfigureAwait(false);
        else if (OperatingSystem.IsLinux())
            await WatchTableAsync((int)number, cancellation).ConfigureAwait(false);
        else if (OperatingSystem.IsWindows())
            await Task.Run(() => WaitForHandle((nint)number), cancellation).WaitAsync(cancellation).ConfigureAwait(false);
        else
            await WaitForProcessAsync((int)number, cancellation).ConfigureAwait(false);
    }

    /// <summary>A number may be taken by a later process, and one that has ended may still stand in the table.</summary>
    private static async Task WatchTableAsync(int id, CancellationToken cancellation)
    {
        var first = ProcessTree.ReadEntry(id);
        while (first is not null && ProcessTree.ReadEntry(id) is { IsDead: false } now && now.Started == first.Value.Started)
            await Task.Delay(Look, cancellation).ConfigureAwait(false);
    }

    private static void WaitForHandle(nint handle)
    {
        using var parent = new EventWaitHandle(false, EventResetMode.ManualReset);
        parent.SafeWaitHandle = new SafeWaitHandle(handle, ownsHandle: false);
        parent.WaitOne();
    }

    private static async Task WaitForProcessAsync(int id, CancellationToken cancellation)
    {
        try
        {
            using var parent = Process.GetProcessById(id);
            await parent.WaitForExitAsync(cancellation).ConfigureAwait(false);
        }
        catch (ArgumentException)
        {
            // It has ended already.
        }
    }
}
