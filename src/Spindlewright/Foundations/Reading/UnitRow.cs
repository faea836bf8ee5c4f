using UnitsNet;

namespace Spindlewright.Foundations.Reading;

/// <summary>Which readers a unit is displayed to.</summary>
public enum MeasureSystem
{
    /// <summary>Millimetres, newton metres, kilowatts.</summary>
    Metric,

    /// <summary>Inches, pound-force inches, horsepower.</summary>
    Inch,
}

/// <summary>One unit of a kind of quantity, with every way in which it may be typed.</summary>
/// <param name="Symbol">The symbol that is printed, such as "N·m"; it may be typed too.</param>
/// <param name="Factor">Base units in one of this unit, exact where the definition is.</param>
/// <param name="Spellings">What may be typed, the symbol first.</param>
public abstract record UnitRow(string Symbol, double Factor, IReadOnlyList<string> Spellings)
{
    /// <summary>Base value where this unit reads zero: 273.15 for °C, 0 for all but temperatures.</summary>
    public double Zero { get; init; }

    /// <summary>True where fractions and mixed numbers are accepted (inch, foot, pound, horsepower).</summary>
    public bool TakesFractions { get; init; }

    /// <summary>Words that are refused, each with this unit as the suggestion, such as "watt".</summary>
    public IReadOnlyList<string> Mistaken { get; init; } = [];

    /// <summary>What one of this unit is, for the reference page.</summary>
    public required string Definition { get; init; }

    /// <summary>The value in base units of a number of this unit.</summary>
    /// <param name="number">The number as typed.</param>
    /// <returns>The value in the kind's base unit.</returns>
    public double ToBase(double number) => (number * Factor) + Zero;

    /// <summary>The number of this unit that a base value is.</summary>
    /// <param name="baseValue">The value in the kind's base unit.</param>
    /// <returns>The number to print before the symbol.</returns>
    public double FromBase(double baseValue) => (baseValue - Zero) / Factor;
}

/// <summary>A unit together with the function that makes a value of it.</summary>
/// <typeparam name="T">The value's type.</typeparam>
/// <param name="Symbol">The symbol that is printed.</param>
/// <param name="Factor">Base units in one of this unit.</param>
/// <param name="Spellings">What may be typed.</param>
/// <param name="Make">Makes the value from a number of this unit; null to make it from base units.</param>
public sealed record UnitRow<T>(string Symbol, double Factor, IReadOnlyList<string> Spellings, Func<QuantityValue, T>? Make)
    : UnitRow(Symbol, Factor, Spellings)
    where T : struct;
