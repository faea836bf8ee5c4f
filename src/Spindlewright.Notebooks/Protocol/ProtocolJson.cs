using System.Text.Json.Serialization;

namespace Spindlewright.Notebooks.Protocol;

/// <summary>How messages are written as JSON.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UseStringEnumConverter = true)]
[JsonSerializable(typeof(EngineRequest))]
[JsonSerializable(typeof(EngineEvent))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
