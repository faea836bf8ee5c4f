namespace Spindlewright.Machines.Text;

/// <summary>A section that a text may hold.</summary>
/// <param name="Name">The name in its brackets; empty for the text as a whole.</param>
/// <param name="Meaning">What it describes, one sentence without the full stop.</param>
/// <param name="Keys">The keys that it may hold, in the order of the reference page.</param>
public sealed record SectionSpec(string Name, string Meaning, IReadOnlyList<KeySpec> Keys)
{
    /// <summary>True where it may stand several times, in double brackets.</summary>
    public bool Repeats { get; init; }

    /// <summary>True where the text cannot do without it.</summary>
    public bool Required { get; init; }

    /// <summary>Sections within it.</summary>
    public IReadOnlyList<SectionSpec> Sections { get; init; } = [];

    /// <summary>The header as it is typed within a parent: "[motor]", "[[belt]]".</summary>
    /// <param name="parentPath">Path of the parent; empty at the top.</param>
    /// <returns>The header.</returns>
    public string Header(string parentPath = "") =>
        Repeats ? $"[[{PathIn(parentPath)}]]" : $"[{PathIn(parentPath)}]";

    /// <summary>The path within a parent, names joined by points.</summary>
    internal string PathIn(string parentPath) => parentPath.Length == 0 ? Name : $"{parentPath}.{Name}";
}
