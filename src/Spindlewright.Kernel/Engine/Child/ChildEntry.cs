using System.Globalization;
using System.IO.Pipes;
using Spindlewright.Kernel.Engine.Processes;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Where the same program begins when it is started as the child that runs cells.</summary>
public static class ChildEntry
{
    /// <summary>The first argument that means the child; not a command for people.</summary>
    public const string Word = "engine-child";

    /// <summary>Says whether the program was started as a child.</summary>
    /// <param name="args">The program's arguments.</param>
    /// <returns>True when the first is <see cref="Word"/>.</returns>
    public static bool IsChild(IReadOnlyList<string> args) => args.Count > 0 && args[0] == Word;

    /// <summary>Serves requests until the parent closes the connection.</summary>
    /// <param name="args">The program's arguments: the word and the two ends of the private pipes.</param>
    /// <param name="formatters">How values of the project's own types are shown.</param>
    /// <returns>The exit code; 64 when it was not a parent that started it.</returns>
    public static int Run(IReadOnlyList<string> args, params IReadOnlyList<IChildFormatters> formatters)
    {
        var mark = Environment.GetEnvironmentVariable(ProcessTree.MarkVariable);
        if (args.Count != 3 || mark is null)
        {
            Console.Error.WriteLine("This entry is for the program itself; use the command \"run\".");
            return 64;
        }

        var tree = new ProcessTree(Environment.ProcessId, mark);
        Lifeline.Hold(tree);
        using var input = Open(PipeDirection.In, args[1]);
        using var output = Open(PipeDirection.Out, args[2]);
        using var channel = new MessageChannel(input, output);
        using var server = new ChildServer(channel, formatters, tree);
        server.Serve();
        if (OperatingSystem.IsLinux())
            tree.KillFromWithin();
        return 0;
    }

    private static AnonymousPipeClientStream Open(PipeDirection direction, string handle)
    {
        if (OperatingSystem.IsLinux())
            Native.CloseWhenStartingOthers(int.Parse(handle, CultureInfo.InvariantCulture));
        return new AnonymousPipeClientStream(direction, handle);
    }
}
