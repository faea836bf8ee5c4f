using System.Reflection;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Spindlewright.Notebooks.Protocol;
using DisplayEvent = Spindlewright.Notebooks.Protocol.DisplayEvent;
using SignatureHelp = Microsoft.DotNet.Interactive.Events.SignatureHelpProduced;

namespace Spindlewright.Kernel.Engine.Child;

/// <summary>One session of C#: the adapter around the package's kernel.</summary>
/// <remarks>
/// The package is the last of its line, so everything that this project asks of it stands in this class and
/// <see cref="Values"/>. One thing is reached by reflection, since the package keeps it to itself: the options of the
/// compiler, for line numbers in run-time errors.
/// </remarks>
internal sealed class CodeSession : IDisposable
{
    private static readonly FieldInfo OptionsField =
        typeof(CSharpKernel).GetField("_scriptOptions", BindingFlags.Instance | BindingFlags.NonPublic)
        ?? throw new MissingFieldException("The kernel package no longer keeps its compiler options where they were.");

    private static readonly CSharpParseOptions ScriptSyntax = new(LanguageVersion.Latest, kind: SourceCodeKind.Script);

    private readonly CSharpKernel kernel = new();
    private readonly Action<EngineEvent> send;
    private readonly IDisposable subscription;
    private readonly Dictionary<string, string> displays = [];
    private RunningCell? running;
    private int displayCount;

    private CodeSession(Action<EngineEvent> send)
    {
        this.send = send;
        Options = Options.AddReferences(Preamble.Assemblies).WithFileEncoding(Encoding.UTF8).WithEmitDebugInformation(true);
        kernel.AddMiddleware(RunAbortably);
        subscription = kernel.KernelEvents.Subscribe(new Observer(OnEvent));
        CellOutput.Bind(Show);
    }

    /// <summary>Begins a session with the library imported.</summary>
    /// <param name="send">Where events go.</param>
    internal static async Task<CodeSession> OpenAsync(Action<EngineEvent> send)
    {
        var session = new CodeSession(send);
        // A first submission that throws would take its variables with it; this one does not throw.
        await session.kernel.SendAsync(new SubmitCode(Preamble.Code)).ConfigureAwait(false);
        return session;
    }

    /// <summary>Runs code.</summary>
    internal async Task<Outcome> ExecuteAsync(ExecuteRequest request, Action beforeCode)
    {
        using var current = new RunningCell(request.Id, request.Cell, beforeCode, Directory.GetCurrentDirectory());
        Options = Options.WithFilePath(Traceback.CellName(request.Cell));
        running = current;
        try
        {
            await kernel.SendAsync(new SubmitCode(request.Code)).ConfigureAwait(false);
        }
        finally
        {
            running = null;
        }

        if (current.Failure is null || current.WasCancelled)
            return current.WasCancelled ? Outcome.Cancelled : Outcome.Done;
        send(current.Failure);
        return Outcome.Failed;
    }

    /// <summary>Asks the running code to stop, if it is the one meant.</summary>
    internal void Cancel(long target)
    {
        if (running is { } current && current.Request == target)
            current.Cancel();
    }

