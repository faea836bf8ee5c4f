using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>The cells that this kernel ran; they are not kept beyond its end.</summary>
internal sealed class InputHistory
{
    /// <summary>The number of this session; 0 means the same.</summary>
    private const int Session = 1;

    private readonly List<Entry> entries = [];

    /// <summary>Keeps a cell.</summary>
    internal void Add(int line, string code) => entries.Add(new Entry(line, code));

    /// <summary>Keeps the value that the last cell came to.</summary>
    internal void SetOutput(string? text) => entries[^1] = entries[^1] with { Output = text };

    /// <summary>Answers a request.</summary>
    /// <exception cref="RequestException">It asks in a way that is not known.</exception>
    internal JsonObject Answer(JsonObject request)
    {
        var found = request.Text("hist_access_type") switch
        {
            "tail" => Last(entries, request.Number("n") ?? entries.Count),
            "range" => Range(request.Number("session") ?? 0, request.Number("start") ?? 0, request.Number("stop")),
            "search" => Search(request),
            var other => throw new RequestException($"\"hist_access_type\" is \"{other}\"; accepted: tail, range, search."),
        };
        var withOutput = request.Flag("output", missing: false);
        return new JsonObject
        {
            ["status"] = "ok",
            ["history"] = new JsonArray([.. found.Select(entry => (JsonNode)Node(entry, withOutput))]),
        };
    }

    private IEnumerable<Entry> Range(int session, int start, int? stop) =>
        session is 0 or Session
            ? entries.Where(entry => entry.Line >= start && entry.Line < (stop ?? int.MaxValue))
            : [];

    private IEnumerable<Entry> Search(JsonObject request)
    {
        var pattern = Pattern(request.TextOrNull("pattern") ?? "*");
        var found = entries.Where(entry => pattern.IsMatch(entry.Code));
        if (request.Flag("unique", missing: false))
            found = found.GroupBy(entry => entry.Code).Select(group => group.Last()).OrderBy(entry => entry.Line);
        return Last(found, request.Number("n") ?? int.MaxValue);
    }

    private static IEnumerable<Entry> Last(IEnumerable<Entry> found, int count) => found.TakeLast(count);

    /// <summary>Stars and question marks as in the names of files.</summary>
    private static Regex Pattern(string glob)
    {
        var pattern = new StringBuilder();
        foreach (var each in glob)
            pattern.Append(each switch
            {
                '*' => ".*",
                '?' => ".",
                _ => Regex.Escape(each.ToString()),
            });
        return new Regex($"^{pattern}$", RegexOptions.Singleline | RegexOptions.NonBacktracking);
    }

    private static JsonArray Node(Entry entry, bool withOutput) =>
        new(Session, entry.Line, withOutput ? new JsonArray(entry.Code, entry.Output) : entry.Code);

    private sealed record Entry(int Line, string Code, string? Output = null);
}
