using System.Text.Json.Nodes;
using Spindlewright.Jupyter.Tests.Clients;

namespace Spindlewright.Jupyter.Tests;

/// <summary>What each request is answered with.</summary>
public sealed class MessageTests(KernelProcess kernel) : IClassFixture<KernelProcess>, IDisposable
{
    private readonly KernelClient client = kernel.Connect();

    public void Dispose() => client.Dispose();

    [Fact]
    public void A_cell_is_busy_echoed_shown_answered_and_idle()
    {
        var answer = client.Execute("Console.WriteLine(\"turns\"); 6 * 7");
        Assert.Equal("ok", answer.Status);
        Assert.Equal(["status", "execute_input", "stream", "execute_result", "status"], answer.Published.Select(each => each.Type));
        Assert.Equal(["busy", "idle"], answer.States);
        Assert.Equal(("turns\n", "42"), (answer.Stdout, answer.Result));
        Assert.Equal(answer.Count, answer.Of("execute_input").Single().Content["execution_count"]!.GetValue<int>());
        Assert.Equal(answer.Count + 1, client.Execute("0").Count);
    }

    [Theory]
    [InlineData("kernel_info_request")]
    [InlineData("comm_info_request")]
    public void Every_request_is_busy_and_idle(string type)
    {
        var answer = client.Ask(type, []);
        Assert.Equal(["busy", "idle"], answer.States);
        Assert.Equal("ok", answer.Status);
    }

    [Fact]
    public void Text_before_a_shown_thing_comes_before_it()
    {
        var answer = client.Execute("Console.Write(\"a\"); Show(1); Console.Error.Write(\"b\"); Console.Write(\"c\"); 2");
        Assert.Equal(
            ["status", "execute_input", "stream", "display_data", "stream", "stream", "execute_result", "status"],
            answer.Published.Select(each => each.Type));
    }

    [Fact]
    public void A_failed_cell_has_one_error_that_names_cell_and_line()
    {
        var answer = client.Execute("var depth = 1;\nthrow new InvalidOperationException(\"stalled\");");
        var error = Assert.Single(answer.Of("error"));
        Assert.Equal("error", answer.Status);
        Assert.Equal(("InvalidOperationException", "stalled"), (error.Text("ename"), error.Text("evalue")));
        Assert.Contains($"cell [{answer.Count}], line 2", error.Content["traceback"]!.ToJsonString());
        Assert.Equal(error.Content["traceback"]!.ToJsonString(), answer.Reply.Content["traceback"]!.ToJsonString());
    }

    [Fact]
    public void Code_that_does_not_compile_is_an_error_too()
    {
        var answer = client.Execute("var broken = nothingOfThatName;");
        Assert.Equal("CompilationError", Assert.Single(answer.Of("error")).Text("ename"));
        Assert.Contains("line 1, column 14", answer.Reply.Text("evalue"));
    }

    [Fact]
    public void A_silent_cell_publishes_nothing_and_counts_nothing()
    {
        var before = client.Execute("0").Count;
        var answer = client.Execute("Console.WriteLine(1); Show(2); var quiet = 3; quiet", silent: true);
        Assert.Equal(["busy", "idle"], answer.States);
        Assert.Equal(2, answer.Published.Count);
        Assert.Equal((before + 1, "3"), (client.Execute("quiet").Count, client.Execute("quiet").Result));
        Assert.Equal(2, client.Execute("throw new Exception();", silent: true).Published.Count);
    }

    [Fact]
    public void A_cell_that_is_not_stored_is_echoed_but_not_counted()
    {
        var before = client.Execute("0").Count;
        Assert.Equal("5", client.Execute("2 + 3", store: false).Result);
        Assert.Equal(before + 1, client.Execute("0").Count);
    }

    [Fact]
    public void Expressions_are_evaluated_one_by_one()
    {
        var answer = client.Execute("var turns = 12;", expressions: new JsonObject { ["good"] = "turns * 2", ["bad"] = "turns / (turns - 12)", ["none"] = "turns++;" });
        var values = answer.Reply.Content["user_expressions"]!;
        Assert.Equal("24", values["good"]!["data"]!["text/plain"]!.GetValue<string>());
        Assert.Equal(("error", "DivideByZeroException"), (values["bad"]!["status"]!.GetValue<string>(), values["bad"]!["ename"]!.GetValue<string>()));
        Assert.Equal("NoValue", values["none"]!["ename"]!.GetValue<string>());
        Assert.Empty(answer.Of("error"));
        Assert.Equal("ok", answer.Status);
    }

