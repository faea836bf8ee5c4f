using System.Text.Json.Serialization;

namespace Spindlewright.Notebooks.Protocol;

/// <summary>Something asked of an engine; its answers are events that carry the same number.</summary>
/// <param name="Id">Number of the request, above 0 and unique on its connection.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "request")]
[JsonDerivedType(typeof(OpenRequest), "open")]
[JsonDerivedType(typeof(ExecuteRequest), "execute")]
[JsonDerivedType(typeof(CompleteRequest), "complete")]
[JsonDerivedType(typeof(HoverRequest), "hover")]
[JsonDerivedType(typeof(SignatureRequest), "signature")]
[JsonDerivedType(typeof(IsCompleteRequest), "is-complete")]
[JsonDerivedType(typeof(CancelRequest), "cancel")]
[JsonDerivedType(typeof(ValueRequest), "value")]
[JsonDerivedType(typeof(CloseRequest), "close")]
public abstract record EngineRequest(long Id);

/// <summary>Begins a session with no variables; whatever an earlier session changed in the process is put back.</summary>
/// <param name="Id">Number of the request.</param>
/// <param name="Directory">Current directory of the session; null leaves the one the process began with.</param>
public sealed record OpenRequest(long Id, string? Directory) : EngineRequest(Id);

/// <summary>Runs a piece of code.</summary>
/// <param name="Id">Number of the request.</param>
/// <param name="Code">The code.</param>
/// <param name="Cell">The number by which tracebacks name the code, 1 or more.</param>
public sealed record ExecuteRequest(long Id, string Code, int Cell) : EngineRequest(Id);

/// <summary>Asks what could stand at a place in the code.</summary>
/// <param name="Id">Number of the request.</param>
/// <param name="Code">The code.</param>
/// <param name="Line">Line of the place, from 0.</param>
/// <param name="Column">Column of the place, UTF-16 units from 0.</param>
public sealed record CompleteRequest(long Id, string Code, int Line, int Column) : EngineRequest(Id);

/// <summary>Asks what the word at a place means.</summary>
/// <inheritdoc cref="CompleteRequest"/>
public sealed record HoverRequest(long Id, string Code, int Line, int Column) : EngineRequest(Id);

/// <summary>Asks for the signatures of the call around a place.</summary>
/// <inheritdoc cref="CompleteRequest"/>
public sealed record SignatureRequest(long Id, string Code, int Line, int Column) : EngineRequest(Id);

/// <summary>Asks whether code is whole or goes on.</summary>
/// <param name="Id">Number of the request.</param>
/// <param name="Code">The code.</param>
public sealed record IsCompleteRequest(long Id, string Code) : EngineRequest(Id);

/// <summary>Asks a running request to stop.</summary>
/// <param name="Id">Number of this request.</param>
/// <param name="Target">Number of the request to stop.</param>
public sealed record CancelRequest(long Id, long Target) : EngineRequest(Id);

/// <summary>Asks for the value of a variable.</summary>
/// <param name="Id">Number of the request.</param>
/// <param name="Name">The variable.</param>
public sealed record ValueRequest(long Id, string Name) : EngineRequest(Id);

/// <summary>Ends the session; the process may serve another.</summary>
/// <param name="Id">Number of the request.</param>
public sealed record CloseRequest(long Id) : EngineRequest(Id);
