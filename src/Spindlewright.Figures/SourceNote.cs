using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Where something that a figure or table shows came from.</summary>
/// <param name="Key">Key into <c>data/references.json</c>; empty for what has no reference.</param>
/// <param name="Text">The citation as a reader sees it.</param>
/// <param name="Provenance">How it reached us.</param>
public sealed record SourceNote(string Key, string Text, Provenance Provenance)
{
    /// <summary>The line that is printed, such as "Shigley, 2011, table 17-3 (second hand)".</summary>
    /// <returns>One line without a full stop.</returns>
    public string InWords() => $"{Text} ({Provenance.InWords()})";
}
