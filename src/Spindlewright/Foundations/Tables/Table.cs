using System.Collections;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Spindlewright.Foundations.Tables;

/// <summary>Rows of one kind, in the order of their file, looked up by name. Immutable.</summary>
/// <typeparam name="TRow">The kind of row.</typeparam>
public sealed class Table<TRow> : IReadOnlyList<TRow> where TRow : ITableRow
{
    private readonly ImmutableArray<TRow> rows;
    private readonly Dictionary<string, TRow> byKey = new(StringComparer.Ordinal);

    /// <summary>Makes a table.</summary>
    /// <param name="name">Name for messages, such as "kienzle".</param>
    /// <param name="rows">The rows; no two share a key.</param>
    /// <exception cref="ArgumentException">Two rows share a key.</exception>
    public Table(string name, IEnumerable<TRow> rows)
    {
        Name = name;
        this.rows = [.. rows];
        foreach (var row in this.rows)
            if (!byKey.TryAdd(row.Key, row))
                throw new ArgumentException($"table {name}: two rows are named '{row.Key}'.", nameof(rows));
    }

    /// <summary>The table's name.</summary>
    public string Name { get; }

    /// <summary>The names of the rows, in their order.</summary>
    public IReadOnlyList<string> Keys => [.. rows.Select(row => row.Key)];

    /// <inheritdoc/>
    public int Count => rows.Length;

    /// <inheritdoc/>
    public TRow this[int index] => rows[index];

    /// <summary>The row of a name.</summary>
    /// <param name="key">The name.</param>
    /// <returns>The row.</returns>
    /// <exception cref="UnknownRowException">No row has that name; the message suggests the nearest.</exception>
    public TRow this[string key] =>
        byKey.TryGetValue(key, out var row) ? row : throw new UnknownRowException(Name, key, Keys);

    /// <summary>Looks a name up.</summary>
    /// <param name="key">The name.</param>
    /// <param name="row">The row, where there is one.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryFind(string key, [MaybeNullWhen(false)] out TRow row) => byKey.TryGetValue(key, out row);

    /// <summary>The table with further rows; a row whose name is taken stands in the old one's place.</summary>
    /// <param name="added">The rows.</param>
    /// <returns>A new table.</returns>
    /// <exception cref="ArgumentException">Two of the added rows share a name.</exception>
    public Table<TRow> With(params IReadOnlyCollection<TRow> added)
    {
        var given = new Table<TRow>(Name, added);
        var kept = rows.Select(row => given.TryFind(row.Key, out var other) ? other : row);
        return new(Name, [.. kept, .. added.Where(row => !byKey.ContainsKey(row.Key))]);
    }

    /// <inheritdoc/>
    public IEnumerator<TRow> GetEnumerator() => ((IEnumerable<TRow>)rows).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Raised when a table has no row of the name asked for.</summary>
public sealed class UnknownRowException : ArgumentException
{
    /// <summary>Makes the error and its message.</summary>
    /// <param name="table">The table's name.</param>
    /// <param name="key">The name asked for.</param>
    /// <param name="known">The names it has.</param>
    public UnknownRowException(string table, string key, IReadOnlyCollection<string> known)
        : base($"table {table} has no row '{key}'; {NearestName.Suggest(key, known)}")
    {
        (Table, Key, Nearest) = (table, key, NearestName.Of(key, known));
    }

    /// <summary>The table's name.</summary>
    public string Table { get; }

    /// <summary>The name asked for.</summary>
    public string Key { get; }

    /// <summary>The nearest known name; null where none is near.</summary>
    public string? Nearest { get; }
}
