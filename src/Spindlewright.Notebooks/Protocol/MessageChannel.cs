using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Spindlewright.Notebooks.Protocol;

/// <summary>Raised when what arrives on a connection is no message.</summary>
/// <param name="message">What is wrong.</param>
/// <param name="inner">The error beneath, if any.</param>
public sealed class ProtocolException(string message, Exception? inner = null) : IOException(message, inner);

/// <summary>Messages on a pair of byte streams: four bytes of length, least significant first, then JSON in UTF-8.</summary>
/// <remarks>Several threads may write; one reads.</remarks>
/// <param name="input">Where messages arrive.</param>
/// <param name="output">Where messages go.</param>
public sealed class MessageChannel(Stream input, Stream output) : IDisposable
{
    /// <summary>The largest message that is accepted, bytes.</summary>
    public const int MostBytes = 256 * 1024 * 1024;

    private readonly Lock writing = new();
    private readonly byte[] header = new byte[sizeof(int)];

    /// <summary>Sends a request.</summary>
    /// <param name="request">The request.</param>
    /// <exception cref="IOException">The other side is gone.</exception>
    public void Send(EngineRequest request) => Send(request, ProtocolJson.Default.EngineRequest);

    /// <summary>Sends an event.</summary>
    /// <param name="engineEvent">The event.</param>
    /// <exception cref="IOException">The other side is gone.</exception>
    public void Send(EngineEvent engineEvent) => Send(engineEvent, ProtocolJson.Default.EngineEvent);

    /// <summary>Waits for a request.</summary>
    /// <returns>The request; null when the other side has closed.</returns>
    /// <exception cref="ProtocolException">What arrived is no request.</exception>
    public EngineRequest? ReadRequest() => Read(ProtocolJson.Default.EngineRequest);

    /// <summary>Waits for an event.</summary>
    /// <returns>The event; null when the other side has closed.</returns>
    /// <exception cref="ProtocolException">What arrived is no event.</exception>
    public EngineEvent? ReadEvent() => Read(ProtocolJson.Default.EngineEvent);

    /// <summary>Closes both streams.</summary>
    public void Dispose()
    {
        input.Dispose();
        output.Dispose();
    }

    private void Send<T>(T message, JsonTypeInfo<T> type)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(message, type);
        if (body.Length > MostBytes)
            throw new ProtocolException(string.Create(CultureInfo.InvariantCulture,
                $"A message of {body.Length} bytes is too long; accepted: up to {MostBytes}."));
        var frame = new byte[sizeof(int) + body.Length];
        BinaryPrimitives.WriteInt32LittleEndian(frame, body.Length);
        body.CopyTo(frame, sizeof(int));
        lock (writing)
        {
            output.Write(frame);
            output.Flush();
        }
    }

    private T? Read<T>(JsonTypeInfo<T> type) where T : class
    {
        var got = input.ReadAtLeast(header, header.Length, throwOnEndOfStream: false);
        if (got < header.Length)
            return got == 0 ? null : throw new ProtocolException("The connection ended within a message.");
        var length = BinaryPrimitives.ReadInt32LittleEndian(header);
        if (length is < 0 or > MostBytes)
            throw new ProtocolException(string.Create(CultureInfo.InvariantCulture,
                $"A message says that it has {length} bytes; accepted: 0 to {MostBytes}."));
        var body = new byte[length];
        if (input.ReadAtLeast(body, length, throwOnEndOfStream: false) < length)
            throw new ProtocolException("The connection ended within a message.");
        try
        {
            return JsonSerializer.Deserialize(body, type) ?? throw new ProtocolException("A message is null.");
        }
        catch (Exception fault) when (fault is JsonException or NotSupportedException)
        {
            throw new ProtocolException("A message is not of the protocol.", fault);
        }
    }
}