    internal async Task CompleteAsync(CompleteRequest request)
    {
        var result = await kernel.SendAsync(new RequestCompletions(request.Code, new(request.Line, request.Column)))
            .ConfigureAwait(false);
        var (start, end) = CodeText.WordAt(request.Code, CodeText.Offset(request.Code, request.Line, request.Column));
        var word = request.Code[start..CodeText.Offset(request.Code, request.Line, request.Column)];
        var items = result.Events.OfType<CompletionsProduced>().SelectMany(each => each.Completions)
            .Where(item => item.DisplayText.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            .Select(item => new Completion(item.DisplayText, Plain(item), item.Kind)).ToList();
        send(new CompletionsEvent(request.Id, items, start, end));
    }

    /// <summary>Snippets carry marks for the cursor, which plain text has no use for.</summary>
    private static string Plain(Microsoft.DotNet.Interactive.Events.CompletionItem item) =>
        item.InsertTextFormat == InsertTextFormat.Snippet ? item.DisplayText : item.InsertText;

    internal async Task HoverAsync(HoverRequest request)
    {
        var result = await kernel.SendAsync(new RequestHoverText(request.Code, new(request.Line, request.Column)))
            .ConfigureAwait(false);
        if (result.Events.OfType<HoverTextProduced>().FirstOrDefault() is not { } hover)
            return;
        var data = hover.Content.ToDictionary(each => each.MimeType, each => each.Value);
        data.TryAdd(MimeBundle.PlainText, data.Values.First());
        send(new HoverEvent(request.Id, new MimeBundle(data)));
    }

    internal async Task SignatureAsync(SignatureRequest request)
    {
        // The package sees no call in one that is still being written; closed at the cursor it is one.
        var help = await AskSignatureAsync(request.Code, request.Line, request.Column).ConfigureAwait(false);
        if (help is null)
        {
            var written = request.Code[..CodeText.Offset(request.Code, request.Line, request.Column)].TrimEnd();
            var (line, column) = CodeText.Place(written);
            help = await AskSignatureAsync($"{written})", line, column).ConfigureAwait(false);
        }

        if (help is null)
            return;
        var items = help.Signatures.Select(each => new CallSignature(each.Label, each.Documentation.Value,
            [.. each.Parameters.Select(one => new CallParameter(one.Label, one.Documentation.Value))])).ToList();
        send(new SignaturesEvent(request.Id, items, help.ActiveSignatureIndex, help.ActiveParameterIndex));
    }

    private async Task<SignatureHelp?> AskSignatureAsync(string code, int line, int column)
    {
        var result = await kernel.SendAsync(new RequestSignatureHelp(code, new(line, column))).ConfigureAwait(false);
        return result.Events.OfType<SignatureHelp>().FirstOrDefault(each => each.Signatures is { Count: > 0 });
    }

    internal void IsComplete(IsCompleteRequest request)
    {
        var tree = CSharpSyntaxTree.ParseText(request.Code, ScriptSyntax);
        var broken = tree.GetDiagnostics().Any(each => each.Severity == DiagnosticSeverity.Error);
        var state = !SyntaxFactory.IsCompleteSubmission(tree) ? Completeness.Incomplete
            : broken ? Completeness.Invalid : Completeness.Complete;
        send(new CompletenessEvent(request.Id, state, CodeText.NextIndent(request.Code)));
    }

    internal void Value(ValueRequest request) =>
        send(kernel.TryGetValue<object?>(request.Name, out var value)
            ? new ValueEvent(request.Id, request.Name, value?.GetType().FullName ?? "null", Values.Bundle(value))
            : new ValueEvent(request.Id, request.Name, null, MimeBundle.Empty));

    /// <inheritdoc/>
    public void Dispose()
    {
        subscription.Dispose();
        kernel.Dispose();
    }

    private ScriptOptions Options
    {
        get => (ScriptOptions)OptionsField.GetValue(kernel)!;
        set => OptionsField.SetValue(kernel, value);
    }

    private long Request => running?.Request ?? 0;

    private Task RunAbortably(KernelCommand command, KernelInvocationContext context, KernelPipelineContinuation next)
    {
        if (running is not { } current || command is not SubmitCode)
            return next(command, context);
        current.Run(() => next(command, context));
        return Task.CompletedTask;
    }

    private Shown Show(object? value, string? mimeType)
    {
        displayCount++;
        var id = FormattableString.Invariant($"shown-{displayCount}");
        send(new DisplayEvent(Request, Format(value, mimeType), id));
        return new Shown(other => send(new DisplayUpdateEvent(
            Request, Format(other, other is string ? mimeType : null), id)));
    }

    private static MimeBundle Format(object? value, string? mimeType) =>
        mimeType is null ? Values.Bundle(value) : Values.Bundle(mimeType, (string)value!);

    private void OnEvent(KernelEvent happened)
    {
        if (running is not { } current)
            return;
        switch (happened)
        {
            case ReturnValueProduced value:
                send(new ReturnEvent(current.Request, Values.Bundle(value.Value, value.FormattedValues)));
                break;
            case DisplayedValueProduced value:
                send(new DisplayEvent(current.Request, Values.Bundle(value.Value, value.FormattedValues), IdOf(value.ValueId)));
                break;
            case DisplayedValueUpdated value:
                send(new DisplayUpdateEvent(
                    current.Request, Values.Bundle(value.Value, value.FormattedValues), IdOf(value.ValueId)));
                break;
            case CommandFailed failed:
                Fail(current, failed);
                break;
        }
    }

    private void Fail(RunningCell current, CommandFailed failed)
    {
        if (failed.Exception?.InnerException is CompilationErrorException compilation)
        {
            send(new DiagnosticsEvent(current.Request, Traceback.Items(compilation.Diagnostics)));
            current.Failure ??= Traceback.Of(current.Request, current.Cell, compilation.Diagnostics);
        }
        else
        {
            current.Failure ??= failed.Exception is { } fault
                ? Traceback.Of(current.Request, fault, current.Directory)
                : new ErrorEvent(current.Request, "Error", failed.Message, [failed.Message], current.Cell, null);
        }
    }

    /// <summary>The package's identifiers differ from run to run; a count does not.</summary>
    private string IdOf(string? valueId)
    {
        if (valueId is not null && displays.TryGetValue(valueId, out var known))
            return known;
        displayCount++;
        var id = FormattableString.Invariant($"shown-{displayCount}");
        if (valueId is not null)
            displays[valueId] = id;
        return id;
    }

    private sealed class Observer(Action<KernelEvent> handle) : IObserver<KernelEvent>
    {
        public void OnCompleted()
        {
        }

        public void OnError(Exception error)
        {
        }

        public void OnNext(KernelEvent value) => handle(value);
    }
}
