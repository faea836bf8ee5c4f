using Spindlewright.Kernel.Engine.Processes;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Ties the child's life to its parent's: standard input ends when the parent does.</summary>
internal static class Lifeline
{
    /// <summary>
    /// Makes the child the root of a tree of its own and starts the thread that ends the tree when standard input ends.
    /// Cells find an empty standard input.
    /// </summary>
    /// <param name="tree">The tree of this process.</param>
    internal static void Hold(ProcessTree tree)
    {
        var descriptor = 0;
        if (OperatingSystem.IsLinux())
        {
            _ = Native.NewSession();
            Native.AdoptOrphans();
            Native.ForbidCoreFiles();
            descriptor = Native.MoveOutOfReach(0);
            Native.Replace(0, "/dev/null");
        }

        new Thread(() => Wait(tree, descriptor)) { IsBackground = true, Name = "lifeline", Priority = ThreadPriority.Highest }
            .Start();
    }

    private static void Wait(ProcessTree tree, int descriptor)
    {
        if (OperatingSystem.IsLinux())
        {
            Native.WaitForEnd(descriptor);
            tree.KillFromWithin();
        }

        using var input = Console.OpenStandardInput();
        while (input.ReadByte() >= 0)
        {
        }

        System.Diagnostics.Process.GetCurrentProcess().Kill(entireProcessTree: true);
    }
}
