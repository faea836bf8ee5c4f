namespace Spindlewright.Notebooks.Protocol;

/// <summary>One thing in several representations, by MIME type; types ending in <c>json</c> hold JSON text.</summary>
/// <param name="Data">The representations.</param>
public sealed record MimeBundle(IReadOnlyDictionary<string, string> Data)
{
    /// <summary>The MIME type of plain text, which every bundle should hold.</summary>
    public const string PlainText = "text/plain";

    /// <summary>The MIME type under which a figure record travels from the child to the parent, which draws it.</summary>
    public const string FigureRecord = "application/vnd.spindlewright.figure+json";

    /// <summary>A bundle without representations.</summary>
    public static MimeBundle Empty { get; } = new(new Dictionary<string, string>());

    /// <summary>A bundle of plain text alone.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The bundle.</returns>
    public static MimeBundle Plain(string text) => new(new Dictionary<string, string> { [PlainText] = text });

    /// <summary>Looks up a representation.</summary>
    /// <param name="mimeType">The MIME type.</param>
    /// <returns>Its text; null when there is none.</returns>
    public string? Find(string mimeType) => Data.GetValueOrDefault(mimeType);

    /// <summary>Sets one representation.</summary>
    /// <param name="mimeType">The MIME type.</param>
    /// <param name="text">Its text.</param>
    /// <returns>A new bundle.</returns>
    public MimeBundle With(string mimeType, string text) =>
        new(new Dictionary<string, string>(Data) { [mimeType] = text });

    /// <summary>Takes one representation away.</summary>
    /// <param name="mimeType">The MIME type.</param>
    /// <returns>A new bundle.</returns>
    public MimeBundle Without(string mimeType) =>
        new(Data.Where(pair => pair.Key != mimeType).ToDictionary(pair => pair.Key, pair => pair.Value));
}
