using Spindlewright.Foundations.Reading;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Turns a computed quantity into a number of the unit in which a check is printed.</summary>
internal static class InUnit
{
    internal static double Of<T>(T value, QuantityKind<T> kind, string unit) where T : struct =>
        kind.Find(unit) is { } row
            ? row.FromBase(kind.ToBase(value))
            : throw new ArgumentException($"'{unit}' is no unit here; accepted: {kind.Accepted}.", nameof(unit));

    /// <summary>A plain ratio, whose unit a check writes as 1.</summary>
    internal static double Plain(double ratio, string unit) =>
        unit == "1" ? ratio : throw new ArgumentException($"a ratio has the unit 1, not '{unit}'.", nameof(unit));
}
