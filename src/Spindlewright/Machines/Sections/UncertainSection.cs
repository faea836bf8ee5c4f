using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[uncertain]</c>: spreads in place of the usual ones.</summary>
internal static class UncertainSection
{
    private const string Usual = "see the table of what is uncertain";

    private static readonly KeySpec<int> Samples = Key.Optional(
        "samples", Forms.WholeNumber(200, 1_000_000), "How many samples are drawn", "2000", "2000") with
    { Quantity = "number of samples" };

    private static readonly Figure[] Figures =
    [
        Spread(UncertainFigures.SupplyVoltage, (50, 700), QuantityKinds.Voltage, volts => volts.Volts, "Supply voltage", "\"225 V\", \"230 V\", \"238 V\"", "V"),
        Spread(UncertainFigures.LoadedLink, (0.5, 1), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "Mean DC-link voltage under load over its no-load peak", "\"94 %\", \"98 %\"", "parts of 1"),
        Spread(UncertainFigures.PhaseDrop, (0, 60), QuantityKinds.Voltage, volts => volts.Volts, "Drop of dead time and devices, rms a phase", "\"3 V\", \"6 V\"", "V"),
        Spread(UncertainFigures.WindingTemperature, (-40, 250), QuantityKinds.Temperature, at => at.DegreesCelsius, "Temperature of winding and bars", "\"20 °C\", \"90 °C\"", "°C"),
        Spread(UncertainFigures.MotorCircuit, (0, 1), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "How far the motor's circuit lies from the one of the low defaults (0 %) to the one of the high defaults (100 %)", "\"0 %\", \"60 %\"", "parts of 1"),
        Spread(UncertainFigures.RotorResistance, (0.3, 3), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "Rotor resistance over that of the circuit", "\"90 %\", \"100 %\", \"110 %\"", "parts of 1"),
        Spread(UncertainFigures.StandstillResistance, (0.3, 3), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "Rotor resistance of a double cage at standstill over that of the circuit", "\"85 %\", \"100 %\", \"125 %\"", "parts of 1"),
        Spread(UncertainFigures.Leakage, (0.3, 3), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "Leakage reactances over those of the circuit", "\"95 %\", \"105 %\"", "parts of 1"),
        Spread(UncertainFigures.BeltEfficiency, (0, 1), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "How far belt efficiency lies from the low (0 %) to the high (100 %) figure of the belt position", "\"0 %\", \"50 %\"", "parts of 1"),
        Spread(UncertainFigures.BeltTension, (0, 1), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "How far the torque at which the belt slips lies from that of low (0 %) to that of high (100 %) tension and friction", "\"20 %\", \"60 %\"", "parts of 1"),
        Spread(UncertainFigures.CuttingTorque, (0.2, 5), QuantityKinds.Ratio, ratio => ratio.DecimalFractions, "Cutting torque over that of the handbook's coefficients", "\"80 %\", \"100 %\", \"140 %\"", "parts of 1"),
        Spread(UncertainFigures.SpindleFriction, (0, 5), QuantityKinds.Torque, torque => torque.NewtonMeters, "Drag of the spindle's bearings", "\"0.1 N·m\", \"0.3 N·m\"", "N·m"),
        Spread(UncertainFigures.HandTorque, (0.5, 60), QuantityKinds.Torque, torque => torque.NewtonMeters, "Hand torque of the people considered, on a body of 50 mm", "\"5 N·m\", \"11 N·m\", \"16 N·m\"", "N·m"),
    ];

    internal static SectionSpec Spec { get; } = new(
        "uncertain",
        "What is uncertain, in place of the usual spreads: two values for anywhere between, three for likeliest in the middle",
        [Samples, .. Figures.Select(figure => figure.Spec)]);

    internal static OwnUncertainty? Read(Section? section) => section is null ? OwnUncertainty.None : section.Make(() =>
        new OwnUncertainty(
            Figures.Select(figure => (Figure: figure, Values: figure.Read(section)))
                .Where(each => each.Values is not null)
                .ToDictionary(each => each.Figure.Spec.Name, each => Shape(section, each.Figure, each.Values!)),
            section.Get(Samples) is { } samples and > 0 ? samples : OwnUncertainty.UsualSamples));

    /// <summary>A distribution of two values or three; values that make none are marked as the fault of their key.</summary>
    private static Distribution Shape(Section section, Figure figure, IReadOnlyList<double> values)
    {
        var (least, most) = figure.Range;
        if (values[0] < least || values[^1] > most)
            section.Fault(figure.Spec, "a value lies outside what can be", FormattableString.Invariant($"{least} to {most} in {figure.BaseUnit}"));
        else if (values.Zip(values.Skip(1)).Any(pair => !(pair.First < pair.Second)))
            section.Fault(figure.Spec, "the values do not rise", "two or three values, each above the one before");
        else
            return values.Count == 2
                ? new Distribution.Uniform(values[0], values[1])
                : new Distribution.Triangular(values[0], values[1], values[2]);
        return new Distribution.Fixed(values[0]);
    }

    private static Figure Spread<T>(
        string name, (double Least, double Most) range, QuantityKind<T> kind, Func<T, double> number, string meaning, string example,
        string baseUnit)
        where T : struct
    {
        var spec = Key.Optional(name, Forms.List(Forms.Quantity(kind), 2, 3), meaning, $"[{example}]", Usual);
        return new(spec, range, baseUnit, section => section.Get(spec) is { } values ? [.. values.Select(number)] : null);
    }

    private sealed record Figure(
        KeySpec Spec, (double Least, double Most) Range, string BaseUnit, Func<Section, IReadOnlyList<double>?> Read);
}
