using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>A notebook of nbformat 4.5: a view on its JSON, which keeps every field it does not know.</summary>
/// <remarks>Made by <see cref="NotebookReader"/>, so that its shape can be relied upon. Not for several threads at once.</remarks>
public sealed class Notebook
{
    internal Notebook(string name, JsonObject root)
    {
        (Name, Root) = (name, root);
        Cells = [.. root["cells"]!.AsArray().Select((node, index) => new Cell(node!.AsObject(), index + 1))];
    }

    /// <summary>The name that messages use.</summary>
    public string Name { get; }

    /// <summary>The whole document.</summary>
    public JsonObject Root { get; }

    /// <summary>The cells in order.</summary>
    public IReadOnlyList<Cell> Cells { get; }

    /// <summary>The notebook's metadata.</summary>
    public JsonObject Metadata => Root["metadata"]!.AsObject();

    /// <summary>Copies the notebook, so that one copy can be changed.</summary>
    /// <returns>A copy that shares nothing.</returns>
    public Notebook Copy() => new(Name, Root.DeepClone().AsObject());

    /// <summary>Writes the notebook as nbformat stores it; the same content gives the same bytes.</summary>
    /// <returns>UTF-8: keys sorted, indent 1, a final newline.</returns>
    public byte[] ToBytes() => CanonicalJson.ToBytes(Root);
}
