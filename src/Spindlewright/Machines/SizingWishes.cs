using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>What may be bought, altered and set, and what the machine may not exceed.</summary>
/// <remarks>
/// Lists are kept in rising order without doubles. A limit or price that is null is not compared. <see cref="Usual"/> gives what stands
/// where a machine file is silent.
/// </remarks>
public sealed record SizingWishes
{
    private const string Part = "sizing";

    private const string SomePoles = "2, 4, 6 or 8";
    private const string SomeClasses = "IE1, IE2, IE3 or IE4";

    private static readonly string[] KnownClasses = ["IE1", "IE2", "IE3", "IE4"];
    private static readonly double[] UsualLowestHz = [5, 7, 10];
    private static readonly double[] UsualHighest = [1, 1.5, 2];
    private static readonly Frequency GreatestFrequency = Frequency.FromHertz(400);

    /// <summary>Rated shaft powers of the motors that are tried, 10 W to 100 kW, smallest first.</summary>
    /// <exception cref="PartException">None is given, or one is out of range.</exception>
    public required IReadOnlyList<Power> Powers
    {
        get;
        init => field = Some(
            value.Select(each => Guard.Within(each, Power.FromWatts(10), Power.FromKilowatts(100), Part, "powers"))
                .DistinctBy(each => each.Watts).OrderBy(each => each.Watts),
            "powers", "one rated power or more");
    }

    /// <summary>Numbers of poles that are tried, each 2, 4, 6 or 8, fewest first.</summary>
    /// <exception cref="PartException">None is given, or one is another number.</exception>
    public required IReadOnlyList<int> Poles
    {
        get;
        init => field = Some(
            value.Select(each => each is 2 or 4 or 6 or 8 ? each : throw Unknown("poles", FormattableString.Invariant($"{each}"), SomePoles))
                .Distinct().Order(),
            "poles", SomePoles);
    }

    /// <summary>Efficiency classes that are tried, each IE1, IE2, IE3 or IE4, lowest first.</summary>
    /// <exception cref="PartException">None is given, or one is unknown.</exception>
    public required IReadOnlyList<string> EfficiencyClasses
    {
        get;
        init => field = Some(
            value.Select(each => KnownClasses.Contains(each) ? each : throw Unknown("efficiency classes", $"'{each}'", SomeClasses))
                .Distinct().Order(StringComparer.Ordinal),
            "efficiency classes", SomeClasses);
    }

    /// <summary>True where motors of the ratings table are tried; false for the motor described and <see cref="Motors"/> alone.</summary>
    public bool RatingsTable { get; init; } = true;

    /// <summary>Lowest frequencies that are tried, 0.5 Hz to 400 Hz and not above the base frequency of the machine, lowest first.</summary>
    /// <exception cref="PartException">None is given, or one is out of range.</exception>
    public required IReadOnlyList<Frequency> LowestFrequencies { get; init => field = Frequencies(value, "lowest frequencies"); }

    /// <summary>Highest frequencies that are tried, 0.5 Hz to 400 Hz, lowest first.</summary>
    /// <exception cref="PartException">None is given, or one is out of range.</exception>
    public required IReadOnlyList<Frequency> HighestFrequencies { get; init => field = Frequencies(value, "highest frequencies"); }

    /// <summary>Boosts that are tried: volts at 0 Hz over the base voltage, 0 to 0.2, least first.</summary>
    /// <exception cref="PartException">None is given, or one is out of range.</exception>
    public required IReadOnlyList<double> Boosts
    {
        get;
        init => field = Some(
            value.Select(each => Guard.Within(each, 0, 0.2, Part, "boosts", "of the base voltage")).Distinct().Order(),
            "boosts", "one share of the base voltage or more");
    }

    /// <summary>Slowest speed at which an operation still counts as done, over the speed wanted for it, 0.2 to 1.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public double SlowestShare { get; init => field = Guard.Within(value, 0.2, 1, Part, "slowest share", "of the wanted speed"); } = 0.7;

    /// <summary>Short-time torque that is wanted over the torque needed, 1 to 5.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    /// <remarks>Short-time torque itself keeps to 0.75 of the pull-out torque, so that 1 is no bare minimum.</remarks>
    public double TorqueMargin { get; init => field = Guard.Within(value, 1, 5, Part, "torque margin", "short-time torque over the torque needed"); } = 1;

    /// <summary>Share of the draws in which the choice is to do all the work, 0.5 to 0.999.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public double Reliability { get; init => field = Guard.Within(value, 0.5, 0.999, Part, "reliability", "of the draws"); } = 0.9;

    /// <summary>Greatest shaft height that the head has room for, 40 mm to 400 mm; null where it is not compared.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public Length? GreatestFrame
    {
        get;
        init => field = value is { } height
            ? Guard.Within(height, Length.FromMillimeters(40), Length.FromMillimeters(400), Part, "greatest frame", "shaft height, foot to shaft axis")
            : null;
    }

