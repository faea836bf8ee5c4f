namespace Spindlewright.Foundations;

/// <summary>How a figure reached us. Every figure that is not the user's own carries one of these.</summary>
/// <remarks>
/// Only <see cref="Published"/> and <see cref="SecondHand"/> count as published in a headline; the others are shown
/// and counted apart.
/// </remarks>
public enum Provenance
{
    /// <summary>Read in a stored copy of the source itself.</summary>
    Published,

    /// <summary>Read in somebody else's transcription of the source.</summary>
    SecondHand,

    /// <summary>Recalled; unverified.</summary>
    FromMemory,

    /// <summary>Our own arithmetic from stated inputs.</summary>
    OwnArithmetic,

    /// <summary>A fact of the trade; no source.</summary>
    CommonPractice,

    /// <summary>Chosen by this project, with the reason given where it is used.</summary>
    OwnChoice,

    /// <summary>Given by the user in the machine file.</summary>
    Yours,
}

/// <summary>The words in which a <see cref="Provenance"/> is printed and read.</summary>
public static class ProvenanceWords
{
    private static readonly (Provenance Value, string Words)[] Table =
    [
        (Provenance.Published, "published"),
        (Provenance.SecondHand, "second hand"),
        (Provenance.FromMemory, "from memory"),
        (Provenance.OwnArithmetic, "own arithmetic"),
        (Provenance.CommonPractice, "common practice"),
        (Provenance.OwnChoice, "own choice"),
        (Provenance.Yours, "yours"),
    ];

    /// <summary>The words that a page shows, such as "second hand".</summary>
    /// <param name="provenance">The provenance to name.</param>
    /// <returns>Lower-case words, without a full stop.</returns>
    public static string InWords(this Provenance provenance) =>
        Table.Single(row => row.Value == provenance).Words;

    /// <summary>True where the figure may stand in a headline count of published figures.</summary>
    /// <param name="provenance">The provenance to ask about.</param>
    /// <returns>True for published and second hand.</returns>
    public static bool CountsAsPublished(this Provenance provenance) =>
        provenance is Provenance.Published or Provenance.SecondHand;

    /// <summary>Reads the words back.</summary>
    /// <param name="words">One of the words that <see cref="InWords"/> prints.</param>
    /// <returns>The provenance.</returns>
    /// <exception cref="FormatException">The words are not in the table.</exception>
    public static Provenance Parse(string words)
    {
        foreach (var (value, known) in Table)
            if (string.Equals(known, words, StringComparison.Ordinal))
                return value;
        throw new FormatException(
            $"'{words}' is no provenance; accepted: {string.Join(", ", Table.Select(row => row.Words))}.");
    }
}
