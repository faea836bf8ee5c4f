using System.Globalization;
using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Notebooks.Running;

/// <summary>Something that runs code in sessions, each with variables of its own.</summary>
public interface IExecutionEngine : IAsyncDisposable
{
    /// <summary>Begins a session.</summary>
    /// <param name="settings">What the session needs.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The session.</returns>
    /// <exception cref="EngineLostException">The engine does not start.</exception>
    Task<IExecutionSession> OpenAsync(SessionSettings settings, CancellationToken cancellation = default);
}

/// <summary>What a session needs.</summary>
/// <param name="Directory">Current directory of the code; null for that of the program.</param>
/// <param name="MemoryBytes">
/// Most memory, bytes; the engine may use it as a second net, since whoever runs the session watches
/// <see cref="IExecutionSession.MeasureMemory"/>. Null for no limit.
/// </param>
public sealed record SessionSettings(string? Directory = null, long? MemoryBytes = null);

/// <summary>One session: code that runs in it sees the variables of what ran before.</summary>
/// <remarks>One request runs at a time, except <see cref="CancelAsync"/> and <see cref="Kill"/>. Disposing ends it.</remarks>
public interface IExecutionSession : IAsyncDisposable
{
    /// <summary>Runs code; every event but the last is handed on in order, on one thread at a time.</summary>
    /// <param name="code">The code.</param>
    /// <param name="cell">The number by which tracebacks name it.</param>
    /// <param name="onEvent">Receives the events.</param>
    /// <param name="cancellation">Asks the code to stop, as <see cref="CancelAsync"/> does.</param>
    /// <returns>How it ended.</returns>
    /// <exception cref="EngineLostException">The engine ended, by itself or by <see cref="Kill"/>.</exception>
    Task<Outcome> ExecuteAsync(
        string code, int cell, Action<EngineEvent> onEvent, CancellationToken cancellation = default);

    /// <summary>Asks anything else: completions, hover, signatures, completeness, a value.</summary>
    /// <param name="request">Makes the request from its number.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    /// <returns>The answers, without the last event.</returns>
    /// <exception cref="EngineLostException">The engine ended.</exception>
    Task<IReadOnlyList<EngineEvent>> AskAsync(
        Func<long, EngineRequest> request, CancellationToken cancellation = default);

    /// <summary>Asks the running code to stop; when it does not stop in time, ends the engine.</summary>
    /// <param name="grace">How long it may take.</param>
    /// <returns>True when the session goes on with its variables.</returns>
    Task<bool> CancelAsync(TimeSpan grace);

    /// <summary>Ends the engine at once, with every process the code started.</summary>
    /// <param name="reason">What <see cref="EngineLostException"/> then says.</param>
    void Kill(EngineLoss reason);

    /// <summary>Measures the memory of the session, with the processes the code started.</summary>
    /// <returns>Resident bytes; 0 when unknown.</returns>
    long MeasureMemory();
}

/// <summary>Why an engine ended.</summary>
/// <param name="Name">A short name, which a notebook shows as the kind of error.</param>
/// <param name="Message">One sentence.</param>
public sealed record EngineLoss(string Name, string Message)
{
    /// <summary>Tells it as the error of the cell that was running.</summary>
    /// <param name="cell">The cell's number.</param>
    /// <returns>The error.</returns>
    public ErrorEvent ToError(int cell) => new(
        0, Name, Message, [$"{Name}: {Message}", string.Create(CultureInfo.InvariantCulture, $"   cell [{cell}]")], cell, null);
}

/// <summary>Raised when the engine ended before it could answer.</summary>
/// <param name="loss">Why.</param>
/// <param name="inner">The error beneath, if any.</param>
public sealed class EngineLostException(EngineLoss loss, Exception? inner = null) : Exception(loss.Message, inner)
{
    /// <summary>Why.</summary>
    public EngineLoss Loss { get; } = loss;
}

/// <summary>Changes what an engine shows before it is stored or sent on, such as drawing a figure from its record.</summary>
public interface IOutputTransformer
{
    /// <summary>Changes one bundle.</summary>
    /// <param name="bundle">What the engine sent.</param>
    /// <returns>What is stored; the same bundle when there is nothing to change.</returns>
    MimeBundle Transform(MimeBundle bundle);
}
