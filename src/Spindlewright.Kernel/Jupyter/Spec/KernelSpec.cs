using System.Runtime.InteropServices;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Spindlewright.Figures.Interactive;
using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Format;

namespace Spindlewright.Kernel.Jupyter.Spec;

/// <summary>The folder by which Jupyter knows a kernel.</summary>
internal static class KernelSpec
{
    /// <summary>The kernel's name, which notebooks carry.</summary>
    internal const string Name = "spindlewright";

    /// <summary>The language's name, which notebooks carry.</summary>
    internal const string Language = "csharp";

    /// <summary>The words of the command line that start the kernel, without the connection file.</summary>
    internal static IReadOnlyList<string> ServeWords { get; } = ["jupyter", "serve"];

    private const string SpecFile = "kernel.json";

    private static readonly JsonSerializerOptions Readable = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    // The one that makes the folder a kernel comes last.
    private static readonly (string Name, Func<string> Text)[] Files =
    [
        ("plotly.min.js", () => PlotlyScript.Source),
        ("plotly.min.js.LICENSE.txt", () => PlotlyScript.Licence),
        ("kernel.js", PageScript.Write),
        (SpecFile, Describe),
    ];

    /// <summary>Writes the folder; who looks at any moment finds a whole kernel, the old one or the new, or none.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">Writing there is not permitted.</exception>
    internal static void Install(string folder)
    {
        foreach (var (name, text) in Files)
            AtomicFile.Write(Path.Combine(folder, name), Encoding.UTF8.GetBytes(text()));
    }

    /// <summary>Removes what <see cref="Install"/> wrote, and the folder unless something else lies in it.</summary>
    /// <param name="folder">The folder.</param>
    /// <returns>False when no such kernel is there.</returns>
    /// <exception cref="IOException">A file cannot be removed.</exception>
    /// <exception cref="UnauthorizedAccessException">Removing is not permitted.</exception>
    internal static bool Uninstall(string folder)
    {
        if (!File.Exists(Path.Combine(folder, SpecFile)))
            return false;
        foreach (var (name, _) in Files.Reverse())
            File.Delete(Path.Combine(folder, name));
        if (!Directory.EnumerateFileSystemEntries(folder).Any())
            Directory.Delete(folder);
        return true;
    }

    private static string Describe()
    {
        var command = ChildCommand.Find();
        // The last of its words means the child that runs cells.
        var words = command.Arguments.SkipLast(1).Concat(ServeWords).Prepend(command.Program).Append("{connection_file}");
        var spec = new JsonObject
        {
            ["argv"] = new JsonArray([.. words.Select(word => (JsonNode)word)]),
            ["display_name"] = "Spindlewright (C#)",
            ["env"] = new JsonObject { ["DOTNET_ROOT"] = RuntimeRoot() },
            ["interrupt_mode"] = "message",
            ["language"] = Language,
            ["metadata"] = new JsonObject { ["debugger"] = false },
        };
        return $"{spec.ToJsonString(Readable)}\n";
    }

    /// <summary>Where this program found its runtime; a server may not have it in its environment.</summary>
    private static string RuntimeRoot() =>
        Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
}
