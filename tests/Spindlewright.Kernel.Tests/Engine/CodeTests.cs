using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Engine;

public sealed class CodeTests(WarmEngine warm) : IAsyncLifetime
{
    private IExecutionSession session = null!;

    public async ValueTask InitializeAsync() => session = await warm.Engine.OpenAsync(new SessionSettings());

    public ValueTask DisposeAsync() => session.DisposeAsync();

    [Fact]
    public async Task A_value_comes_back_and_variables_last()
    {
        Assert.Equal(Outcome.Done, (await session.RunAsync("var a = 20;", 1)).Outcome);
        Assert.Equal("42", (await session.RunAsync("a + 22", 2)).Returned);
    }

    [Fact]
    public async Task The_library_is_imported_without_a_word()
    {
        var ran = await session.RunAsync(
            "var power = Power.FromKilowatts(0.75); Console.WriteLine(power.Watts); typeof(Guard).FullName", 1);
        Assert.Null(ran.Error);
        Assert.StartsWith("750", ran.Stdout);
        Assert.Contains("Spindlewright.Foundations.Guard", ran.Returned);
    }

    [Fact]
    public async Task The_assemblies_of_cells_are_those_of_the_host()
    {
        var ran = await session.RunAsync("""
            AppDomain.CurrentDomain.GetAssemblies().Count(each => each.GetName().Name == "Spindlewright")
            """);
        Assert.Equal("1", ran.Returned);
    }

    [Fact]
    public async Task Console_output_comes_as_streams_in_order()
    {
        var ran = await session.RunAsync("Console.WriteLine(\"a\"); Console.Error.Write(\"b\"); Console.Write(\"⌀ 😀\");");
        Assert.Equal("a\n⌀ 😀", ran.Stdout);
        Assert.Equal("b", ran.Stderr);
    }

    [Fact]
    public async Task Show_shows_and_replaces()
    {
        var ran = await session.RunAsync("var shown = Show(1.5); shown.Replace(2.5); ShowAs(\"text/markdown\", \"**x**\");");
        var first = Assert.IsType<DisplayEvent>(ran.Events[0]);
        var second = Assert.IsType<DisplayUpdateEvent>(ran.Events[1]);
        Assert.Equal("1.5", first.Data.Find("text/plain"));
        Assert.Equal("2.5", second.Data.Find("text/plain"));
        Assert.Equal(first.DisplayId, second.DisplayId);
        Assert.Equal("**x**", Assert.IsType<DisplayEvent>(ran.Events[2]).Data.Find("text/markdown"));
    }

    [Fact]
    public async Task An_error_names_cell_and_line_and_no_path()
    {
        await session.RunAsync("int Divide(int a, int b)\n{\n    return a / b;\n}", 1);
        var ran = await session.RunAsync("var one = 1;\n\nDivide(one, 0)", 2);
        Assert.Equal(Outcome.Failed, ran.Outcome);
        var error = Assert.IsType<ErrorEvent>(ran.Error);
        Assert.Equal("DivideByZeroException", error.Name);
        Assert.Equal(
            ["DivideByZeroException: Attempted to divide by zero.", "   cell [1], line 3, in Divide", "   cell [2], line 3"],
            error.Traceback);
        Assert.Equal((1, 3), (error.Cell, error.Line));
    }

    [Fact]
    public async Task An_error_inside_another_is_told_too()
    {
        var ran = await session.RunAsync("""
            try { throw new IOException("inner"); }
            catch (Exception e) { throw new InvalidOperationException("outer", e); }
            """, 3);
        Assert.Equal("InvalidOperationException", ran.Error!.Name);
        Assert.Contains("because of IOException: inner", ran.Error.Traceback);
        Assert.DoesNotContain(ran.Error.Traceback, line => line.Contains('/'));
    }

