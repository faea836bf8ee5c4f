using System.Globalization;
using UnitsNet;

namespace Spindlewright.Foundations;

/// <summary>Raised when a part is made from a value that it cannot have.</summary>
public sealed class PartException : ArgumentException
{
    /// <summary>Makes the error and its message.</summary>
    /// <param name="part">The part, such as "motor".</param>
    /// <param name="quantity">The quantity, such as "rated power".</param>
    /// <param name="found">The value found, with its unit.</param>
    /// <param name="accepted">What is accepted, with units.</param>
    /// <param name="why">The reason, one clause; may be empty.</param>
    public PartException(string part, string quantity, string found, string accepted, string why = "")
        : base($"{part}: {quantity} is {found}; accepted: {accepted}{(why.Length == 0 ? "" : $" ({why})")}.")
    {
        (Part, Quantity, Found, Accepted, Why) = (part, quantity, found, accepted, why);
    }

    /// <summary>The part that cannot be made.</summary>
    public string Part { get; }

    /// <summary>The quantity that is wrong.</summary>
    public string Quantity { get; }

    /// <summary>The value found.</summary>
    public string Found { get; }

    /// <summary>What is accepted.</summary>
    public string Accepted { get; }

    /// <summary>Why.</summary>
    public string Why { get; }
}

/// <summary>The one place where values are checked. NaN and infinity never pass.</summary>
/// <remarks>Messages are in the invariant culture.</remarks>
public static class Guard
{
    /// <summary>Accepts any finite number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="part">The part it is for.</param>
    /// <param name="quantity">Its name.</param>
    /// <returns>The number.</returns>
    /// <exception cref="PartException">NaN or infinite.</exception>
    public static double Finite(double value, string part, string quantity) =>
        double.IsFinite(value) ? value : throw new PartException(part, quantity, Text(value), "a finite number");

    /// <summary>Accepts a finite number above zero.</summary>
    /// <inheritdoc cref="Finite(double, string, string)"/>
    public static double Positive(double value, string part, string quantity) =>
        double.IsFinite(value) && value > 0
            ? value
            : throw new PartException(part, quantity, Text(value), "a finite number above 0");

    /// <summary>Accepts a finite number within two bounds, both included.</summary>
    /// <param name="value">The number.</param>
    /// <param name="least">The least accepted.</param>
    /// <param name="most">The most accepted.</param>
    /// <param name="part">The part it is for.</param>
    /// <param name="quantity">Its name.</param>
    /// <param name="why">The reason for the bounds.</param>
    /// <returns>The number.</returns>
    /// <exception cref="PartException">Outside the bounds, NaN or infinite.</exception>
    public static double Within(double value, double least, double most, string part, string quantity, string why = "") =>
        double.IsFinite(value) && value >= least && value <= most
            ? value
            : throw new PartException(part, quantity, Text(value), $"{Text(least)} to {Text(most)}", why);

    /// <summary>Accepts a finite quantity above zero.</summary>
    /// <typeparam name="T">The quantity's type.</typeparam>
    /// <param name="value">The quantity.</param>
    /// <param name="part">The part it is for.</param>
    /// <param name="quantity">Its name.</param>
    /// <returns>The quantity.</returns>
    /// <exception cref="PartException">Zero, negative, NaN or infinite.</exception>
    public static T Positive<T>(T value, string part, string quantity) where T : struct, IQuantity =>
        double.IsFinite((double)value.Value) && (double)value.Value > 0
            ? value
            : throw new PartException(part, quantity, Text(value), "a finite value above 0");

    /// <summary>Accepts a finite quantity of zero or more.</summary>
    /// <inheritdoc cref="Positive{T}(T, string, string)"/>
    public static T NotNegative<T>(T value, string part, string quantity) where T : struct, IQuantity =>
        double.IsFinite((double)value.Value) && (double)value.Value >= 0
            ? value
            : throw new PartException(part, quantity, Text(value), "a finite value of 0 or more");

    /// <summary>Accepts a finite quantity within two bounds, both included.</summary>
    /// <typeparam name="T">The quantity's type.</typeparam>
    /// <param name="value">The quantity.</param>
    /// <param name="least">The least accepted; its unit is the unit of the message.</param>
    /// <param name="most">The most accepted.</param>
    /// <param name="part">The part it is for.</param>
    /// <param name="quantity">Its name.</param>
    /// <param name="why">The reason for the bounds.</param>
    /// <returns>The quantity.</returns>
    /// <exception cref="PartException">Outside the bounds, NaN or infinite.</exception>
    public static T Within<T>(T value, T least, T most, string part, string quantity, string why = "")
        where T : struct, IQuantity
    {
        var number = value.As(least.Unit);
        return double.IsFinite(number) && number >= (double)least.Value && number <= most.As(least.Unit)
            ? value
            : throw new PartException(part, quantity, Text(value), $"{Text(least)} to {Text(most)}", why);
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Text<T>(T value) where T : struct, IQuantity =>
        value.ToString("G6", CultureInfo.InvariantCulture);
}
