using System.Collections.Frozen;

namespace Spindlewright.Checks;

/// <summary>Why a quantity of checks is not computed by this library: the rows wait, in sight, for what computes them.</summary>
/// <remarks>A reason leaves this list when its evaluator comes; a test holds both.</remarks>
public static class NotComputed
{
    private static readonly FrozenDictionary<(string Area, string Quantity), string> Reasons =
        FrozenDictionary<(string Area, string Quantity), string>.Empty;

    /// <summary>The quantities that wait, by area.</summary>
    public static IEnumerable<(string Area, string Quantity)> Quantities => Reasons.Keys;

    /// <summary>Why a check is not computed.</summary>
    /// <param name="check">A check without an evaluator.</param>
    /// <returns>The reason; without a stated one, that nothing computes the quantity.</returns>
    public static string Reason(Check check) => Reasons.TryGetValue((check.Area, check.Quantity), out var reason)
        ? reason
        : $"nothing computes '{check.Quantity}' of the area {check.Area}";
}
