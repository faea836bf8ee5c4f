using Spindlewright.Kernel.Engine;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

[assembly: AssemblyFixture(typeof(Spindlewright.Kernel.Tests.Engine.WarmEngine))]

namespace Spindlewright.Kernel.Tests.Engine;

/// <summary>What came out of one piece of code.</summary>
internal sealed record Ran(Outcome Outcome, IReadOnlyList<EngineEvent> Events)
{
    public string Stdout => Text(StreamName.Stdout);

    public string Stderr => Text(StreamName.Stderr);

    public ErrorEvent? Error => Events.OfType<ErrorEvent>().SingleOrDefault();

    public string? Returned => Events.OfType<ReturnEvent>().SingleOrDefault()?.Data.Find(MimeBundle.PlainText);

    private string Text(StreamName name) =>
        string.Concat(Events.OfType<StreamEvent>().Where(each => each.Stream == name).Select(each => each.Text));
}

internal static class Session
{
    public static async Task<Ran> RunAsync(this IExecutionSession session, string code, int cell = 1)
    {
        var events = new List<EngineEvent>();
        var outcome = await session.ExecuteAsync(code, cell, events.Add, TestContext.Current.CancellationToken);
        return new Ran(outcome, events);
    }

    /// <summary>Starts code and waits until it runs, not just compiles.</summary>
    public static async Task<Task<Outcome>> StartAsync(this IExecutionSession session, string code, int cell = 1)
    {
        var begun = new TaskCompletionSource();
        var running = session.ExecuteAsync($"Console.WriteLine(\"begun\");\n{code}", cell, happened =>
        {
            if (happened is StreamEvent)
                begun.TrySetResult();
        }, TestContext.Current.CancellationToken);
        await begun.Task.WaitAsync(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        await Task.Delay(100, TestContext.Current.CancellationToken);
        return running;
    }

    public static async Task<T> AskAsync<T>(this IExecutionSession session, Func<long, EngineRequest> request)
        where T : EngineEvent =>
        (await session.AskAsync(request, TestContext.Current.CancellationToken)).OfType<T>().Single();
}

/// <summary>Children that all tests share, each test with a session of its own: starting one takes seconds.</summary>
public sealed class WarmEngine : IAsyncLifetime
{
    public ChildEngine Engine { get; } = new(reuse: true);

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public ValueTask DisposeAsync() => Engine.DisposeAsync();
}
