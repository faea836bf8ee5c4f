using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Spindlewright.Kernel.Jupyter.Wire;

/// <summary>Messages as frames: routes, a delimiter, the signature, then header, parent, metadata and content as JSON.</summary>
/// <param name="signer">Signs and checks.</param>
internal sealed class WireFormat(Signer signer)
{
    /// <summary>The version of the protocol that this kernel speaks.</summary>
    internal const string Version = "5.3";

    private const int PartCount = 4;
    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();
    private static readonly byte[] Nothing = "{}"u8.ToArray();
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    private readonly string session = Guid.NewGuid().ToString("N");

    /// <summary>Reads a message; called from one thread.</summary>
    /// <param name="frames">What arrived.</param>
    /// <param name="message">The message.</param>
    /// <param name="fault">Why it is dropped.</param>
    internal bool TryRead(
        IReadOnlyList<byte[]> frames, [NotNullWhen(true)] out WireMessage? message, [NotNullWhen(false)] out string? fault)
    {
        message = null;
        var delimiter = IndexOfDelimiter(frames);
        if (delimiter < 0 || frames.Count < delimiter + 2 + PartCount)
        {
            fault = "it has not the frames of a message";
            return false;
        }

        var parts = frames.Skip(delimiter + 2).Take(PartCount).ToList();
        if (!signer.Accepts(frames[delimiter + 1], parts))
        {
            fault = "its signature is wrong or was seen before";
            return false;
        }

        try
        {
            message = new WireMessage([.. frames.Take(delimiter)], parts[0], Object(parts[0]), Object(parts[3]));
            fault = message.Type.Length > 0 ? null : "its header has no msg_type";
        }
        catch (Exception wrong) when (wrong is JsonException or FormatException)
        {
            fault = $"its JSON is wrong: {wrong.Message}";
        }

        return fault is null;
    }

    /// <summary>Writes a message.</summary>
    /// <param name="routes">Frames in front of it.</param>
    /// <param name="type">Its kind.</param>
    /// <param name="parent">Header of the message that caused it, as it came; null for none.</param>
    /// <param name="content">What it says.</param>
    internal IReadOnlyList<byte[]> Write(
        IReadOnlyList<byte[]> routes, string type, byte[]? parent, JsonObject content)
    {
        var header = new JsonObject
        {
            ["msg_id"] = Guid.NewGuid().ToString("N"),
            ["session"] = session,
            ["username"] = "kernel",
            ["date"] = DateTime.UtcNow.ToString("O", CultureInfo.InvariantCulture),
            ["msg_type"] = type,
            ["version"] = Version,
        };
        byte[][] parts = [Bytes(header), parent ?? Nothing, Nothing, Bytes(content)];
        return [.. routes, Delimiter, signer.Sign(parts), .. parts];
    }

    private static int IndexOfDelimiter(IReadOnlyList<byte[]> frames)
    {
        for (var i = 0; i < frames.Count; i++)
            if (frames[i].AsSpan().SequenceEqual(Delimiter))
                return i;
        return -1;
    }

    private static JsonObject Object(byte[] part) =>
        JsonNode.Parse(part, null, Strict) as JsonObject ?? throw new FormatException("a part is no object");

    private static byte[] Bytes(JsonObject node) => JsonSerializer.SerializeToUtf8Bytes(node, Plain);
}
