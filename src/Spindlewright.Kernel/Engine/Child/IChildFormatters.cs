namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Registers how values are shown; called in the child whenever a session begins.</summary>
public interface IChildFormatters
{
    /// <summary>Registers the formatters.</summary>
    /// <param name="registry">Where they are registered.</param>
    void Register(IFormatterRegistry registry);
}

/// <summary>Where formatters are registered.</summary>
public interface IFormatterRegistry
{
    /// <summary>
    /// Says how values of a type, and of types derived from it, are written as one MIME type. Types registered for the
    /// same values are all sent, in the order of registration; plain text is added where it is missing.
    /// </summary>
    /// <typeparam name="T">The type.</typeparam>
    /// <param name="mimeType">
    /// The MIME type; <see cref="Notebooks.Protocol.MimeBundle.FigureRecord"/> for a record that the parent draws.
    /// </param>
    /// <param name="write">Writes a value.</param>
    void Add<T>(string mimeType, Func<T, string> write);
}
