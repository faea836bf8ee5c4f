using Spindlewright.Machines.Text;

namespace Spindlewright.Machines.Sections;

/// <summary>Gathers the defaults that stand in for what a machine file does not give.</summary>
internal sealed class DefaultsTaken
{
    private readonly List<AppliedDefault> computed = [];

    /// <summary>Adds a default that follows from other values or from a table.</summary>
    internal void Add(AppliedDefault applied) => computed.Add(applied);

    /// <summary>All defaults, those declared with their keys and those computed, by key.</summary>
    internal IReadOnlyList<AppliedDefault> With(MachineText text, Func<string, string> meaningOf) =>
    [
        .. text.DefaultsUsed
            .Select(used => new AppliedDefault(
                used.Key, meaningOf(used.Key), used.Value.Capability, used.Value.Hazard, used.Value.Provenance,
                used.Value.Source, used.Value.Note))
            .Concat(computed)
            .OrderBy(applied => applied.Key, StringComparer.Ordinal),
    ];
}
