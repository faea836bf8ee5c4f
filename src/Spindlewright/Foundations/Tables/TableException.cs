using System.Globalization;

namespace Spindlewright.Foundations.Tables;

/// <summary>Raised when a table or the bibliography cannot be read: says which file, line and column.</summary>
public sealed class TableException : FormatException
{
    /// <summary>Makes the error and its message.</summary>
    /// <param name="file">File name, such as "data/kienzle.csv".</param>
    /// <param name="line">Line in the file, from 1; 0 where the whole file is meant.</param>
    /// <param name="column">Column or field name; empty where the whole line is meant.</param>
    /// <param name="problem">What is wrong and what is accepted.</param>
    public TableException(string file, int line, string column, string problem)
        : base(Compose(file, line, column, problem))
    {
        (File, Line, Column) = (file, line, column);
    }

    /// <summary>File name.</summary>
    public string File { get; }

    /// <summary>Line in the file, from 1; 0 where the whole file is meant.</summary>
    public int Line { get; }

    /// <summary>Column or field name; may be empty.</summary>
    public string Column { get; }

    private static string Compose(string file, int line, string column, string problem)
    {
        var where = line > 0 ? string.Create(CultureInfo.InvariantCulture, $", line {line}") : "";
        var what = column.Length > 0 ? $", column '{column}'" : "";
        return $"{file}{where}{what}: {problem}";
    }
}