    [Fact]
    public void Expressions_after_an_error_are_not_evaluated_and_the_next_cell_works()
    {
        client.Execute("var evaluated = 0;");
        var answer = client.Execute("throw new Exception(\"first\");", expressions: new JsonObject { ["x"] = "evaluated++" });
        Assert.Equal("error", answer.Status);
        Assert.Empty(answer.Reply.Content["user_expressions"]!.AsObject());
        Assert.Equal("0", client.Execute("evaluated").Result);
    }

    [Fact]
    public void A_blank_cell_is_nothing()
    {
        var before = client.Execute("0").Count;
        Assert.Equal("ok", client.Execute(" \n").Status);
        Assert.Equal(before + 1, client.Execute("0").Count);
    }

    [Fact]
    public void What_is_shown_can_be_replaced_and_cleared()
    {
        var first = client.Execute("var shown = Show(1); ClearOutput(whenNextIsShown: true); Show(2);");
        var name = first.Of("display_data").First().Content["transient"]!["display_id"]!.GetValue<string>();
        Assert.True(Assert.Single(first.Of("clear_output")).Content["wait"]!.GetValue<bool>());
        var update = Assert.Single(client.Execute("shown.Replace(3);").Of("update_display_data"));
        Assert.Equal(name, update.Content["transient"]!["display_id"]!.GetValue<string>());
        Assert.Equal("3", update.Content["data"]!["text/plain"]!.GetValue<string>());
    }

    [Fact]
    public void Plain_text_stands_beside_every_richer_output()
    {
        var answer = client.Execute("""
            var handbook = Handbook.FromEmbedded();
            foreach (var section in Cautions.Sections) Show(section);
            ShowAs("text/html", "<b>x</b>"); ShowAs("image/svg+xml", "<svg/>"); ShowAs("application/json", "{\"a\":1}");
            Show(new Figure("level", "A level line", new Axis("x", "Hz"), new Axis("y", "N·m"), [new Curve(Role.Bound, [0, 1], [1, 1])]));
            """);
        Assert.Equal("ok", answer.Status);
        var shown = answer.Of("display_data").Select(each => each.Content["data"]!.AsObject()).ToList();
        Assert.True(shown.Count > 5);
        Assert.All(shown, data => Assert.True(data.ContainsKey("text/plain")));
        Assert.Equal(["image/svg+xml", "text/html", "text/plain"], shown[^1].Select(each => each.Key).Order());
        Assert.Contains("<svg", shown[^1]["text/html"]!.GetValue<string>());
        Assert.Equal(1, shown[^2]["application/json"]!["a"]!.GetValue<int>());
    }

    [Theory]
    [InlineData("1 + 1", "complete")]
    [InlineData("foreach (var x in y) {", "incomplete")]
    [InlineData("var x = ) 3;", "invalid")]
    public void Completeness_is_told(string code, string status) =>
        Assert.Equal(status, client.Ask("is_complete_request", new JsonObject { ["code"] = code }).Status);

    [Fact]
    public void Places_count_code_points_beyond_the_basic_plane()
    {
        client.Execute("var spindleSpeed = 310.0;");
        const string Code = "var note = \"🔩🔩 𝑛\"; spindleSp";
        var points = Code.EnumerateRunes().Count();
        Assert.NotEqual(Code.Length, points);
        var found = client.Ask("complete_request", new JsonObject { ["code"] = Code, ["cursor_pos"] = points }).Reply.Content;
        Assert.Equal("spindleSpeed", found["matches"]!.AsArray().Single()!.GetValue<string>());
        Assert.Equal((points - 9, points), (found["cursor_start"]!.GetValue<int>(), found["cursor_end"]!.GetValue<int>()));
        var told = client.Ask("inspect_request", new JsonObject { ["code"] = Code.Replace("spindleSp", "spindleSpeed"), ["cursor_pos"] = points, ["detail_level"] = 0 });
        Assert.Contains("double spindleSpeed", told.Reply.Content["data"]!["text/plain"]!.GetValue<string>());
        Assert.Equal("🔩🔩 𝑛", client.Execute("\"🔩🔩 𝑛\"").Result);
    }

    [Fact]
    public void Inspecting_tells_units_and_ranges_from_the_library()
    {
        var told = Inspect("CircuitSolver.Solve", 16);
        Assert.Contains("Rms a phase of the star", told);
        Assert.Contains("0 synchronous, 1 standstill", told);
        Assert.Contains("ωs", Inspect("CircuitSolver", 5));
    }

