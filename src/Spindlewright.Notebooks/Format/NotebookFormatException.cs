namespace Spindlewright.Notebooks.Format;

/// <summary>Raised when a file is not a notebook that can be read, with the cell and field that stand in the way.</summary>
public sealed class NotebookFormatException : Exception
{
    /// <summary>Makes the error and its message.</summary>
    /// <param name="notebook">The notebook's name, as the message shall show it.</param>
    /// <param name="where">The cell and field, such as <c>cell 3 (id "ab"), field "source"</c>; may be empty.</param>
    /// <param name="what">What is wrong and what is accepted, one sentence.</param>
    /// <param name="inner">The error beneath, if any.</param>
    public NotebookFormatException(string notebook, string where, string what, Exception? inner = null)
        : base(where.Length == 0 ? $"{notebook}: {what}" : $"{notebook}: {where}: {what}", inner)
    {
        (Notebook, Where) = (notebook, where);
    }

    /// <summary>The notebook's name.</summary>
    public string Notebook { get; }

    /// <summary>The cell and field; empty when the whole file is meant.</summary>
    public string Where { get; }
}
