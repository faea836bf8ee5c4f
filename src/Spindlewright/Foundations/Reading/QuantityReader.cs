using System.Diagnostics.CodeAnalysis;

namespace Spindlewright.Foundations.Reading;

/// <summary>Reads values with units that people type: "0.75 kW", "7/8 in", "1420 r/min".</summary>
/// <remarks>
/// Strict: each text has one reading or is refused with the way to write it. UnitsNet's own parser is not used, since
/// it reads "1,5 kW" as 15 kW.
/// </remarks>
public static class QuantityReader
{
    /// <summary>Most characters of a value.</summary>
    public const int LongestText = 100;

    /// <summary>Reads a value.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="text">The text, with the unit.</param>
    /// <param name="kind">What is wanted, from <see cref="QuantityKinds"/>.</param>
    /// <returns>The value.</returns>
    /// <exception cref="QuantityFormatException">The text is no such value; the message says why and where.</exception>
    public static T Read<T>(string? text, QuantityKind<T> kind) where T : struct =>
        TryRead(text, kind, out var value, out var fault) ? value : throw new QuantityFormatException(text, fault);

    /// <summary>Reads a value, or says what is wrong.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="text">The text, with the unit.</param>
    /// <param name="kind">What is wanted, from <see cref="QuantityKinds"/>.</param>
    /// <param name="value">The value.</param>
    /// <param name="fault">What is wrong; null where the value was read.</param>
    /// <returns>True where the value was read.</returns>
    public static bool TryRead<T>(
        string? text, QuantityKind<T> kind, out T value, [NotNullWhen(false)] out QuantityFault? fault)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(kind);
        value = default;
        if (!TrySplit(text, kind, out var number, out var unit, out fault)) return false;
        value = kind.Make(number, unit);
        return true;
    }

    private static bool TrySplit(
        string? text, QuantityKind kind, out double number,
        [NotNullWhen(true)] out UnitRow? unit, [NotNullWhen(false)] out QuantityFault? fault)
    {
        (number, unit, fault) = (0, null, null);
        text ??= "";
        var start = text.Length - text.AsSpan().TrimStart().Length;
        if (start == text.Length) fault = Fault(text, 0, "the value is empty", kind);
        else if (text.Length > LongestText) fault = Fault(text, 0, $"the value has more than {LongestText} characters", kind);
        else if (!NumberScanner.TryScan(text, start, out var typed, out var wrong))
            fault = Fault(text, wrong!.Value.At, wrong.Value.What, kind);
        else if (TryUnit(text, start, typed, kind, out unit, out fault))
        {
            number = typed.Value;
            return true;
        }
        return false;
    }

    private static bool TryUnit(
        string text, int start, TypedNumber number, QuantityKind kind,
        [NotNullWhen(true)] out UnitRow? unit, [NotNullWhen(false)] out QuantityFault? fault)
    {
        var rest = text.AsSpan(number.End);
        var typed = rest.Trim().ToString();
        unit = typed.Length == 0 ? kind.Bare : kind.Find(typed);
        fault = null;
        if (unit is null)
        {
            var at = number.End + rest.Length - rest.TrimStart().Length;
            fault = Fault(text, at, UnitAdvice.For(typed, text[start..number.End], kind), kind);
        }
        else if (number.IsFraction && !unit.TakesFractions)
            fault = Fault(text, start, UnitAdvice.NoFraction(number.Value, unit, kind), kind);
        return fault is null;
    }

    private static QuantityFault Fault(string text, int at, string what, QuantityKind kind) =>
        new(Column(text, at), Printable.Of(text), what, kind.Accepted);

    /// <summary>Characters as a reader counts them: one for a pair of surrogates.</summary>
    private static int Column(string text, int at)
    {
        var column = 1;
        for (var i = 0; i < at && i < text.Length; i++)
            if (!char.IsLowSurrogate(text[i])) column++;
        return column;
    }
}
