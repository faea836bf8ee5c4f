using System.Globalization;

namespace Spindlewright.Figures.Wording;

/// <summary>Numbers as a reader sees them: decimal point, true minus sign, thin spaces from ten thousand.</summary>
public static class NumberText
{
    /// <summary>A number with so many significant digits; digits before the point are never dropped.</summary>
    /// <param name="value">The number.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    /// <returns>Such as "12.3", "2863" or "−0.05"; trailing zeros go.</returns>
    public static string Significant(double value, int digits = 3)
    {
        if (!double.IsFinite(value))
            return double.IsNaN(value) ? "no value" : value > 0 ? "infinite" : "−infinite";
        if (value == 0)
            return "0";
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (magnitude is > 9 or < -6)
            return value.ToString("0." + new string('#', digits - 1) + "E0", CultureInfo.InvariantCulture)
                .Replace('-', '−');
        var text = Fixed(value, Math.Clamp(digits - 1 - magnitude, 0, 12));
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    /// <summary>A number rounded to so many significant digits, before the point too: a speed to dial, not to compute with.</summary>
    /// <param name="value">The number, above 0.</param>
    /// <param name="digits">Significant digits.</param>
    /// <returns>Such as "2400" for 2426 and two digits.</returns>
    public static string Rounded(double value, int digits)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(value)) - digits + 1);
        return Significant(Math.Round(value / unit) * unit, digits);
    }

    /// <summary>A number with so many digits after the point.</summary>
    /// <param name="value">The number, finite.</param>
    /// <param name="decimals">0 to 12.</param>
    /// <returns>Such as "12.30" or "12 500".</returns>
    public static string Fixed(double value, int decimals)
    {
        var rounded = Math.Abs(value) < 1e15 ? Math.Round(value, decimals, MidpointRounding.AwayFromZero) : value;
        if (rounded == 0)
            rounded = 0;
        var text = Math.Abs(rounded).ToString(
            "F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return (rounded < 0 ? "−" : "") + Grouped(text);
    }

    /// <summary>A number as a table's column asks.</summary>
    /// <param name="value">The number, finite.</param>
    /// <param name="format">The column's format; three significant digits where null.</param>
    /// <returns>The number in figures.</returns>
    public static string As(double value, NumberFormat? format) =>
        format?.Decimals is { } decimals ? Fixed(value, decimals) : Significant(value, format?.Significant ?? 3);

    private static string Grouped(string digits)
    {
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var end = point < 0 ? digits.Length : point;
        if (end < 5)
            return digits;
        for (var i = end - 3; i > 0; i -= 3)
            digits = digits.Insert(i, "\u202f");
        return digits;
    }
}
