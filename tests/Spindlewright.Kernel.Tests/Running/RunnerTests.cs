using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Parameters;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>The runner over an engine made of a table, so that it shows what it does by itself.</summary>
public sealed class RunnerTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Progress_names_notebooks_and_cells()
    {
        using var folder = new Folder();
        var news = new List<RunProgress>();
        var runner = new NotebookRunner(new TableEngine(), new RunOptions { Progress = news.Add });
        await runner.RunAsync([folder.Add("a.ipynb", "say x", "", "say y")], Stop);
        Assert.Equal(new NotebookStarted("a.ipynb", 2), news[0]);
        Assert.Equal(new CellStarted("a.ipynb", 1, 2), news[1]);
        Assert.Equal(new CellStarted("a.ipynb", 2, 2), news[2]);
        Assert.Equal(NotebookOutcome.Done, Assert.IsType<NotebookFinished>(news[3]).Result.Outcome);
        Assert.Equal(4, news.Count);
    }

    [Fact]
    public async Task Unreadable_notebooks_are_refused_and_the_others_run()
    {
        using var folder = new Folder();
        var results = await new NotebookRunner(new TableEngine(), new RunOptions()).RunAsync(
            [
                folder.AddText("bad.ipynb", "motor"), folder.AddText("three.ipynb", "{\"nbformat\": 3}"),
                new NotebookJob("none.ipynb", folder.Out("none.ipynb")), folder.Add("good.ipynb", "say x"),
            ], Stop);
        Assert.Equal(
            [NotebookOutcome.Refused, NotebookOutcome.Refused, NotebookOutcome.Refused, NotebookOutcome.Done],
            results.Select(result => result.Outcome));
        Assert.Equal("none.ipynb: there is no such file.", results[2].Fault!.ToString());
        Assert.Contains("field \"nbformat\": is 3", results[1].Fault!.ToString());
        Assert.Equal(2, NotebookResult.ExitCode(results));
        Assert.Equal("x", folder.Text("good.ipynb", 1));
        Assert.False(File.Exists(folder.Out("bad.ipynb")));
    }

    [Fact]
    public async Task A_failing_cell_ends_its_notebook_unless_it_is_meant_to_fail()
    {
        using var folder = new Folder();
        var results = await new NotebookRunner(new TableEngine(), new RunOptions()).RunAsync(
            [folder.Add("a.ipynb", "say x", "#tag raises-exception\nfail", "say y", "fail", "say z")], Stop);
        Assert.Equal("a.ipynb: [4], cell 4 (id \"c4\"), line 1: Failure: as told", results[0].Fault!.ToString());
        Assert.Equal(NotebookOutcome.Failed, results[0].Outcome);
        Assert.Equal("y", folder.Text("a.ipynb", 3));
        Assert.Equal("", folder.Text("a.ipynb", 5));
    }

    [Fact]
    public async Task What_a_cell_takes_back_is_not_stored()
    {
        using var folder = new Folder();
        await new NotebookRunner(new TableEngine(), new RunOptions()).RunAsync(
            [folder.Add("a.ipynb", "take-back x", "take-back x y", "take-back-when-next x")], Stop);
        Assert.Equal(["", "y", "x"], Enumerable.Range(1, 3).Select(cell => folder.Text("a.ipynb", cell)));
    }

    [Fact]
    public async Task Settings_go_to_the_notebooks_that_declare_them()
    {
        using var folder = new Folder();
        NotebookJob[] jobs =
        [
            folder.Add("a.ipynb", "#tag parameters\ndouble boost = 1;"),
            folder.Add("b.ipynb", "#tag parameters\nint poles = 4;"), folder.Add("c.ipynb", "say x"),
        ];
        var options = new RunOptions { Settings = [new("boost", "2"), new("poles", "6")] };
        await new NotebookRunner(new TableEngine(), options).RunAsync(jobs, Stop);
        Assert.Equal("double boost = 2.0;", NotebookReader.ReadFile(folder.Out("a.ipynb")).Cells[0].Source);
        Assert.Equal("int poles = 6;", NotebookReader.ReadFile(folder.Out("b.ipynb")).Cells[0].Source);

        var engine = new TableEngine();
        var wrong = options with { Settings = [new("bost", "2"), new("poles", "x")] };
        var fault = await Assert.ThrowsAsync<ParameterException>(() => new NotebookRunner(engine, wrong).RunAsync(jobs, Stop));
        Assert.Contains("there is no parameter \"bost\"; known: boost (a number such as 1.5), poles (a whole number", fault.Message);
        Assert.Contains("b.ipynb: parameter \"poles\": \"x\" found", fault.Message);
        Assert.Equal(0, engine.Opened);
    }

    [Fact]
    public async Task What_cells_show_can_be_changed_and_a_failing_change_fails_the_cell()
    {
        using var folder = new Folder();
        var options = new RunOptions { Transformer = new Draw() };
        var results = await new NotebookRunner(new TableEngine(), options).RunAsync(
            [folder.Add("a.ipynb", "figure ok"), folder.Add("b.ipynb", "figure bad")], Stop);
        var data = results[0].Executed!.Cells[0].Outputs[0]!["data"]!.AsObject();
        Assert.Equal(["image/svg+xml", "text/plain"], data.Select(pair => pair.Key).Order());
        Assert.Equal("b.ipynb: [1], cell 1 (id \"c1\"): FormatException: What the cell shows cannot be drawn: no figure",
            results[1].Fault!.ToString());
    }

    [Fact]
    public async Task An_interrupted_run_keeps_what_ran_and_leaves_old_files_of_the_rest()
    {
        using var folder = new Folder();
        var jobs = new[] { folder.Add("a.ipynb", "say x", "wait"), folder.Add("b.ipynb", "say y") };
        Directory.CreateDirectory(folder.Out(""));
        await File.WriteAllTextAsync(folder.Out("b.ipynb"), "old", Stop);
        using var interrupt = new CancellationTokenSource();
        var options = new RunOptions { Progress = news => _ = news is CellStarted { Cell: 2 } ? interrupt.CancelAsync() : null };
        var results = await new NotebookRunner(new TableEngine(), options).RunAsync(jobs, interrupt.Token);
        Assert.All(results, result => Assert.Equal(NotebookOutcome.Interrupted, result.Outcome));
        Assert.Equal(130, NotebookResult.ExitCode(results));
        Assert.Equal("x", folder.Text("a.ipynb", 1));
        Assert.Equal("old", await File.ReadAllTextAsync(folder.Out("b.ipynb"), Stop));
    }

    [Fact]
    public async Task What_cannot_be_written_is_told_and_the_old_file_stays()
    {
        using var folder = new Folder();
        var job = folder.Add("a.ipynb", "say x");
        Directory.CreateDirectory(folder.Out("a.ipynb")); // a folder stands where the file should go
        var result = Assert.Single(await new NotebookRunner(new TableEngine(), new RunOptions()).RunAsync([job], Stop));
        Assert.Equal(NotebookOutcome.NotWritten, result.Outcome);
        Assert.Equal(3, NotebookResult.ExitCode([result]));
        Assert.StartsWith("a.ipynb: cannot be written: ", result.Fault!.ToString());
    }

    private sealed class Draw : IOutputTransformer
    {
        public MimeBundle Transform(MimeBundle bundle) => bundle.Find(MimeBundle.FigureRecord) switch
        {
            null => bundle,
            "{\"is\":\"ok\"}" => bundle.Without(MimeBundle.FigureRecord).With("image/svg+xml", "<svg/>"),
            _ => throw new FormatException("no figure"),
        };
    }

    /// <summary>Knows <c>say</c>, <c>fail</c>, <c>wait</c> and <c>figure</c>.</summary>
    private sealed class TableEngine : IExecutionEngine
    {
        public int Opened { get; private set; }

        public Task<IExecutionSession> OpenAsync(SessionSettings settings, CancellationToken cancellation)
        {
            Opened++;
            return Task.FromResult<IExecutionSession>(new TableSession());
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }

    private sealed class TableSession : IExecutionSession
    {
        private readonly TaskCompletionSource<Outcome> waiting = new();

        public Task<Outcome> ExecuteAsync(string code, int cell, Action<EngineEvent> onEvent, CancellationToken cancellation)
        {
            switch (code.Split(' '))
            {
                case ["say", var word]:
                    onEvent(new StreamEvent(1, StreamName.Stdout, word));
                    break;
                case ["figure", var word]:
                    onEvent(new DisplayEvent(1, MimeBundle.Plain("f").With(MimeBundle.FigureRecord, $"{{\"is\":\"{word}\"}}"), "1"));
                    break;
                case ["take-back", var word, .. var then]:
                    onEvent(new StreamEvent(1, StreamName.Stdout, word));
                    onEvent(new ClearEvent(1, WhenNextIsShown: then.Length > 0));
                    foreach (var next in then) onEvent(new StreamEvent(1, StreamName.Stdout, next));
                    break;
                case ["take-back-when-next", var word]:
                    onEvent(new StreamEvent(1, StreamName.Stdout, word));
                    onEvent(new ClearEvent(1, WhenNextIsShown: true));
                    break;
                case ["wait"]:
                    return waiting.Task;
                case ["fail"]:
                    onEvent(new ErrorEvent(1, "Failure", "as told", ["Failure: as told"], cell, 1));
                    return Task.FromResult(Outcome.Failed);
            }

            return Task.FromResult(Outcome.Done);
        }

        public Task<IReadOnlyList<EngineEvent>> AskAsync(Func<long, EngineRequest> request, CancellationToken cancellation) =>
            Task.FromResult<IReadOnlyList<EngineEvent>>([]);

        public Task<bool> CancelAsync(TimeSpan grace) => Task.FromResult(false);

        public void Kill(EngineLoss reason) => waiting.TrySetException(new EngineLostException(reason));

        public long MeasureMemory() => 0;

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
