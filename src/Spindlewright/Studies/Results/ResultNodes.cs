using System.Text.Json.Nodes;
using Spindlewright.Foundations;

namespace Spindlewright.Studies.Results;

/// <summary>The few shapes that results are made of.</summary>
internal static class ResultNodes
{
    internal static JsonNode? Number(double? value) => StableJson.Number(value);

    internal static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> node) => new([.. items.Select(node)]);

    internal static JsonObject Pair<T>(Sided<T> pair, Func<T, double?> value) => new()
    {
        ["capability"] = Number(value(pair.Capability)),
        ["hazard"] = Number(value(pair.Hazard)),
    };
}
