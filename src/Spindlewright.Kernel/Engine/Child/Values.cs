using Microsoft.DotNet.Interactive.Formatting;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>Turns values into bundles; the one place that knows the package's formatters.</summary>
internal sealed class Values : IFormatterRegistry
{
    private readonly Dictionary<Type, List<string>> registered = [];

    private Values()
    {
    }

    /// <summary>Drops what an earlier session registered and registers the formatters given.</summary>
    internal static void Reset(IEnumerable<IChildFormatters> formatters)
    {
        Formatter.ResetToDefault();
        // What nobody registered is shown as text: the package's HTML is a tree of every property, with a style of its own.
        Formatter.DefaultMimeType = MimeBundle.PlainText;
        Formatter.SetPreferredMimeTypesFor(typeof(object), MimeBundle.PlainText);
        Formatter.ListExpansionLimit = 20;
        Formatter.RecursionLimit = 2;
        var registry = new Values();
        foreach (var each in formatters)
            each.Register(registry);
    }

    /// <inheritdoc/>
    public void Add<T>(string mimeType, Func<T, string> write)
    {
        if (!registered.TryGetValue(typeof(T), out var types))
            registered[typeof(T)] = types = [];
        types.Add(mimeType);
        Formatter.Register(write, mimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(T), [.. types]);
    }

    /// <summary>Formats a value as each MIME type preferred for its own type, and as plain text.</summary>
    internal static MimeBundle Bundle(object? value) => Bundle(value, FormattedValue.CreateManyFromObject(value));

    /// <summary>Takes over what was formatted, and adds plain text.</summary>
    internal static MimeBundle Bundle(object? value, IEnumerable<FormattedValue> formatted)
    {
        var data = new Dictionary<string, string>();
        foreach (var each in formatted)
            data[each.MimeType] = each.Value;
        if (!data.ContainsKey(MimeBundle.PlainText))
            data[MimeBundle.PlainText] = value.ToDisplayString(MimeBundle.PlainText);
        return new MimeBundle(data);
    }

    /// <summary>Text that already has a MIME type.</summary>
    internal static MimeBundle Bundle(string mimeType, string text) =>
        mimeType.StartsWith("text/", StringComparison.Ordinal) && mimeType != "text/html"
            ? MimeBundle.Plain(text).With(mimeType, text)
            : MimeBundle.Plain($"<{mimeType}>").With(mimeType, text);
}