    [Fact]
    public void Inspecting_within_a_call_tells_how_it_is_made()
    {
        const string Code = "CircuitSolver.Solve(circuit, ";
        var told = Inspect(Code, Code.Length);
        Assert.Contains("double slip", told);
        Assert.Contains("Here: frequency", told);
    }

    [Fact]
    public void Inspecting_nothing_finds_nothing() =>
        Assert.False(client.Ask("inspect_request", new JsonObject { ["code"] = "  ", ["cursor_pos"] = 1 }).Reply.Content["found"]!.GetValue<bool>());

    [Fact]
    public void History_gives_ranges_and_finds_patterns()
    {
        var first = client.Execute("\"drilled\" + 1").Count;
        client.Execute("\"reamed\" + 2");
        var range = History(new JsonObject { ["hist_access_type"] = "range", ["session"] = 0, ["start"] = first, ["stop"] = first + 2, ["output"] = true });
        Assert.Equal(2, range.Count);
        Assert.Equal("reamed2", range[1]![2]![1]!.GetValue<string>());
        var found = History(new JsonObject { ["hist_access_type"] = "search", ["pattern"] = "*rea?ed*", ["unique"] = true });
        Assert.Equal("\"reamed\" + 2", Assert.Single(found)![2]!.GetValue<string>());
        Assert.Empty(History(new JsonObject { ["hist_access_type"] = "range", ["session"] = -1, ["start"] = 1 }));
    }

    [Fact]
    public void A_comm_to_an_unknown_target_is_closed()
    {
        var id = client.Send("comm_open", new JsonObject { ["comm_id"] = "c-1", ["target_name"] = "nobody", ["data"] = new JsonObject() });
        var published = client.AwaitIdle(id);
        Assert.Equal("c-1", Assert.Single(published, each => each.Type == "comm_close").Text("comm_id"));
    }

    [Fact]
    public void A_megabyte_of_output_arrives_whole()
    {
        var answer = client.Execute("for (var i = 0; i < 20_000; i++) Console.WriteLine(new string((char)('a' + i % 26), 52));");
        Assert.Equal(20_000 * 53, answer.Stdout.Length);
        Assert.Equal(20_000, answer.Stdout.Split('\n').Count(line => line.Length == 52 && line.All(c => c == line[0])));
        Assert.True(answer.Of("stream").Count() < 2_000);
    }

    [Fact]
    public void Output_without_end_is_cut_with_a_note()
    {
        var answer = client.Execute("var line = new string('x', 99_999); for (var i = 0; i < 200; i++) Console.WriteLine(line);");
        Assert.Equal(8 << 20, answer.Stdout.Length);
        Assert.Contains("Output cut: the cell wrote 20000000 bytes", answer.Stderr);
    }

    [Theory]
    [InlineData("execute_request", "{}", "\"code\" is missing")]
    [InlineData("execute_request", """{"code":7}""", "\"code\" is not a string")]
    [InlineData("complete_request", """{"code":"x","cursor_pos":"end"}""", "\"cursor_pos\" is not a whole number")]
    [InlineData("history_request", """{"hist_access_type":"all"}""", "accepted: tail, range, search")]
    public void A_request_that_lacks_something_is_refused_with_the_reason(string type, string content, string reason)
    {
        var answer = client.Ask(type, JsonNode.Parse(content)!.AsObject());
        Assert.Equal(("error", "InvalidRequest"), (answer.Status, answer.Reply.Text("ename")));
        Assert.Contains(reason, answer.Reply.Text("evalue"));
    }

    [Fact]
    public void A_name_that_is_not_known_has_nothing_to_page()
    {
        var answer = client.Execute("thereIsNoSuchName?");
        Assert.Equal("ok", answer.Status);
        Assert.Empty(answer.Reply.Content["payload"]!.AsArray());
        Assert.Contains("Nothing is known of \"thereIsNoSuchName\"", answer.Stderr);
    }

    private string Inspect(string code, int place) =>
        client.Ask("inspect_request", new JsonObject { ["code"] = code, ["cursor_pos"] = place })
            .Reply.Content["data"]!["text/plain"]!.GetValue<string>();

    private JsonArray History(JsonObject request) => client.Ask("history_request", request).Reply.Content["history"]!.AsArray();
}
