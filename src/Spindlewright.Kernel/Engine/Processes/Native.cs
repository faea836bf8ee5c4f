using System.Runtime.InteropServices;

namespace Spindlewright.Kernel.Engine.Processes;

/// <summary>The few calls of the operating system that the platform's library does not offer. Linux only.</summary>
internal static class Native
{
    internal const int KillSignal = 9;
    internal const int ReadableEvent = 1;
    private const int SetDescriptorFlags = 2;
    private const int CloseOnExec = 1;
    private const int DuplicateCloseOnExec = 1030;
    private const int SetChildSubreaper = 36;
    private const int CoreFileSize = 4;
    private const int BytesReadable = 0x541B;

    internal static int NewSession() => setsid();

    internal static int Kill(int process, int signal) => kill(process, signal);

    /// <summary>Orphans of the tree become children of this process instead of the first process of the system.</summary>
    internal static void AdoptOrphans() => _ = prctl(SetChildSubreaper, 1, 0, 0, 0);

    internal static void ForbidCoreFiles()
    {
        var none = default(ResourceLimit);
        _ = setrlimit(CoreFileSize, ref none);
    }

    internal static void CloseWhenStartingOthers(int descriptor) =>
        _ = fcntl(descriptor, SetDescriptorFlags, CloseOnExec);

    /// <summary>Copies a descriptor to a free place of 10 or above that programs started later do not inherit.</summary>
    internal static int MoveOutOfReach(int descriptor) => fcntl(descriptor, DuplicateCloseOnExec, 10);

    internal static void Replace(int target, string path)
    {
        var opened = open(path, 0);
        _ = dup2(opened, target);
        _ = close(opened);
    }

    /// <summary>Blocks until the descriptor's other end is closed.</summary>
    internal static void WaitForEnd(int descriptor)
    {
        var one = new byte[1];
        while (true)
        {
            var got = read(descriptor, one, 1);
            if (got == 0 || (got < 0 && Marshal.GetLastPInvokeError() != Interrupted))
                return;
        }
    }

    internal static bool WaitReadable(int descriptor, int milliseconds)
    {
        var entry = new PollEntry { Descriptor = descriptor, Events = ReadableEvent };
        return poll(ref entry, 1, milliseconds) > 0;
    }

    internal static int CountReadable(int descriptor) => ioctl(descriptor, BytesReadable, out var count) == 0 ? count : 0;

    private const int Interrupted = 4;

    private struct ResourceLimit
    {
        public ulong Current;
        public ulong Most;
    }

    private struct PollEntry
    {
        public int Descriptor;
        public short Events;
        public short Returned;
    }

#pragma warning disable IDE1006, SYSLIB1054, CA5392
    [DllImport("libc", SetLastError = true)]
    private static extern int setsid();

    [DllImport("libc", SetLastError = true)]
    private static extern int kill(int pid, int signal);

    [DllImport("libc", SetLastError = true)]
    private static extern int prctl(int option, ulong argument2, ulong argument3, ulong argument4, ulong argument5);

    [DllImport("libc", SetLastError = true)]
    private static extern int setrlimit(int resource, ref ResourceLimit limit);

    [DllImport("libc", SetLastError = true)]
    private static extern int fcntl(int descriptor, int command, int argument);

    [DllImport("libc", SetLastError = true, CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    private static extern int open(string path, int flags);

    [DllImport("libc", SetLastError = true)]
    private static extern int dup2(int from, int to);

    [DllImport("libc", SetLastError = true)]
    private static extern int close(int descriptor);

    [DllImport("libc", SetLastError = true)]
    private static extern nint read(int descriptor, byte[] buffer, nint count);

    [DllImport("libc", SetLastError = true)]
    private static extern int poll(ref PollEntry entries, ulong count, int milliseconds);

    [DllImport("libc", SetLastError = true)]
    private static extern int ioctl(int descriptor, ulong request, out int value);
#pragma warning restore IDE1006, SYSLIB1054, CA5392
}
