namespace Spindlewright.Foundations;

/// <summary>A value together with where it came from.</summary>
/// <typeparam name="T">A quantity, a number or a record of them.</typeparam>
/// <param name="Value">The value itself.</param>
/// <param name="Provenance">How it reached us.</param>
/// <param name="Source">Key into <c>data/references.json</c>; empty for the user's own.</param>
/// <param name="Note">What the reader must know about it; may be empty.</param>
public sealed record Sourced<T>(T Value, Provenance Provenance, string Source, string Note = "");
