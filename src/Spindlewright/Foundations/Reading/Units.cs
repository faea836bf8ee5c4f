using UnitsNet;

namespace Spindlewright.Foundations.Reading;

/// <summary>Short ways to write a row of the unit table.</summary>
internal static class Units
{
    /// <summary>A unit that UnitsNet converts exactly, or a base unit.</summary>
    public static UnitRow<T> Unit<T>(
        string symbol, decimal factor, Func<QuantityValue, T>? make, string definition, params string[] more)
        where T : struct =>
        new(symbol, (double)factor, [symbol, .. more], make) { Definition = definition };

    /// <summary>A unit of inch drawings and pound scales, where fractions are accepted.</summary>
    public static UnitRow<T> Fractional<T>(
        string symbol, decimal factor, Func<QuantityValue, T>? make, string definition, params string[] more)
        where T : struct =>
        Unit(symbol, factor, make, definition, more) with { TakesFractions = true };

    /// <summary>A product of two units, in either order, joined in each way that is typed.</summary>
    public static UnitRow<T> Product<T>(
        string first, string second, decimal factor, Func<QuantityValue, T>? make, string definition, params string[] more)
        where T : struct =>
        Unit($"{first}·{second}", factor, make, definition, [.. UnitText.Product(first, second).Skip(1), .. more]);

    /// <summary>Adds the joined spellings of another pair, such as the other order of a product.</summary>
    public static UnitRow<T> Or<T>(this UnitRow<T> row, string first, string second) where T : struct =>
        row with { Spellings = [.. row.Spellings, .. UnitText.Product(first, second)] };

    /// <summary>Adds words that are refused with this unit as the suggestion.</summary>
    public static UnitRow<T> NotAs<T>(this UnitRow<T> row, params string[] words) where T : struct =>
        row with { Mistaken = words };
}
