using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>What a cell holds.</summary>
public enum CellKind
{
    /// <summary>Code, with outputs.</summary>
    Code,

    /// <summary>Prose in Markdown.</summary>
    Markdown,

    /// <summary>Text that is passed on as it stands.</summary>
    Raw,
}

/// <summary>One cell of a notebook: a view on its JSON node, which keeps every field it does not know.</summary>
public sealed class Cell
{
    internal Cell(JsonObject node, int number)
    {
        (Node, Number) = (node, number);
    }

    /// <summary>The JSON node itself.</summary>
    public JsonObject Node { get; }

    /// <summary>Position in the notebook, counted from 1 over cells of every kind.</summary>
    public int Number { get; }

    /// <summary>The identifier, unique in the notebook.</summary>
    public string Id => Node["id"]!.GetValue<string>();

    /// <summary>What the cell holds.</summary>
    public CellKind Kind => Node["cell_type"]!.GetValue<string>() switch
    {
        "code" => CellKind.Code,
        "markdown" => CellKind.Markdown,
        _ => CellKind.Raw,
    };

    /// <summary>The text of the cell; setting it stores a list of lines.</summary>
    public string Source
    {
        get => MultilineText.Join(Node["source"]);
        set => Node["source"] = MultilineText.Split(value);
    }

    /// <summary>The cell's metadata.</summary>
    public JsonObject Metadata => Node["metadata"]!.AsObject();

    /// <summary>The tags; empty when there are none.</summary>
    public IReadOnlyList<string> Tags =>
        Metadata["tags"] is JsonArray tags ? [.. tags.Select(tag => tag!.GetValue<string>())] : [];

    /// <summary>The outputs of a code cell; an empty list that is not stored, for the other kinds.</summary>
    public JsonArray Outputs => Node["outputs"] as JsonArray ?? [];

    /// <summary>The number shown beside a code cell that has run; null before.</summary>
    public int? ExecutionCount
    {
        get => Node["execution_count"]?.GetValue<int>();
        set => Node["execution_count"] = value;
    }

    /// <summary>Takes outputs and execution count away from a code cell; does nothing to the other kinds.</summary>
    public void ClearOutputs()
    {
        if (Kind != CellKind.Code)
            return;
        Node["outputs"] = new JsonArray();
        Node["execution_count"] = null;
    }

    /// <summary>Names the cell for a message.</summary>
    /// <returns>Such as <c>cell 3 (id "ab12")</c>.</returns>
    public override string ToString() => $"cell {Number} (id \"{Id}\")";
}
