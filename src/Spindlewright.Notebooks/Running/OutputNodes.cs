using System.Text.Json;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Outputs as nbformat stores them.</summary>
internal static class OutputNodes
{
    internal static JsonObject Stream(StreamName name, string text) => new()
    {
        ["name"] = name == StreamName.Stdout ? "stdout" : "stderr",
        ["output_type"] = "stream",
        ["text"] = MultilineText.Split(text),
    };

    internal static JsonObject Display(MimeBundle bundle) => new()
    {
        ["data"] = Data(bundle),
        ["metadata"] = new JsonObject(),
        ["output_type"] = "display_data",
    };

    internal static JsonObject Result(MimeBundle bundle, int executionCount) => new()
    {
        ["data"] = Data(bundle),
        ["execution_count"] = executionCount,
        ["metadata"] = new JsonObject(),
        ["output_type"] = "execute_result",
    };

    internal static JsonObject Error(string name, string message, IEnumerable<string> traceback) => new()
    {
        ["ename"] = name,
        ["evalue"] = message,
        ["output_type"] = "error",
        ["traceback"] = new JsonArray([.. traceback.Select(line => (JsonNode)line)]),
    };

    internal static JsonObject Data(MimeBundle bundle)
    {
        var data = new JsonObject();
        foreach (var (type, text) in bundle.Data)
            data[type] = type.EndsWith("json", StringComparison.Ordinal) ? Json(text) : MultilineText.Split(text);
        return data;
    }

    /// <summary>Text that claims to be JSON and is not is stored as the text it is.</summary>
    private static JsonNode? Json(string text)
    {
        try
        {
            var node = JsonNode.Parse(text, null, new JsonDocumentOptions { AllowDuplicateProperties = false });
            JsonText.CheckAll(node, "output");
            return node;
        }
        catch (Exception fault) when (fault is JsonException or NotebookFormatException)
        {
            return MultilineText.Split(text);
        }
    }
}
