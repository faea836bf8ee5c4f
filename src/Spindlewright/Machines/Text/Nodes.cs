using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>A value of the text with its place.</summary>
/// <param name="Place">Where it begins.</param>
internal abstract record Node(TextPlace Place)
{
    /// <summary>What it is, for messages.</summary>
    public abstract string Described { get; }
}

/// <summary>A single value.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Raw">Its characters in the text, quotes included.</param>
/// <param name="Syntax">What the parser made of it.</param>
internal sealed record LeafNode(TextPlace Place, string Raw, ValueSyntax Syntax) : Node(Place)
{
    public override string Described => Raw;

    /// <summary>The content of a quoted text; null for anything else.</summary>
    public string? Text => (Syntax as StringValueSyntax)?.Value;

    /// <summary>The place of a character of the content: exact where nothing is escaped.</summary>
    public TextPlace PlaceOf(int column) =>
        Text is { } text && Raw.Length == text.Length + 2 ? Place with { Column = Place.Column + column } : Place;
}

/// <summary>Values in square brackets, or sections that stand several times.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Items">The values.</param>
internal sealed record ListNode(TextPlace Place, List<Node> Items) : Node(Place)
{
    public override string Described => Items.Count > 0 && Items.All(item => item is TableNode)
        ? "a section in double brackets" : "a list";
}

/// <summary>Keys with their values.</summary>
/// <param name="Place">The header, the key or the brace that opens it.</param>
internal sealed record TableNode(TextPlace Place) : Node(Place)
{
    private readonly Dictionary<string, Entry> _entries = new(StringComparer.Ordinal);
    private readonly List<Entry> _inOrder = [];

    public override string Described => "a section";

    public IReadOnlyList<Entry> Entries => _inOrder;

    public Entry? Find(string name) => _entries.GetValueOrDefault(name);

    /// <summary>Adds an entry; false where the name is taken.</summary>
    public bool TryAdd(Entry entry)
    {
        if (!_entries.TryAdd(entry.Name, entry)) return false;
        _inOrder.Add(entry);
        return true;
    }
}

/// <summary>A name and what it stands for.</summary>
/// <param name="Name">The key, without quotes.</param>
/// <param name="Place">Where the key begins.</param>
/// <param name="Value">The value.</param>
internal sealed record Entry(string Name, TextPlace Place, Node Value);
