using System.Reflection;
using System.Text.Json.Nodes;
using Spindlewright.Kernel.Jupyter.Spec;
using Spindlewright.Kernel.Jupyter.Wire;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>What the kernel says of itself.</summary>
internal static class KernelFacts
{
    private static readonly string Release = typeof(KernelFacts).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>The answer to <c>kernel_info_request</c>.</summary>
    internal static JsonObject Answer() => new()
    {
        ["status"] = "ok",
        ["protocol_version"] = WireFormat.Version,
        ["implementation"] = KernelSpec.Name,
        ["implementation_version"] = Release,
        ["banner"] = $"Spindlewright {Release}, C#. The library stands ready; a name with a question mark behind it is explained.",
        ["help_links"] = new JsonArray(),
        ["language_info"] = new JsonObject
        {
            ["name"] = KernelSpec.Language,
            ["version"] = "14.0",
            ["mimetype"] = "text/x-csharp",
            ["file_extension"] = ".cs",
            ["pygments_lexer"] = "csharp",
            ["codemirror_mode"] = "text/x-csharp",
            ["nbconvert_exporter"] = "script",
        },
    };
}
