using System.Text.Json.Serialization;

namespace Spindlewright.Notebooks.Protocol;

/// <summary>Something an engine says about a request.</summary>
/// <param name="Request">Number of the request it belongs to; 0 when nothing was running.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "event")]
[JsonDerivedType(typeof(DisplayEvent), "display")]
[JsonDerivedType(typeof(DisplayUpdateEvent), "display-update")]
[JsonDerivedType(typeof(ClearEvent), "clear")]
[JsonDerivedType(typeof(StreamEvent), "stream")]
[JsonDerivedType(typeof(ReturnEvent), "return")]
[JsonDerivedType(typeof(ErrorEvent), "error")]
[JsonDerivedType(typeof(DiagnosticsEvent), "diagnostics")]
[JsonDerivedType(typeof(CompletionsEvent), "completions")]
[JsonDerivedType(typeof(HoverEvent), "hover")]
[JsonDerivedType(typeof(SignaturesEvent), "signatures")]
[JsonDerivedType(typeof(CompletenessEvent), "completeness")]
[JsonDerivedType(typeof(ValueEvent), "value")]
[JsonDerivedType(typeof(FinishedEvent), "finished")]
public abstract record EngineEvent(long Request);

/// <summary>Something is shown.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Data">What is shown, by MIME type.</param>
/// <param name="DisplayId">The name by which it can be changed later, counted from 1 in each session.</param>
public sealed record DisplayEvent(long Request, MimeBundle Data, string DisplayId) : EngineEvent(Request);

/// <summary>Something shown before is changed.</summary>
/// <inheritdoc cref="DisplayEvent"/>
public sealed record DisplayUpdateEvent(long Request, MimeBundle Data, string DisplayId) : EngineEvent(Request);

/// <summary>What the cell has shown so far is taken back.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="WhenNextIsShown">True to leave it until something else comes, so that nothing flickers.</param>
public sealed record ClearEvent(long Request, bool WhenNextIsShown = false) : EngineEvent(Request);

/// <summary>Which stream text was written to.</summary>
public enum StreamName
{
    /// <summary>Standard output.</summary>
    Stdout,

    /// <summary>Standard error.</summary>
    Stderr,
}

/// <summary>Text was written.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Stream">Which stream.</param>
/// <param name="Text">The text.</param>
/// <param name="IsRaw">
/// True for bytes written past the console, by the code or by processes it started: when they arrive says nothing
/// about their order among the other events.
/// </param>
public sealed record StreamEvent(long Request, StreamName Stream, string Text, bool IsRaw = false)
    : EngineEvent(Request);

/// <summary>The value of the last expression.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Data">The value, by MIME type.</param>
public sealed record ReturnEvent(long Request, MimeBundle Data) : EngineEvent(Request);

/// <summary>The request failed; there is at most one of these a request.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Name">Kind of error, such as <c>DivideByZeroException</c> or <c>CompilationError</c>.</param>
/// <param name="Message">What went wrong.</param>
/// <param name="Traceback">Lines that name cell and line, innermost first, without paths.</param>
/// <param name="Cell">Number of the innermost cell involved; null when unknown.</param>
/// <param name="Line">Line in that cell, from 1; null when unknown.</param>
public sealed record ErrorEvent(
    long Request, string Name, string Message, IReadOnlyList<string> Traceback, int? Cell, int? Line)
    : EngineEvent(Request);

/// <summary>What the compiler said about code.</summary>
/// <param name="Severity">"error" or "warning".</param>
/// <param name="Code">The compiler's number for it, such as CS0103.</param>
/// <param name="Message">The text.</param>
/// <param name="Line">Line of its start, from 0.</param>
/// <param name="Column">Column of its start, from 0.</param>
/// <param name="EndLine">Line of its end, from 0.</param>
/// <param name="EndColumn">Column of its end, from 0.</param>
public sealed record CodeDiagnostic(
    string Severity, string Code, string Message, int Line, int Column, int EndLine, int EndColumn);

/// <summary>What the compiler said; positions count from 0.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Items">Errors and warnings.</param>
public sealed record DiagnosticsEvent(long Request, IReadOnlyList<CodeDiagnostic> Items) : EngineEvent(Request);

/// <summary>One thing that could stand at a place.</summary>
/// <param name="Label">What is listed.</param>
/// <param name="Insert">What is put into the code.</param>
/// <param name="Kind">What it is, such as Method or Property.</param>
public sealed record Completion(string Label, string Insert, string Kind);

/// <summary>Answer to <see cref="CompleteRequest"/>.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Items">What could stand there.</param>
/// <param name="Start">Where the word to replace begins, UTF-16 units from the beginning of the code.</param>
/// <param name="End">Where it ends.</param>
public sealed record CompletionsEvent(long Request, IReadOnlyList<Completion> Items, int Start, int End)
    : EngineEvent(Request);

/// <summary>Answer to <see cref="HoverRequest"/>; absent when there is nothing to say.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Data">The explanation, as text/markdown and text/plain.</param>
public sealed record HoverEvent(long Request, MimeBundle Data) : EngineEvent(Request);

/// <summary>One way to call a method.</summary>
/// <param name="Label">The whole signature.</param>
/// <param name="Documentation">Its description; may be empty.</param>
/// <param name="Parameters">Its parameters.</param>
public sealed record CallSignature(string Label, string Documentation, IReadOnlyList<CallParameter> Parameters);

/// <summary>A parameter of a method.</summary>
/// <param name="Label">Its declaration.</param>
/// <param name="Documentation">Its description; may be empty.</param>
public sealed record CallParameter(string Label, string Documentation);

/// <summary>Answer to <see cref="SignatureRequest"/>; absent outside a call.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Items">The ways to call.</param>
/// <param name="Active">Index of the one meant.</param>
/// <param name="ActiveParameter">Index of the parameter at the place.</param>
public sealed record SignaturesEvent(long Request, IReadOnlyList<CallSignature> Items, int Active, int ActiveParameter)
    : EngineEvent(Request);

/// <summary>Whether code is whole.</summary>
public enum Completeness
{
    /// <summary>It can run.</summary>
    Complete,

    /// <summary>It goes on in another line.</summary>
    Incomplete,

    /// <summary>No further line can make it right.</summary>
    Invalid,
}

/// <summary>Answer to <see cref="IsCompleteRequest"/>.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="State">Whether the code is whole.</param>
/// <param name="Indent">What the next line may begin with, when it goes on.</param>
public sealed record CompletenessEvent(long Request, Completeness State, string Indent) : EngineEvent(Request);

/// <summary>Answer to <see cref="ValueRequest"/>.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Name">The variable.</param>
/// <param name="Type">Its type's full name; null when there is no such variable.</param>
/// <param name="Data">Its value, by MIME type.</param>
public sealed record ValueEvent(long Request, string Name, string? Type, MimeBundle Data) : EngineEvent(Request);

/// <summary>How a request ended.</summary>
public enum Outcome
{
    /// <summary>Done.</summary>
    Done,

    /// <summary>It failed, and an <see cref="ErrorEvent"/> said why.</summary>
    Failed,

    /// <summary>It was cancelled.</summary>
    Cancelled,
}

/// <summary>The last event of a request.</summary>
/// <param name="Request">Number of the request.</param>
/// <param name="Outcome">How it ended.</param>
public sealed record FinishedEvent(long Request, Outcome Outcome) : EngineEvent(Request);
