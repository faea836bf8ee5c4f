namespace Spindlewright.Machines.Text;

/// <summary>A default that stands in for a figure the text does not give.</summary>
/// <param name="Key">Path of the key that would replace it.</param>
/// <param name="Value">The pair with its provenance.</param>
public sealed record UsedDefault(string Key, DefaultText Value);

/// <summary>A text that was read: its sections and its faults.</summary>
public sealed class MachineText
{
    private readonly SortedDictionary<string, UsedDefault> _defaults = new(StringComparer.Ordinal);

    internal MachineText(string file, SectionSpec spec, TableNode table, bool syntaxIsClean)
    {
        Faults = new FaultList(file);
        Root = new Section(this, spec, null, table);
        SyntaxIsClean = syntaxIsClean;
    }

    /// <summary>All faults found so far; empty for a sound text.</summary>
    public FaultList Faults { get; }

    /// <summary>The text as a whole. With broken syntax it holds what could be read, and no part is to be made of it.</summary>
    public Section Root { get; }

    /// <summary>False where the text is no TOML, so that missing, unknown and doubled keys were not looked for.</summary>
    public bool SyntaxIsClean { get; }

    /// <summary>The defaults that were asked for, by key.</summary>
    public IReadOnlyCollection<UsedDefault> DefaultsUsed => _defaults.Values;

    internal void Note(UsedDefault used) => _defaults.TryAdd(used.Key, used);
}
