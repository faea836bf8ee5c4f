using System.Text.Json.Nodes;

namespace Spindlewright.Kernel.Jupyter.Wire;

/// <summary>One message of the Jupyter protocol.</summary>
/// <param name="Routes">Frames in front of it: who sent it and gets the answer, or the topic of what is published.</param>
/// <param name="HeaderBytes">Its header as it came, which every answer carries.</param>
/// <param name="Header">The same, read.</param>
/// <param name="Content">What it says.</param>
internal sealed record WireMessage(
    IReadOnlyList<byte[]> Routes, byte[] HeaderBytes, JsonObject Header, JsonObject Content)
{
    /// <summary>Its kind, such as <c>execute_request</c>.</summary>
    internal string Type => Find("msg_type");

    /// <summary>The client session that it belongs to.</summary>
    internal string Session => Find("session");

    private string Find(string field) =>
        Header[field] is JsonValue value && value.TryGetValue<string>(out var text) ? text : "";
}
