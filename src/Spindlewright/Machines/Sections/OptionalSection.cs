using Spindlewright.Foundations;
using Spindlewright.Machines.Text;

namespace Spindlewright.Machines.Sections;

/// <summary>Values of a section that a file may leave out as a whole.</summary>
internal static class OptionalSection
{
    /// <summary>The user's figure on both sides or the declared default, which is noted whether or not the section stands.</summary>
    internal static Sided<T> PairOf<T>(this Section? section, KeySpec<T> key, SectionSpec spec, DefaultsTaken defaults) where T : notnull
    {
        if (section is not null) return section.Sided(key).Value;
        var text = key.DefaultText!;
        defaults.Add(new($"{spec.Name}.{key.Name}", key.Meaning, text.Capability, text.Hazard, text.Provenance, text.Source, text.Note));
        return key.Default!.Value;
    }
}
