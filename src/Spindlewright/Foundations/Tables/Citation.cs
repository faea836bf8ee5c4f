namespace Spindlewright.Foundations.Tables;

/// <summary>Where a row comes from.</summary>
/// <param name="Source">Key into <c>data/references.json</c>; empty for the user's own.</param>
/// <param name="Provenance">How the figure reached us.</param>
/// <param name="Note">What a reader must know about it; may be empty.</param>
public sealed record Citation(string Source, Provenance Provenance, string Note = "")
{
    /// <summary>The citation of a row that the user gave.</summary>
    /// <param name="note">What a reader must know about it; may be empty.</param>
    /// <returns>A citation without a source.</returns>
    public static Citation Yours(string note = "") => new("", Provenance.Yours, note);

    /// <summary>Puts this citation on a value.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="value">The value.</param>
    /// <returns>The value with its provenance, source and note.</returns>
    public Sourced<T> On<T>(T value) => new(value, Provenance, Source, Note);
}

/// <summary>A row that can be looked up by name and says where it comes from.</summary>
public interface ITableRow
{
    /// <summary>The name by which the row is looked up; unique in its table.</summary>
    string Key { get; }

    /// <summary>Where the row comes from.</summary>
    Citation Citation { get; }
}
