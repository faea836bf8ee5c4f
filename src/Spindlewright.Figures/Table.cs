using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Where the cells of a column stand.</summary>
public enum Alignment
{
    /// <summary>Words: at the left.</summary>
    Left,

    /// <summary>Short codes: in the middle.</summary>
    Centre,

    /// <summary>Numbers: at the right.</summary>
    Right,
}

/// <summary>How the numbers of a column are printed.</summary>
/// <param name="Decimals">Digits after the point; null to print significant digits instead.</param>
/// <param name="Significant">Significant digits where no decimals are fixed; whole digits never go.</param>
public sealed record NumberFormat(int? Decimals = null, int Significant = 3)
{
    /// <summary>So many digits after the point.</summary>
    /// <param name="decimals">0 to 9.</param>
    /// <returns>The format.</returns>
    public static NumberFormat Fixed(int decimals) => new(decimals);
}

/// <summary>One column of a table.</summary>
/// <param name="Header">Its heading.</param>
/// <param name="Unit">The unit of its numbers, printed with the heading; may be empty.</param>
/// <param name="Align">Where its cells stand.</param>
/// <param name="Format">How its numbers are printed; three significant digits where null.</param>
public sealed record Column(
    string Header, string Unit = "", Alignment Align = Alignment.Right, NumberFormat? Format = null);

/// <summary>A table as a record; writers turn it into HTML or plain text.</summary>
public sealed record Table
{
    /// <summary>Makes a table and checks it.</summary>
    /// <param name="id">Unique, lower-case words joined by hyphens.</param>
    /// <param name="title">What it lists, as a heading.</param>
    /// <param name="columns">Its columns; the first heads the rows.</param>
    /// <param name="rows">Its rows, each with one cell a column.</param>
    /// <param name="caption">A sentence under the title; may be empty.</param>
    /// <param name="footnotes">Notes under the table.</param>
    /// <param name="sources">Where its data came from.</param>
    /// <param name="emphasis">Indices of rows that are set apart.</param>
    /// <exception cref="PartException">A row that does not fit the columns, or an index without a row.</exception>
    public Table(
        string id, string title, ImmutableArray<Column> columns, ImmutableArray<ImmutableArray<Cell>> rows,
        string? caption = null, ImmutableArray<string> footnotes = default,
            ImmutableArray<SourceNote> sources = default,
        ImmutableArray<int> emphasis = default)
    {
        Id = Check.Id(id, "table");
        Title = Check.Words(title, Part, "title");
        Columns = Check.NotEmpty(columns, Part, "columns");
        Rows = Check.OrEmpty(rows);
        (Caption, Footnotes, Sources) = (caption ?? "", Check.OrEmpty(footnotes), Check.OrEmpty(sources));
        Emphasis = Check.OrEmpty(emphasis);
        for (var i = 0; i < Rows.Length; i++)
            if (Rows[i].IsDefault || Rows[i].Length != Columns.Length)
                throw new PartException(
                    Part, $"row {i + 1}", $"{(Rows[i].IsDefault ? 0 : Rows[i].Length)} cells",
                        $"{Columns.Length} cells",
                    "one for each column");
        foreach (var row in Emphasis)
            Guard.Within(row, 0, Rows.Length - 1, Part, "emphasised row");
    }

    /// <summary>Unique, lower-case words joined by hyphens.</summary>
    public string Id { get; }

    /// <summary>What it lists, as a heading.</summary>
    public string Title { get; }

    /// <summary>Its columns; the first heads the rows.</summary>
    public ImmutableArray<Column> Columns { get; }

    /// <summary>Its rows, each with one cell a column.</summary>
    public ImmutableArray<ImmutableArray<Cell>> Rows { get; }

    /// <summary>A sentence under the title; may be empty.</summary>
    public string Caption { get; }

    /// <summary>Notes under the table.</summary>
    public ImmutableArray<string> Footnotes { get; }

    /// <summary>Where its data came from.</summary>
    public ImmutableArray<SourceNote> Sources { get; }

    /// <summary>Indices of rows that are set apart.</summary>
    public ImmutableArray<int> Emphasis { get; }

    private string Part => $"table {Id}";
}
