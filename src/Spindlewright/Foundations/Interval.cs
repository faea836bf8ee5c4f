using System.Globalization;

namespace Spindlewright.Foundations;

/// <summary>A closed interval of one quantity, in a unit that its owner names.</summary>
/// <param name="Least">Lower end.</param>
/// <param name="Most">Upper end; never below <paramref name="Least"/>.</param>
public readonly record struct Interval(double Least, double Most)
{
    /// <summary>Makes an interval from two finite ends in order.</summary>
    /// <param name="least">Lower end.</param>
    /// <param name="most">Upper end.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="PartException">An end is not finite, or they are out of order.</exception>
    public static Interval Of(double least, double most)
    {
        Guard.Finite(least, "interval", "lower end");
        Guard.Within(most, least, double.MaxValue, "interval", "upper end", "the ends stand in order");
        return new(least, most);
    }

    /// <summary>Upper less lower end.</summary>
    public double Width => Most - Least;

    /// <summary>True where the value lies between the ends, both included.</summary>
    /// <param name="value">The value.</param>
    /// <returns>Whether it is inside.</returns>
    public bool Contains(double value) => value >= Least && value <= Most;

    /// <summary>The part that two intervals share; null where they share none.</summary>
    /// <param name="other">The other interval.</param>
    /// <returns>The overlap.</returns>
    public Interval? Overlap(Interval other)
    {
        var (least, most) = (Math.Max(Least, other.Least), Math.Min(Most, other.Most));
        return least <= most ? new Interval(least, most) : null;
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Least:G6} to {Most:G6}");
}
