using Spindlewright.Kernel.Engine.Child;

namespace Spindlewright.Kernel.Engine;

/// <summary>How the child process is started: the same program, with a word of its own.</summary>
/// <param name="Program">The executable.</param>
/// <param name="Arguments">Its first arguments; the ends of the pipes follow.</param>
public sealed record ChildCommand(string Program, IReadOnlyList<string> Arguments)
{
    /// <summary>Finds the executable beside this assembly, or else the runtime that can load the assembly.</summary>
    /// <returns>The command.</returns>
    public static ChildCommand Find()
    {
        var assembly = typeof(ChildCommand).Assembly.Location;
        var host = Path.ChangeExtension(assembly, OperatingSystem.IsWindows() ? ".exe" : null);
        if (File.Exists(host))
            return new ChildCommand(host, [ChildEntry.Word]);
        var runtime = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        return new ChildCommand(runtime, [assembly, ChildEntry.Word]);
    }
}
