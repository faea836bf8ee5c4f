using System.Text.Json;
using System.Text.Json.Nodes;
using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Outputs as nbformat stores them.</summary>
public static class OutputNodes
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

    /// <summary>A bundle's representations by MIME type; JSON as JSON.</summary>
    /// <param name="bundle">The bundle.</param>
    /// <param name="inLines">True for lists of lines, as files hold them; false for whole texts, as messages do.</param>
    /// <returns>A new object.</returns>
    public static JsonObject Data(MimeBundle bundle, bool inLines = true)
    {
        var data = new JsonObject();
        foreach (var (type, text) in bundle.Data)
            data[type] = type.EndsWith("json", StringComparison.Ordinal) ? Json(text, inLines) : Text(text, inLines);
        return data;
    }

    private static JsonNode Text(string text, bool inLines) => inLines ? MultilineText.Split(text) : JsonValue.Create(text);

    /// <summary>Text that claims to be JSON and is not is stored as the text it is.</summary>
    private static JsonNode? Json(string text, bool inLines)
    {
        try
        {
            var node = JsonNode.Parse(text, null, new JsonDocumentOptions { AllowDuplicateProperties = false });
            JsonText.CheckAll(node, "output");
            return node;
        }
        catch (Exception fault) when (fault is JsonException or NotebookFormatException)
        {
            return Text(text, inLines);
        }
    }
}
