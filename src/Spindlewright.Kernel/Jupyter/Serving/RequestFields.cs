using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>Raised when a request does not say what it must.</summary>
/// <param name="message">Which field, and what is accepted.</param>
internal sealed class RequestException(string message) : Exception(message);

/// <summary>Reads the fields of requests.</summary>
internal static class RequestFields
{
    /// <summary>A text that must be there.</summary>
    /// <exception cref="RequestException">It is not.</exception>
    internal static string Text(this JsonObject content, string field) =>
        content.TextOrNull(field) ?? throw new RequestException($"\"{field}\" is missing; accepted: a string.");

    /// <summary>A text that may be missing.</summary>
    /// <exception cref="RequestException">It is something else.</exception>
    internal static string? TextOrNull(this JsonObject content, string field) => content[field] switch
    {
        null => null,
        { } node when node.GetValueKind() == JsonValueKind.String => node.GetValue<string>(),
        _ => throw new RequestException($"\"{field}\" is not a string."),
    };

    /// <summary>Yes or no.</summary>
    /// <exception cref="RequestException">It is something else.</exception>
    internal static bool Flag(this JsonObject content, string field, bool missing) => content[field]?.GetValueKind() switch
    {
        null => missing,
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => throw new RequestException($"\"{field}\" is neither true nor false."),
    };

    /// <summary>A whole number that may be missing.</summary>
    /// <exception cref="RequestException">It is something else.</exception>
    internal static int? Number(this JsonObject content, string field)
    {
        if (content[field] is not { } node)
            return null;
        if (node is JsonValue value && value.TryGetValue<int>(out var number))
            return number;
        throw new RequestException(string.Create(CultureInfo.InvariantCulture, $"\"{field}\" is not a whole number."));
    }
}