    /// <summary>Greatest mass of a motor that the head carries, 0.5 kg to 500 kg; null where it is not compared.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public Mass? GreatestMass
    {
        get;
        init => field = value is { } mass ? Guard.Within(mass, Mass.FromKilograms(0.5), Mass.FromKilograms(500), Part, "greatest mass") : null;
    }

    /// <summary>Greatest input current of the inverter, 0.1 A to 200 A; null for the fuse of the supply, if one is given.</summary>
    /// <exception cref="PartException">Out of range.</exception>
    public ElectricCurrent? GreatestInput
    {
        get;
        init => field = value is { } current
            ? Guard.Within(current, ElectricCurrent.FromAmperes(0.1), ElectricCurrent.FromAmperes(200), Part, "greatest input")
            : null;
    }

    /// <summary>Most that may be spent, in the owner's currency, above 0; null where it is not compared.</summary>
    /// <exception cref="PartException">Zero, negative, NaN or infinite.</exception>
    public double? Budget { get; init => field = value is { } money ? Guard.Positive(money, Part, "budget") : null; }

    /// <summary>What the owner calls the currency; null where none is named.</summary>
    public string? Currency { get; init; }

    /// <summary>Price of an inverter, 0 or more; null where not given.</summary>
    /// <exception cref="PartException">Negative, NaN or out of range.</exception>
    public double? InverterPrice { get; init => field = Price(value, Part, "inverter price"); }

    /// <summary>Price of a set of new pulleys, 0 or more; null where not given.</summary>
    /// <exception cref="PartException">Negative, NaN or out of range.</exception>
    public double? PulleyPrice { get; init => field = Price(value, Part, "pulley price"); }

    /// <summary>Price of an intermediate pulley with its bracket, 0 or more; null where not given.</summary>
    /// <exception cref="PartException">Negative, NaN or out of range.</exception>
    public double? IntermediatePrice { get; init => field = Price(value, Part, "intermediate price"); }

    /// <summary>Motors on offer, in the owner's order; names differ.</summary>
    /// <exception cref="PartException">Two have one name.</exception>
    public IReadOnlyList<MotorOffer> Motors
    {
        get;
        init => field = value.GroupBy(offer => offer.Name).FirstOrDefault(group => group.Count() > 1) is { } twice
            ? throw new PartException("motor offer", "name", $"'{twice.Key}' twice", "names that differ")
            : value;
    } = [];

    /// <summary>What is tried where nothing is wished for.</summary>
    /// <param name="handbook">Its preferred outputs from 0.12 kW to 2.2 kW are the powers.</param>
    /// <param name="baseFrequency">Base frequency of the machine; 50 Hz where null.</param>
    /// <returns>
    /// 2 to 8 poles, classes IE2 and IE3, from 5, 7 or 10 Hz up to 1, 1.5 or 2 times the base frequency, boosts of 0, 4 and 8 %; own choice.
    /// </returns>
    public static SizingWishes Usual(Handbook handbook, Frequency? baseFrequency = null)
    {
        var based = baseFrequency ?? Frequency.FromHertz(50);
        return new()
        {
            Powers = [.. PreferredOutputs(handbook)],
            Poles = [2, 4, 6, 8],
            EfficiencyClasses = ["IE2", "IE3"],
            LowestFrequencies = [.. UsualLowestHz.Select(hertz => UnitMath.Min(Frequency.FromHertz(hertz), based))],
            HighestFrequencies = [.. UsualHighest.Select(times => UnitMath.Min(times * based, GreatestFrequency))],
            Boosts = [0, 0.04, 0.08],
        };
    }

    private static IEnumerable<Power> PreferredOutputs(Handbook handbook) => handbook.MotorFacts
        .Where(row => row.Key.StartsWith("preferred-output-", StringComparison.Ordinal)).Select(row => row.Required().Value)
        .Where(kilowatts => kilowatts is >= 0.12 and <= 2.2).Select(kilowatts => Power.FromKilowatts(kilowatts));

    /// <summary>A price: finite, 0 or more, below a thousand million.</summary>
    internal static double? Price(double? price, string part, string quantity) =>
        price is { } money ? Guard.Within(money, 0, 1e9, part, quantity, "a plain number in the owner's currency") : null;

    private static IReadOnlyList<Frequency> Frequencies(IReadOnlyList<Frequency> values, string quantity) => Some(
        values.Select(each => Guard.Within(each, Frequency.FromHertz(0.5), GreatestFrequency, Part, quantity))
            .DistinctBy(each => each.Hertz).OrderBy(each => each.Hertz),
        quantity, "one frequency or more");

    private static PartException Unknown(string quantity, string found, string accepted) =>
        new(Part, quantity, found, accepted, "the ratings table has no others");

    private static IReadOnlyList<T> Some<T>(IEnumerable<T> values, string quantity, string accepted)
    {
        IReadOnlyList<T> list = [.. values];
        return list.Count > 0 ? list : throw new PartException(Part, quantity, "an empty list", accepted);
    }
}
