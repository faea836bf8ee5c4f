using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[sizing]</c>: what may be bought, altered and set, and what the machine may not exceed.</summary>
internal static class SizingSection
{
    private const string NotCompared = "not compared";

    private static readonly KeySpec<IReadOnlyList<Power>> Powers = Key.Optional(
        "powers", Forms.List(Forms.Quantity(QuantityKinds.Power), 1, 20), "Rated powers of the motors that are tried", "[\"0.37 kW\", \"0.75 kW\"]",
        "the preferred outputs from 0.12 to 2.2 kW");

    private static readonly KeySpec<IReadOnlyList<int>> Poles = Key.Optional(
        "poles", Forms.List(Forms.WholeNumber(2, 8), 1, 4), "Numbers of poles that are tried, each 2, 4, 6 or 8", "[4, 6]", "[2, 4, 6, 8]");

    private static readonly KeySpec<IReadOnlyList<string>> EfficiencyClasses = Key.Optional(
        "efficiency_classes", Forms.List(Forms.Choice(("IE1", "IE1"), ("IE2", "IE2"), ("IE3", "IE3"), ("IE4", "IE4")), 1, 4),
        "Efficiency classes that are tried", "[\"IE3\"]", "[\"IE2\", \"IE3\"]");

    private static readonly KeySpec<bool> RatingsTable = Key.Optional(
        "ratings_table", Forms.TrueOrFalse, "Whether motors of the ratings table are tried; false for the motor described and [[motor_offer]] alone", "true", "true");

    private static readonly KeySpec<IReadOnlyList<Frequency>> Lowest = Key.Optional(
        "lowest_frequencies", Forms.List(Forms.Quantity(QuantityKinds.Frequency), 1, 8), "Lowest output frequencies that are tried, 0.5 Hz to base_frequency",
        "[\"5 Hz\", \"10 Hz\"]", "[\"5 Hz\", \"7 Hz\", \"10 Hz\"]");

    private static readonly KeySpec<IReadOnlyList<Frequency>> Highest = Key.Optional(
        "highest_frequencies", Forms.List(Forms.Quantity(QuantityKinds.Frequency), 1, 8), "Highest output frequencies that are tried, at most 400 Hz",
        "[\"50 Hz\", \"75 Hz\"]", "1, 1.5 and 2 times base_frequency");

    private static readonly KeySpec<IReadOnlyList<Ratio>> Boosts = Key.Optional(
        "boosts", Forms.List(Forms.Quantity(QuantityKinds.Ratio), 1, 8), "Volts at 0 Hz over the base voltage that are tried, 0 to 20 %", "[\"0 %\", \"5 %\"]",
        "[\"0 %\", \"4 %\", \"8 %\"]");

    private static readonly KeySpec<Ratio> Slower = Key.Optional(
        "slower", Forms.Quantity(QuantityKinds.Ratio), "How much slower than wanted an operation may turn, 0 to 80 %", "\"30 %\"", "30 %");

    private static readonly KeySpec<double> TorqueMargin = Key.Optional(
        "torque_margin", Forms.Quantity(QuantityKinds.Number), "Short-time torque that is wanted over the torque needed, 1 to 5", "1.25",
        "1; short-time torque itself keeps to 0.75 of pull-out");

    private static readonly KeySpec<Ratio> Reliability = Key.Optional(
        "reliability", Forms.Quantity(QuantityKinds.Ratio), "Share of the draws in which the choice is to do all the work, 50 to 99.9 %", "\"95 %\"", "90 %");

    private static readonly KeySpec<Length> GreatestFrame = Key.Optional(
        "greatest_frame", Forms.Quantity(QuantityKinds.Length), "Greatest shaft height of a motor that the head has room for", "\"90 mm\"", NotCompared);

    private static readonly KeySpec<Mass> GreatestMass = Key.Optional(
        "greatest_mass", Forms.Quantity(QuantityKinds.Mass), "Greatest mass of a motor that the head carries", "\"18 kg\"", NotCompared);

    private static readonly KeySpec<ElectricCurrent> GreatestInput = Key.Optional(
        "greatest_input", Forms.Quantity(QuantityKinds.Current), "Greatest input current of the inverter", "\"10 A\"", "the fuse of [supply]; without one, not compared");

    private static readonly KeySpec<double> Budget = Key.Optional(
        "budget", Forms.Quantity(QuantityKinds.Number), "Most that may be spent, in your currency", "400", NotCompared);

