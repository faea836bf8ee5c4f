using System.Text.Json.Nodes;

namespace Spindlewright.Jupyter.Tests.Clients;

/// <summary>A message as a client sees it.</summary>
internal sealed record ReceivedMessage(JsonObject Header, JsonObject Parent, JsonObject Content)
{
    public string Type => Header["msg_type"]!.GetValue<string>();

    public string? ParentId => Parent["msg_id"]?.GetValue<string>();

    public string Text(string field) => Content[field]!.GetValue<string>();
}

/// <summary>What became of one request: the reply and everything that was published for it.</summary>
internal sealed record Answer(ReceivedMessage Reply, IReadOnlyList<ReceivedMessage> Published)
{
    public string Status => Reply.Text("status");

    public int Count => Reply.Content["execution_count"]!.GetValue<int>();

    public string Stdout => Stream("stdout");

    public string Stderr => Stream("stderr");

    public string? Result => Of("execute_result").SingleOrDefault()?.Content["data"]!["text/plain"]!.GetValue<string>();

    /// <summary>The states published, in order.</summary>
    public IEnumerable<string> States => Of("status").Select(each => each.Text("execution_state"));

    public IEnumerable<ReceivedMessage> Of(string type) => Published.Where(each => each.Type == type);

    private string Stream(string name) =>
        string.Concat(Of("stream").Where(each => each.Text("name") == name).Select(each => each.Text("text")));
}
