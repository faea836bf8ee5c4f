using System.Collections.Frozen;
using UnitsNet;

namespace Spindlewright.Foundations.Reading;

/// <summary>A kind of quantity: its name, its units and how each may be typed.</summary>
/// <remarks>Immutable; may be shared between threads. All kinds stand in <see cref="QuantityKinds"/>.</remarks>
public abstract class QuantityKind
{
    private readonly FrozenDictionary<string, UnitRow> _bySpelling;

    private protected QuantityKind(string name, string baseSymbol, IReadOnlyList<UnitRow> units)
    {
        (Name, BaseSymbol, Units) = (name, baseSymbol, units);
        _bySpelling = units
            .SelectMany(unit => unit.Spellings.Select(typed => UnitText.Normalise(typed)).Distinct(), (unit, typed) => (unit, typed))
            .ToFrozenDictionary(pair => pair.typed, pair => pair.unit, StringComparer.Ordinal);
    }

    /// <summary>What it is, in the trade's words, without an article: "rotational speed".</summary>
    public string Name { get; }

    /// <summary>Symbol of the unit of <see cref="UnitRow.Factor"/>; empty for plain numbers.</summary>
    public string BaseSymbol { get; }

    /// <summary>All units, the commonest first.</summary>
    public IReadOnlyList<UnitRow> Units { get; }

    /// <summary>The unit of a number without one; null where a unit must be typed.</summary>
    public UnitRow? Bare { get; private protected init; }

    /// <summary>A remark for the reference page; may be empty.</summary>
    public string Note { get; private protected init; } = "";

    /// <summary>Name with its article: "an energy".</summary>
    public string WithArticle => $"{("aeiou".Contains(Name[0], StringComparison.Ordinal) ? "an" : "a")} {Name}";

    /// <summary>What is accepted, for messages: "a power in W, kW, hp, PS".</summary>
    public string Accepted
    {
        get
        {
            var symbols = Units.Select(unit => unit.Symbol).Where(symbol => symbol.Length > 0);
            return Bare is null ? $"{WithArticle} in {string.Join(", ", symbols)}"
                : symbols.Any() ? $"{WithArticle} as a plain number or in {string.Join(", ", symbols)}"
                : "a plain number";
        }
    }

    /// <summary>The unit of a spelling, letter case as typed.</summary>
    /// <param name="typed">What stands after the number.</param>
    /// <returns>The unit; null where this kind has none of that spelling.</returns>
    public UnitRow? Find(string typed) => _bySpelling.GetValueOrDefault(UnitText.Normalise(typed));

    /// <summary>Symbols of the units displayed in one system, each with the least base magnitude it is used for.</summary>
    internal IReadOnlyDictionary<MeasureSystem, IReadOnlyList<(UnitRow Unit, double FromBase)>> Display
    { get; private protected init; } = new Dictionary<MeasureSystem, IReadOnlyList<(UnitRow, double)>>();
}

/// <summary>A kind of quantity whose values are of one type.</summary>
/// <typeparam name="T">A UnitsNet quantity, or double for plain numbers.</typeparam>
public sealed class QuantityKind<T> : QuantityKind where T : struct
{
    private readonly Func<QuantityValue, T> _fromBase;
    private readonly Func<T, double> _toBase;

    internal QuantityKind(
        string name, string baseSymbol, Func<QuantityValue, T> fromBase, Func<T, double> toBase, UnitRow<T>[] units,
        string metric, string inch, bool bareAllowed = false, string note = "")
        : base(name, baseSymbol, units)
    {
        (_fromBase, _toBase, Note) = (fromBase, toBase, note);
        Bare = bareAllowed ? units[0] : null;
        Display = new Dictionary<MeasureSystem, IReadOnlyList<(UnitRow, double)>>
        {
            [MeasureSystem.Metric] = DisplayRows(metric),
            [MeasureSystem.Inch] = DisplayRows(inch),
        };
    }

    /// <summary>Makes the value of a number of one unit.</summary>
    /// <param name="number">A finite number.</param>
    /// <param name="unit">A unit of this kind.</param>
    /// <returns>The value, in the typed unit where UnitsNet converts it exactly, else in the base unit.</returns>
    internal T Make(double number, UnitRow unit) =>
        ((UnitRow<T>)unit).Make is { } make ? make(number) : _fromBase(unit.ToBase(number));

    /// <summary>The value in the base unit, by exact factors.</summary>
    /// <param name="value">The value.</param>
    /// <returns>The number of base units.</returns>
    public double ToBase(T value) => _toBase(value);

    /// <summary>The value of a number of base units.</summary>
    /// <param name="baseValue">A number of base units.</param>
    /// <returns>The value.</returns>
    public T FromBase(double baseValue) => _fromBase(baseValue);

    /// <summary>Reads "W, kW from 100": units with the base magnitude from which each is used.</summary>
    private List<(UnitRow, double)> DisplayRows(string rule) => [.. rule.Split(", ").Select(part =>
    {
        var words = part.Split(" from ");
        var from = words.Length == 1 ? 0 : double.Parse(words[1], System.Globalization.CultureInfo.InvariantCulture);
        return (Units.Single(unit => unit.Symbol == words[0]), from);
    })];
}
