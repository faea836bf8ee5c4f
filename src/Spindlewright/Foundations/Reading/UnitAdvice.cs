using System.Globalization;

namespace Spindlewright.Foundations.Reading;

/// <summary>Says what is wrong with a unit and which one was probably meant.</summary>
internal static class UnitAdvice
{
    /// <summary>The advice for a unit that a kind does not have.</summary>
    /// <param name="typed">What stands after the number; may be empty.</param>
    /// <param name="number">The number as typed.</param>
    /// <param name="kind">What is wanted.</param>
    /// <returns>One clause.</returns>
    public static string For(string typed, string number, QuantityKind kind)
    {
        if (typed.Length == 0) return $"{number} has no unit; write {Examples(number, kind)}";
        var shown = Printable.Of(typed);
        var normal = UnitText.Normalise(typed);
        if (ByWord(normal, kind) is { } meant) return $"'{shown}' is not read here; write {meant.Symbol}";
        if (ByCase(normal, kind) is { Length: > 0 } cased)
            return $"letter case counts in units and '{shown}' is none; write {cased}";
        if (Elsewhere(typed, kind) is { } other) return $"{shown} is {other.WithArticle}; {kind.WithArticle} is wanted";
        if (Leading(normal, kind) is { } leading)
            return $"after {leading} stands '{Printable.Of(normal[leading.Length..].Trim())}'; "
                + "one number with one unit is wanted";
        var near = NearestName.Of(normal, kind.Units.SelectMany(unit => unit.Spellings).Where(s => s.Length > 0));
        return near is null ? $"'{shown}' is no unit of {kind.WithArticle}"
            : $"'{shown}' is no unit of {kind.WithArticle}; did you mean {near}?";
    }

    /// <summary>The advice for a fraction before a unit that takes none.</summary>
    /// <param name="value">The fraction's value.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="kind">What is wanted.</param>
    /// <returns>One clause.</returns>
    public static string NoFraction(double value, UnitRow unit, QuantityKind kind)
    {
        var fractional = string.Join(", ", kind.Units.Where(row => row.TakesFractions).Select(row => row.Symbol));
        var reason = fractional.Length == 0 ? "fractions are not read here" : $"fractions are read with {fractional} only";
        var number = value.ToString("0.######", CultureInfo.InvariantCulture);
        return $"{reason}; write one decimal number{(unit.Symbol.Length == 0 ? "" : $" and {unit.Symbol}")}, as in {number}";
    }

    private static string Examples(string number, QuantityKind kind) =>
        string.Join(" or ", kind.Units.Take(2).Select(unit => $"{Printable.Of(number)} {unit.Symbol}"));

    private static UnitRow? ByWord(string normal, QuantityKind kind) => kind.Units.FirstOrDefault(unit =>
        unit.Mistaken.Any(word => UnitText.Normalise(word).Equals(normal, StringComparison.OrdinalIgnoreCase)));

    private static string ByCase(string normal, QuantityKind kind) => string.Join(" or ", kind.Units
        .Where(unit => unit.Spellings.Any(spelling =>
            UnitText.Normalise(spelling).Equals(normal, StringComparison.OrdinalIgnoreCase)))
        .Select(unit => unit.Symbol));

    private static QuantityKind? Elsewhere(string typed, QuantityKind kind) =>
        QuantityKinds.All.FirstOrDefault(other => other != kind && other.Find(typed) is not null);

    /// <summary>The longest unit with which the text begins, ending at a space or bracket.</summary>
    private static string? Leading(string normal, QuantityKind kind)
    {
        for (var end = normal.Length - 1; end > 0; end--)
            if (normal[end] is ' ' or '(' or ',' or ';' && kind.Find(normal[..end]) is { Symbol.Length: > 0 })
                return normal[..end].Trim();
        return null;
    }
}