    private static readonly KeySpec<string> Currency = Key.Optional("currency", Forms.Text(12), "What prices are counted in", "\"EUR\"", "not named");

    private static readonly KeySpec<double> InverterPrice = Price("inverter_price", "Price of an inverter", "160");

    private static readonly KeySpec<double> PulleyPrice = Price("pulley_price", "Price of a set of new pulleys", "55");

    private static readonly KeySpec<double> IntermediatePrice = Price("intermediate_price", "Price of an intermediate pulley with its bracket", "70");

    internal static SectionSpec Spec { get; } = new(
        "sizing", "What may be bought, altered and set, and what the machine may not exceed, for the question which motor and which pulleys",
        [
            Powers, Poles, EfficiencyClasses, RatingsTable, Lowest, Highest, Boosts, Slower, TorqueMargin, Reliability, GreatestFrame, GreatestMass, GreatestInput,
            Budget, Currency, InverterPrice, PulleyPrice, IntermediatePrice,
        ]);

    /// <summary>The wishes; usual ones where the section is left out, null where it has faults.</summary>
    /// <param name="section">The section; null where it is left out.</param>
    /// <param name="offers">The sound offers.</param>
    /// <param name="baseFrequency">Base frequency of the machine; null where the inverter has faults.</param>
    /// <param name="handbook">Tables.</param>
    internal static SizingWishes? Read(Section? section, IReadOnlyList<MotorOffer> offers, Frequency? baseFrequency, Handbook handbook)
    {
        var usual = SizingWishes.Usual(handbook, baseFrequency);
        if (section is null) return usual with { Motors = offers };
        CheckFrequencies(section, usual, baseFrequency);
        return section.Make(() => usual with
        {
            Powers = section.Get(Powers) ?? usual.Powers,
            Poles = section.Get(Poles) ?? usual.Poles,
            EfficiencyClasses = section.Get(EfficiencyClasses) ?? usual.EfficiencyClasses,
            RatingsTable = section.TryGet(RatingsTable, out var table) ? table : usual.RatingsTable,
            LowestFrequencies = section.Get(Lowest) ?? usual.LowestFrequencies,
            HighestFrequencies = section.Get(Highest) ?? usual.HighestFrequencies,
            Boosts = section.Get(Boosts)?.Select(each => each.DecimalFractions).ToList() ?? usual.Boosts,
            SlowestShare = section.Get(Slower) is { } slower ? ShareLeft(slower) : usual.SlowestShare,
            TorqueMargin = section.Get(TorqueMargin) ?? usual.TorqueMargin,
            Reliability = section.Get(Reliability)?.DecimalFractions ?? usual.Reliability,
            GreatestFrame = section.Get(GreatestFrame),
            GreatestMass = section.Get(GreatestMass),
            GreatestInput = section.Get(GreatestInput),
            Budget = section.Get(Budget),
            Currency = section.Get(Currency),
            InverterPrice = section.Get(InverterPrice),
            PulleyPrice = section.Get(PulleyPrice),
            IntermediatePrice = section.Get(IntermediatePrice),
            Motors = offers,
        });
    }

    /// <summary>Marks as faulty what only the inverter or the two lists together show.</summary>
    private static void CheckFrequencies(Section section, SizingWishes usual, Frequency? baseFrequency)
    {
        var lowest = (section.Get(Lowest) ?? usual.LowestFrequencies).Max(each => each);
        var highest = (section.Get(Highest) ?? usual.HighestFrequencies).Min(each => each);
        if (baseFrequency is { } most && lowest > most)
            section.Fault(
                Lowest, "a lowest frequency lies above the base frequency", $"0.5 Hz to {QuantityWriter.Write(most, QuantityKinds.Frequency)}, the base_frequency of [inverter]");
        else if (highest < lowest)
            section.Fault(
                Highest, "a highest frequency lies below a lowest frequency", $"{QuantityWriter.Write(lowest, QuantityKinds.Frequency)} to 400 Hz");
    }

    /// <summary>The speed left over, in parts of 1; guarded here since the file speaks of what is lost.</summary>
    private static double ShareLeft(Ratio slower) =>
        (100 - Guard.Within(slower, Ratio.FromPercent(0), Ratio.FromPercent(80), "sizing", "slower", "of the wanted speed").Percent) / 100;

    private static KeySpec<double> Price(string name, string meaning, string example) =>
        Key.Optional(name, Forms.Quantity(QuantityKinds.Number), meaning, example, NotCompared);
}
