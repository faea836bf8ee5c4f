using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>Turns a parser's syntax tree into tables of named values, whatever way the text spells them.</summary>
/// <remarks>
/// <c>[motor.circuit]</c>, <c>circuit.r1 = …</c> and <c>circuit = { r1 = … }</c> give the same tables. Lines that the
/// parser could not read are left out; so is a section whose header is one of them.
/// </remarks>
internal sealed class TomlTree
{
    private readonly string _text;
    private readonly BrokenLines _broken;
    private readonly TableNode _root = new(TextPlace.WholeFile);

    private TomlTree(string text, BrokenLines broken) => (_text, _broken) = (text, broken);

    /// <summary>Builds the tables.</summary>
    /// <param name="document">The syntax tree.</param>
    /// <param name="text">The text that it was parsed from.</param>
    /// <param name="broken">The lines that are left out.</param>
    /// <returns>The table of the whole text.</returns>
    public static TableNode Build(DocumentSyntax document, string text, BrokenLines broken)
    {
        var tree = new TomlTree(text, broken);
        foreach (var pair in document.KeyValues) tree.Add(tree._root, pair);
        foreach (var section in document.Tables)
            if (tree.Open(section) is { } table)
                foreach (var pair in section.Items)
                    tree.Add(table, pair);
        return tree._root;
    }

    private TableNode? Open(TableSyntaxBase section)
    {
        if (section.Name is null || IsBroken(section.Name)) return null;
        var names = Names(section.Name);
        if (names is null) return null;
        var place = Place(section);
        var parent = Walk(_root, names, place);
        if (parent is null) return null;
        return section is TableArraySyntax ? Append(parent, names[^1], place) : Step(parent, names[^1], place);
    }

    private static TableNode? Append(TableNode parent, string name, TextPlace place)
    {
        if (parent.Find(name) is null) parent.TryAdd(new(name, place, new ListNode(place, [])));
        if (parent.Find(name)!.Value is not ListNode list) return null;
        var table = new TableNode(place);
        list.Items.Add(table);
        return table;
    }

    private void Add(TableNode table, KeyValueSyntax pair)
    {
        if (pair.Key is null || pair.Value is null || IsBroken(pair.Key) || IsBroken(pair.Value)) return;
        if (Names(pair.Key) is not { } names) return;
        var place = Place(pair.Key);
        Walk(table, names, place)?.TryAdd(new(names[^1], place, Value(pair.Value)));
    }

    private Node Value(ValueSyntax value)
    {
        switch (value)
        {
            case ArraySyntax array:
                var items = new List<Node>();
                foreach (var item in array.Items)
                    if (item.Value is not null) items.Add(Value(item.Value));
                return new ListNode(Place(array), items);
            case InlineTableSyntax inline:
                var table = new TableNode(Place(inline));
                foreach (var item in inline.Items)
                    if (item.KeyValue is not null) Add(table, item.KeyValue);
                return table;
            default:
                return new LeafNode(Place(value), Raw(value), value);
        }
    }

    /// <summary>The table that holds the last name, made on the way where it is not there yet.</summary>
    private static TableNode? Walk(TableNode from, string[] names, TextPlace place)
    {
        var table = from;
        foreach (var name in names.AsSpan(0, names.Length - 1))
            if (Step(table, name, place) is { } next) table = next;
            else return null;
        return table;
    }

    private static TableNode? Step(TableNode table, string name, TextPlace place)
    {
        if (table.Find(name) is null) table.TryAdd(new(name, place, new TableNode(place)));
        return table.Find(name)!.Value switch
        {
            TableNode inner => inner,
            ListNode { Items: [.., TableNode last] } => last,
            _ => null,
        };
    }

    private static string[]? Names(KeySyntax key)
    {
        var names = new List<string?> { Name(key.Key) };
        foreach (var dotted in key.DotKeys) names.Add(Name(dotted.Key));
        return names.Contains(null) ? null : [.. names.Select(name => name!)];
    }

    private static string? Name(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text,
        StringValueSyntax quoted => quoted.Value,
        _ => null,
    };

    private string Raw(SyntaxNode node)
    {
        var (offset, length) = (node.Span.Offset, node.Span.Length);
        return offset >= 0 && length >= 0 && offset + length <= _text.Length ? _text.Substring(offset, length) : "";
    }

    private bool IsBroken(SyntaxNode node) => _broken.Touch(node.Span.Start.Line + 1, node.Span.End.Line + 1);

    private static TextPlace Place(SyntaxNode node) => new(node.Span.Start.Line + 1, node.Span.Start.Column + 1);
}
