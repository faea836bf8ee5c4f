using System.Globalization;

namespace Spindlewright.Foundations.Tables;

/// <summary>One line of a table's file, whose cells are read by column name.</summary>
/// <remarks>Every reading that fails raises a <see cref="TableException"/> with file, line and column.</remarks>
public sealed class TableLine
{
    private const NumberStyles Style =
        NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    private readonly IReadOnlyDictionary<string, string> cells;
    private readonly References references;

    internal TableLine(string file, int number, IReadOnlyDictionary<string, string> cells, References references)
    {
        (File, Number, this.cells, this.references) = (file, number, cells, references);
    }

    /// <summary>File name.</summary>
    public string File { get; }

    /// <summary>Line in the file, from 1.</summary>
    public int Number { get; }

    /// <summary>A cell that may be empty.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>Its text.</returns>
    public string TextOrEmpty(string column) => cells[column];

    /// <summary>A cell that holds text.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>Its text, not empty.</returns>
    public string Text(string column) =>
        cells[column].Length > 0 ? cells[column] : throw Empty(column, "a text");

    /// <summary>A cell that holds one of some words.</summary>
    /// <typeparam name="T">What a word means.</typeparam>
    /// <param name="column">Column name.</param>
    /// <param name="words">The words and what they mean.</param>
    /// <returns>The meaning.</returns>
    public T OneOf<T>(string column, params (string Word, T Meaning)[] words)
    {
        foreach (var (word, meaning) in words)
            if (word == cells[column])
                return meaning;
        var accepted = string.Join(", ", words.Select(word => word.Word));
        throw Error(column, $"'{cells[column]}' is not accepted; accepted: {accepted}");
    }

    /// <summary>A cell that holds a number.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>A finite number.</returns>
    public double NumberIn(string column) => NumberOrNull(column) ?? throw Empty(column, "a number");

    /// <summary>A cell that holds a number or nothing.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>A finite number, or null for an empty cell.</returns>
    public double? NumberOrNull(string column)
    {
        var text = cells[column];
        if (text.Length == 0) return null;
        return double.TryParse(text, Style, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw Error(column, $"'{text}' is no number; expected one such as 1.5 or 2e-3");
    }

    /// <summary>A cell that holds a number above 0.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>The number.</returns>
    public double Positive(string column) => PositiveOrNull(column) ?? throw Empty(column, "a number above 0");

    /// <summary>A cell that holds a number above 0 or nothing.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>The number, or null for an empty cell.</returns>
    public double? PositiveOrNull(string column) =>
        NumberOrNull(column) is not { } number ? null
        : number > 0 ? number
        : throw Error(column, $"{cells[column]} is not above 0");

    /// <summary>A cell that holds a whole number.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>The number.</returns>
    public int WholeNumber(string column) => WholeNumberOrNull(column) ?? throw Empty(column, "a whole number");

    /// <summary>A cell that holds a whole number or nothing.</summary>
    /// <param name="column">Column name.</param>
    /// <returns>The number, or null for an empty cell.</returns>
    public int? WholeNumberOrNull(string column)
    {
        var text = cells[column];
        if (text.Length == 0) return null;
        return int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw Error(column, $"'{text}' is no whole number");
    }

    /// <summary>The line's source, provenance and note.</summary>
    /// <returns>The citation; its key is in the bibliography.</returns>
    public Citation Citation()
    {
        var key = Text("source");
        if (!references.Contains(key))
        {
            var known = references.All.Select(entry => entry.Key).ToArray();
            throw Error("source", $"'{key}' is no key of data/references.json; {NearestName.Suggest(key, known)}");
        }
        try
        {
            return new(key, ProvenanceWords.Parse(cells["provenance"]), cells["note"]);
        }
        catch (FormatException error) when (error is not TableException)
        {
            throw Error("provenance", error.Message);
        }
    }

    /// <summary>An error about one cell of this line.</summary>
    /// <param name="column">Column name; empty for the whole line.</param>
    /// <param name="problem">What is wrong and what is accepted.</param>
    /// <returns>The error, to be thrown.</returns>
    public TableException Error(string column, string problem) => new(File, Number, column, problem);

    private TableException Empty(string column, string expected) =>
        Error(column, $"the cell is empty; expected {expected}");
}
