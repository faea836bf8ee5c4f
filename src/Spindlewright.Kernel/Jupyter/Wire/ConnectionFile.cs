using System.Globalization;
using System.Text.Json;

namespace Spindlewright.Kernel.Jupyter.Wire;

/// <summary>Raised when a connection file cannot be used.</summary>
/// <param name="message">What is wrong, with the file's name.</param>
internal sealed class ConnectionFileException(string message) : Exception(message);

/// <summary>Where a Jupyter server expects its kernel: the file that it names on the kernel's command line.</summary>
/// <param name="Ip">Address to listen on.</param>
/// <param name="Shell">Port of requests.</param>
/// <param name="Control">Port of requests that overtake the others.</param>
/// <param name="IoPub">Port on which everything is published.</param>
/// <param name="Stdin">Port of questions to the person in front of the notebook.</param>
/// <param name="Heartbeat">Port that echoes.</param>
/// <param name="Key">Secret of the signatures; empty for unsigned messages.</param>
internal sealed record ConnectionFile(
    string Ip, int Shell, int Control, int IoPub, int Stdin, int Heartbeat, string Key)
{
    private const string Transport = "tcp";
    private const string Scheme = "hmac-sha256";

    /// <summary>Reads the file.</summary>
    /// <exception cref="ConnectionFileException">It cannot be read, or asks for what is not offered.</exception>
    internal static ConnectionFile Read(string path)
    {
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllBytes(path));
            return Of(document.RootElement, path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException
                                          or NotSupportedException or JsonException)
        {
            throw new ConnectionFileException($"Cannot read the connection file {path}: {fault.Message}");
        }
    }

    private static ConnectionFile Of(JsonElement root, string path)
    {
        if (root.ValueKind != JsonValueKind.Object)
            throw new ConnectionFileException($"{path}: not a JSON object.");
        Only(root, "transport", Transport, path);
        Only(root, "signature_scheme", Scheme, path);
        return new(
            Text(root, "ip", path) ?? "127.0.0.1", Port(root, "shell_port", path), Port(root, "control_port", path),
            Port(root, "iopub_port", path), Port(root, "stdin_port", path), Port(root, "hb_port", path),
            Text(root, "key", path) ?? "");
    }

    private static void Only(JsonElement root, string field, string accepted, string path)
    {
        if (Text(root, field, path) is { Length: > 0 } asked && asked != accepted)
            throw new ConnectionFileException($"{path}: {field} is \"{asked}\"; accepted: \"{accepted}\".");
    }

    private static string? Text(JsonElement root, string field, string path)
    {
        if (!root.TryGetProperty(field, out var value))
            return null;
        return value.ValueKind == JsonValueKind.String
            ? value.GetString()
            : throw new ConnectionFileException($"{path}: {field} is not a string.");
    }

    private static int Port(JsonElement root, string field, string path)
    {
        const int MostPort = 65_535;
        if (root.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.Number
            && value.TryGetInt32(out var port) && port is > 0 and <= MostPort)
            return port;
        throw new ConnectionFileException(string.Create(
            CultureInfo.InvariantCulture, $"{path}: {field} is missing or no port; accepted: a number from 1 to {MostPort}."));
    }
}
