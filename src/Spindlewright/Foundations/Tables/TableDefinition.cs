namespace Spindlewright.Foundations.Tables;

/// <summary>What a table's file must hold and how a line of it becomes a row.</summary>
/// <typeparam name="TRow">The kind of row.</typeparam>
/// <param name="Name">Name of the table; its file is <c>data/NAME.csv</c>.</param>
/// <param name="Columns">The columns, in their order; <c>source</c>, <c>provenance</c>, <c>note</c> follow.</param>
/// <param name="Make">Makes a row.</param>
public sealed record TableDefinition<TRow>(string Name, IReadOnlyList<string> Columns, Func<TableLine, TRow> Make)
    where TRow : ITableRow
{
    /// <summary>The file's name.</summary>
    public string File => $"data/{Name}.csv";

    /// <summary>All columns of the file with the three that every table has.</summary>
    public IReadOnlyList<string> AllColumns => [.. Columns, .. CitationColumns];

    internal static IReadOnlyList<string> CitationColumns { get; } = ["source", "provenance", "note"];
}
