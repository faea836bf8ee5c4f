using nietras.SeparatedValues;

namespace Spindlewright.Foundations.Tables;

/// <summary>Reads the text of a table's file.</summary>
/// <remarks>
/// Comma-separated, lines that begin with <c>#</c> allowed at the head only, then the header, then one row a line.
/// A missing, unknown or repeated column, a line of another width and a cell that does not fit raise a
/// <see cref="TableException"/> that says where.
/// </remarks>
public static class TableReader
{
    /// <summary>Reads all rows.</summary>
    /// <typeparam name="TRow">The kind of row.</typeparam>
    /// <param name="definition">What the file must hold.</param>
    /// <param name="text">The file's text.</param>
    /// <param name="references">The bibliography that the rows cite.</param>
    /// <returns>The table.</returns>
    /// <exception cref="TableException">The text does not hold what it must.</exception>
    public static Table<TRow> Read<TRow>(TableDefinition<TRow> definition, string text, References references)
        where TRow : ITableRow
    {
        var (body, comments) = WithoutHeadComments(text);
        using var reader = OpenReader(definition.File, body);
        var columns = reader.Header.ColNames.ToArray();
        CheckHeader(definition.File, comments + 1, columns, definition.AllColumns);

        var rows = new List<TRow>();
        var firstLines = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var record in reader)
        {
            var number = record.LineNumberFrom + comments;
            if (record.ColCount != columns.Length)
                throw new TableException(
                    definition.File, number, "", $"{record.ColCount} cells where the header has {columns.Length}");
            var cells = new Dictionary<string, string>(columns.Length, StringComparer.Ordinal);
            for (var i = 0; i < columns.Length; i++) cells.Add(columns[i], record[i].ToString());
            var row = MakeRow(definition, new TableLine(definition.File, number, cells, references));
            if (!firstLines.TryAdd(row.Key, number))
                throw new TableException(
                    definition.File, number, "", $"'{row.Key}' stands already in line {firstLines[row.Key]}");
            rows.Add(row);
        }
        if (rows.Count == 0) throw new TableException(definition.File, 0, "", "no rows");
        return new(definition.Name, rows);
    }

    private static TRow MakeRow<TRow>(TableDefinition<TRow> definition, TableLine line) where TRow : ITableRow
    {
        try
        {
            return definition.Make(line);
        }
        catch (PartException error)
        {
            throw line.Error("", error.Message);
        }
    }

    private static SepReader OpenReader(string file, string body)
    {
        try
        {
            // The width of each line is checked here, with the line's number in the file.
            return Sep.New(',').Reader(options => options with { Unescape = true, DisableColCountCheck = true })
                .FromText(body);
        }
        catch (Exception error) when (error is ArgumentException or InvalidDataException)
        {
            throw new TableException(file, 0, "", $"the header cannot be read: {error.Message}");
        }
    }

    private static (string Body, int Comments) WithoutHeadComments(string text)
    {
        var (start, comments) = (0, 0);
        while (start < text.Length && text[start] == '#')
        {
            var end = text.IndexOf('\n', start);
            start = end < 0 ? text.Length : end + 1;
            comments++;
        }
        return (text[start..], comments);
    }

    private static void CheckHeader(string file, int line, string[] found, IReadOnlyList<string> expected)
    {
        foreach (var column in expected)
            if (!found.Contains(column))
                throw new TableException(
                    file, line, column, $"this column is missing; found: {string.Join(", ", found)}");
        foreach (var column in found)
            if (!expected.Contains(column))
                throw new TableException(
                    file, line, column, $"no such column; {NearestName.Suggest(column, [.. expected])}");
    }
}
