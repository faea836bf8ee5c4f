using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Unicode;

namespace Spindlewright.Notebooks.Format;

/// <summary>Reads notebooks of nbformat 4.0 to 4.5; what it does not know it keeps.</summary>
/// <remarks>
/// A notebook of an older minor version is raised to 4.5: cells without an identifier are given one. Missing
/// <c>metadata</c>, <c>outputs</c> and <c>execution_count</c> are filled in empty. A minor version above 5 is kept.
/// </remarks>
public static class NotebookReader
{
    private const int CurrentMinor = 5;

    /// <summary>Reads a notebook from a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="limits">Size limits; the file's size is looked at before it is read.</param>
    /// <returns>The notebook, named after the file.</returns>
    /// <exception cref="NotebookFormatException">The file cannot be read or is not such a notebook.</exception>
    public static Notebook ReadFile(string path, NotebookLimits? limits = null)
    {
        limits ??= NotebookLimits.Default;
        var name = Path.GetFileName(path);
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            RefuseAbove(limits, stream.Length, name);
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return Read(bytes, name, limits);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException
                                          or NotSupportedException)
        {
            var reason = fault is FileNotFoundException or DirectoryNotFoundException
                ? "there is no such file" : "the file cannot be read";
            throw new NotebookFormatException(name, "", $"{reason}.", fault);
        }
    }

    /// <summary>Reads a notebook from its bytes.</summary>
    /// <param name="utf8">The file's content; a byte-order mark is passed over.</param>
    /// <param name="name">The name that messages use.</param>
    /// <param name="limits">Size limits, looked at before parsing.</param>
    /// <returns>The notebook.</returns>
    /// <exception cref="NotebookFormatException">The bytes are not such a notebook.</exception>
    public static Notebook Read(ReadOnlySpan<byte> utf8, string name = "notebook", NotebookLimits? limits = null)
    {
        limits ??= NotebookLimits.Default;
        RefuseAbove(limits, utf8.Length, name);
        var root = Parse(utf8, name, limits);
        RefuseOtherVersions(root, name);
        NotebookCheck.Check(root, name, limits);
        FillIn(root);
        return new Notebook(name, root);
    }

    private static void RefuseAbove(NotebookLimits limits, long bytes, string name)
    {
        if (bytes > limits.MostBytes)
            throw new NotebookFormatException(name, "", string.Create(CultureInfo.InvariantCulture,
                $"is {bytes} bytes; accepted: up to {limits.MostBytes} bytes."));
    }

    private static JsonObject Parse(ReadOnlySpan<byte> utf8, string name, NotebookLimits limits)
    {
        if (utf8.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            utf8 = utf8[3..];
        if (!Utf8.IsValid(utf8))
            throw new NotebookFormatException(name, "", "is not UTF-8 text; accepted: a notebook stored as UTF-8 JSON.");
        try
        {
            var node = JsonNode.Parse(utf8, null,
                new JsonDocumentOptions { MaxDepth = limits.MostDepth, AllowDuplicateProperties = false });
            JsonText.CheckAll(node, name);
            return node as JsonObject ?? throw new NotebookFormatException(name, "",
                $"holds {JsonText.KindOf(node)}; accepted: a JSON object with \"cells\".");
        }
        catch (JsonException fault)
        {
            throw new NotebookFormatException(name, Place(fault), $"is not JSON that can be read: {Reason(fault)}", fault);
        }
    }

    private static string Place(JsonException fault) => fault.LineNumber is { } line
        ? string.Create(CultureInfo.InvariantCulture, $"line {line + 1}, byte {fault.BytePositionInLine + 1}")
        : "";

    /// <summary>The parser's own words, without the place that it adds at the end.</summary>
    private static string Reason(JsonException fault)
    {
        var end = fault.Message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        return end < 0 ? fault.Message : fault.Message[..end];
    }

    private static void RefuseOtherVersions(JsonObject root, string name)
    {
        if (root["nbformat"] is not JsonValue value || !value.TryGetValue(out int major))
            throw new NotebookFormatException(name, "field \"nbformat\"",
                $"is {JsonText.KindOf(root["nbformat"])}; accepted: the number 4.");
        if (major == 4)
            return;
        var advice = major < 4
            ? "Open the notebook in a current notebook editor and store it again as version 4."
            : "It comes from a later version than this program knows.";
        throw new NotebookFormatException(name, "field \"nbformat\"", string.Create(CultureInfo.InvariantCulture,
            $"is {major}; accepted: 4 (4.0 to 4.5). {advice}"));
    }

    private static void FillIn(JsonObject root)
    {
        root["metadata"] ??= new JsonObject();
        if (root["nbformat_minor"]!.GetValue<int>() < CurrentMinor)
            root["nbformat_minor"] = CurrentMinor;
        var cells = root["cells"]!.AsArray();
        foreach (var cell in cells.Select(cell => cell!.AsObject()))
        {
            cell["metadata"] ??= new JsonObject();
            cell["source"] ??= new JsonArray();
            if (cell["cell_type"]!.GetValue<string>() != "code")
                continue;
            cell["outputs"] ??= new JsonArray();
            if (!cell.ContainsKey("execution_count"))
                cell["execution_count"] = null;
        }

        CellIds.GiveMissing(cells);
    }
}
