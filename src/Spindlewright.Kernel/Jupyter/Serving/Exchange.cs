using System.Text;
using System.Text.Json.Nodes;
using Spindlewright.Kernel.Jupyter.Wire;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>One request and what is said because of it.</summary>
/// <param name="Request">The request.</param>
/// <param name="Format">Writes messages.</param>
/// <param name="Sockets">Where they go.</param>
/// <param name="OnControl">True when it came on the control channel.</param>
internal sealed record Exchange(WireMessage Request, WireFormat Format, KernelSockets Sockets, bool OnControl)
{
    /// <summary>What the request says.</summary>
    internal JsonObject Content => Request.Content;

    /// <summary>Answers whoever asked.</summary>
    /// <param name="content">The answer.</param>
    internal void Reply(JsonObject content)
    {
        var frames = Format.Write(Request.Routes, ReplyType(Request.Type), Request.HeaderBytes, content);
        if (OnControl)
            Sockets.SendControl(frames);
        else
            Sockets.SendShell(frames);
    }

    /// <summary>Tells everybody who listens.</summary>
    /// <param name="type">Kind of the message.</param>
    /// <param name="content">What it says.</param>
    internal void Publish(string type, JsonObject content) =>
        Sockets.Publish(Format.Write([Encoding.UTF8.GetBytes(type)], type, Request.HeaderBytes, content));

    /// <summary>Says that the kernel is at work for this request, or no longer.</summary>
    internal void PublishState(string state) => Publish("status", new JsonObject { ["execution_state"] = state });

    /// <summary>The answer to a request that cannot be met.</summary>
    internal static JsonObject Refusal(string name, string message, IEnumerable<string> traceback) => new()
    {
        ["status"] = "error",
        ["ename"] = name,
        ["evalue"] = message,
        ["traceback"] = new JsonArray([.. traceback.Select(line => (JsonNode)line)]),
    };

    private static string ReplyType(string requestType) =>
        requestType.EndsWith("_request", StringComparison.Ordinal)
            ? $"{requestType[..^"_request".Length]}_reply"
            : $"{requestType}_reply";
}
