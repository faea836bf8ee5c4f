using System.Globalization;

namespace Spindlewright.Foundations.Reading;

/// <summary>Writes quantities as text that a workshop reads and <see cref="QuantityReader"/> reads back.</summary>
public static class QuantityWriter
{
    /// <summary>Significant digits of a displayed value.</summary>
    public const int DisplayDigits = 4;

    /// <summary>A value for display, in the unit that suits its size.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="system">Metric or inch units.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    /// <returns>Number, space, symbol; "0.75 kW".</returns>
    public static string Write<T>(
        T value, QuantityKind<T> kind, MeasureSystem system = MeasureSystem.Metric, int digits = DisplayDigits)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(kind);
        var baseValue = kind.ToBase(value);
        var unit = Unit(baseValue, kind, system, digits);
        return WithSymbol(Number(unit.FromBase(baseValue), digits), unit);
    }

    /// <summary>A value with every digit it has, in the base or usual unit, for files.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="value">The value.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="system">Metric or inch units.</param>
    /// <returns>Text that reads back as the same value to 1 part in 10¹⁴.</returns>
    public static string WriteExactly<T>(T value, QuantityKind<T> kind, MeasureSystem system = MeasureSystem.Metric)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(kind);
        var baseValue = kind.ToBase(value);
        var unit = Unit(baseValue, kind, system, 15);
        return WithSymbol(Plain(unit.FromBase(baseValue).ToString("R", CultureInfo.InvariantCulture)), unit);
    }

    /// <summary>A number to so many significant digits, without needless zeros.</summary>
    /// <param name="value">The number.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    /// <returns>"0.75", "1420", "1.2e-6"; whole numbers below 10⁷ keep all their digits.</returns>
    public static string Number(double value, int digits = DisplayDigits)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digits, 15);
        if (!double.IsFinite(value)) return double.IsNaN(value) ? "not a number" : "unlimited";
        var kept = double.Parse(
            value.ToString($"E{digits - 1}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Plain((kept == 0 ? 0 : kept).ToString("R", CultureInfo.InvariantCulture));
    }

    private static UnitRow Unit(double baseValue, QuantityKind kind, MeasureSystem system, int digits)
    {
        var rows = kind.Display[system];
        var size = Math.Abs(baseValue);
        if (size == 0) return kind.Units.First(unit => rows.Any(row => row.Unit == unit));
        // Half a unit of the last digit below the step still prints as the step.
        var rounded = size * (1 + (0.5 * Math.Pow(10, -digits)));
        return rows.Last(row => row.FromBase <= rounded || row.FromBase == 0).Unit;
    }

    private static string WithSymbol(string number, UnitRow unit) =>
        unit.Symbol.Length == 0 ? number : $"{number} {unit.Symbol}";

    /// <summary>1E-06 becomes 1e-6.</summary>
    private static string Plain(string number)
    {
        var mark = number.IndexOf('E', StringComparison.Ordinal);
        if (mark < 0) return number;
        var power = int.Parse(number.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"{number[..mark]}e{power}");
    }
}
