using System.Collections.Frozen;

namespace Spindlewright.Checks;

/// <summary>Why a quantity of checks is not computed by this library: the rows wait, in sight, for what computes them.</summary>
/// <remarks>A reason leaves this list when its evaluator comes; a test holds both.</remarks>
public static class NotComputed
{
    private const string Contact = "belongs to blunt contact with a hand; not written";
    private const string Wrapping = "belongs to wrap-in; not written";
    private const string RunDown = "belongs to run-down and stored energy; not written";

    private static readonly FrozenDictionary<(string Area, string Quantity), string> Reasons =
        new Dictionary<(string, string), string>
        {
            [("hazard", "contact speed limit")] = Contact,
            [("hazard", "contact energy")] = Contact,
            [("hazard", "wrap length")] = Wrapping,
            [("hazard", "capstan ratio")] = Wrapping,
            [("hazard", "hand torque by grip")] =
                "grip times friction; the library takes measured hand torque instead, which needs no friction",
            [("hazard", "energy of rotation")] = RunDown,
            [("hazard", "run-down time")] = RunDown,
            [("hazard", "run-down turns")] = RunDown,
            [("hazard", "braking torque")] = RunDown,
            [("hazard", "grab force")] = "belongs to grabs with inertia; not written",
            [("hazard", "mass of a plate")] = "belongs to loose work; not written",
        }.ToFrozenDictionary();

    /// <summary>The quantities that wait, by area.</summary>
    public static IEnumerable<(string Area, string Quantity)> Quantities => Reasons.Keys;

    /// <summary>Why a check is not computed.</summary>
    /// <param name="check">A check without an evaluator.</param>
    /// <returns>The reason; without a stated one, that nothing computes the quantity.</returns>
    public static string Reason(Check check) => Reasons.TryGetValue((check.Area, check.Quantity), out var reason)
        ? reason
        : $"nothing computes '{check.Quantity}' of the area {check.Area}";
}