    [Fact]
    public async Task Code_that_does_not_compile_is_diagnosed()
    {
        var ran = await session.RunAsync("var x = 1;\n  y = x;", 4);
        Assert.Equal(Outcome.Failed, ran.Outcome);
        Assert.Equal("CompilationError", ran.Error!.Name);
        Assert.StartsWith("cell [4], line 2, column 3: CS0103: The name 'y' does not exist", ran.Error.Message);
        var item = Assert.Single(ran.Events.OfType<DiagnosticsEvent>().Single().Items);
        Assert.Equal((1, 2, 1, 3), (item.Line, item.Column, item.EndLine, item.EndColumn));
    }

    [Fact]
    public async Task A_first_cell_that_throws_leaves_the_session_usable()
    {
        var ran = await session.RunAsync("var kept = 5; throw new Exception(\"first\");");
        Assert.Equal(Outcome.Failed, ran.Outcome);
        Assert.Equal("5", (await session.RunAsync("kept", 2)).Returned);
    }

    [Fact]
    public async Task Completions_know_the_session_and_the_word()
    {
        await session.RunAsync("var spindleSpeed = 310.0;");
        var local = await session.AskAsync<CompletionsEvent>(id => new CompleteRequest(id, "1 + spindle", 0, 11));
        Assert.Contains(local.Items, item => item.Insert == "spindleSpeed");
        Assert.Equal((4, 11), (local.Start, local.End));
        var member = await session.AskAsync<CompletionsEvent>(id => new CompleteRequest(id, "Power.FromKilow", 0, 15));
        Assert.Contains(member.Items, item => item.Insert == "FromKilowatts");
    }

    [Fact]
    public async Task Hover_tells_what_a_name_is()
    {
        await session.RunAsync("var spindleSpeed = 310.0;");
        var hover = await session.AskAsync<HoverEvent>(id => new HoverRequest(id, "spindleSpeed * 2", 0, 3));
        Assert.Contains("double", hover.Data.Find("text/plain"));
        Assert.Contains("spindleSpeed", hover.Data.Find("text/plain"));
    }

    [Fact]
    public async Task Hover_over_nothing_has_no_answer() =>
        Assert.Empty(await session.AskAsync(id => new HoverRequest(id, "   ", 0, 1), TestContext.Current.CancellationToken));

    [Fact]
    public async Task Signatures_point_at_the_parameter()
    {
        var help = await session.AskAsync<SignaturesEvent>(id => new SignatureRequest(id, "Math.Pow(2, ", 0, 12));
        Assert.Contains(help.Items, item => item.Label.Contains("Pow(double x, double y)"));
        Assert.Equal(1, help.ActiveParameter);
    }

    [Theory]
    [InlineData("1 + 1", Completeness.Complete, "")]
    [InlineData("if (true) {", Completeness.Incomplete, "    ")]
    [InlineData("var x = ) 3;", Completeness.Invalid, "")]
    public async Task Completeness_is_told(string code, Completeness state, string indent)
    {
        var told = await session.AskAsync<CompletenessEvent>(id => new IsCompleteRequest(id, code));
        Assert.Equal((state, indent), (told.State, told.Indent));
    }

    [Fact]
    public async Task A_value_is_told_and_a_missing_one_too()
    {
        await session.RunAsync("var ratio = 0.4;");
        var known = await session.AskAsync<ValueEvent>(id => new ValueRequest(id, "ratio"));
        Assert.Equal(("System.Double", "0.4"), (known.Type, known.Data.Find("text/plain")));
        Assert.Null((await session.AskAsync<ValueEvent>(id => new ValueRequest(id, "none"))).Type);
    }

    [Theory]
    [InlineData("while (true) ;")]
    [InlineData("while (true) Console.WriteLine(1);")]
    [InlineData("Thread.Sleep(100_000);")]
    [InlineData("for (var i = 0; ; i++) { try { i++; } catch { } }")]
    public async Task Cancelling_stops_code_and_keeps_variables(string code)
    {
        await session.RunAsync("var kept = 7;");
        var running = await session.StartAsync(code, 2);
        Assert.True(await session.CancelAsync(TimeSpan.FromSeconds(5)));
        Assert.Equal(Outcome.Cancelled, await running);
        var after = await session.RunAsync("Console.Write(kept);", 3);
        Assert.Equal("7", after.Stdout);
    }
}
