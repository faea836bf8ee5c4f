using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[supply]</c>.</summary>
internal static class SupplySection
{
    private const double Tolerance = 0.1;

    private static readonly KeySpec<ElectricPotential> Voltage = Key.Required(
        "voltage", Forms.Quantity(QuantityKinds.Voltage), "Nominal rms voltage between the conductors that feed the inverter", "\"230 V\"");

    private static readonly KeySpec<Frequency> MainsFrequency = Key.Required(
        "frequency", Forms.Quantity(QuantityKinds.Frequency), "Mains frequency", "\"50 Hz\"");

    private static readonly KeySpec<int> Phases = Key.Required(
        "phases", Forms.WholeNumber(1, 3), "Phases of the supply, 1 or 3", "1") with { Quantity = "number of phases" };

    private static readonly KeySpec<ElectricPotential> Lowest = Key.Optional(
        "lowest_voltage", Forms.Quantity(QuantityKinds.Voltage), "Lowest voltage to be expected; serves \"will it drill\"", "\"216 V\"", "10 % below nominal (EN 50160, from memory)");

    private static readonly KeySpec<ElectricPotential> Highest = Key.Optional(
        "highest_voltage", Forms.Quantity(QuantityKinds.Voltage), "Highest voltage to be expected; serves \"what could a hand meet\"", "\"253 V\"", "10 % above nominal (EN 50160, from memory)");

    private static readonly KeySpec<ElectricResistance> LoopResistance = Key.WithDefault(
        "loop_resistance", Forms.Quantity(QuantityKinds.Resistance), "Resistance of the supply's loop, of one phase for three phases", "\"0.5 ohm\"",
        Same(Supply.UsualLoopResistance, "a long final circuit; a licensed person can measure it"));

    private static readonly KeySpec<ElectricInductance> LoopInductance = Key.WithDefault(
        "loop_inductance", Forms.Quantity(QuantityKinds.Inductance), "Inductance of the same loop", "\"0.4 mH\"",
        Same(Supply.UsualLoopInductance, "goes with the resistance"));

    private static readonly KeySpec<ElectricCurrent> Fuse = Key.Optional(
        "fuse", Forms.Quantity(QuantityKinds.Current), "Rated current of the fuse or plug that feeds the inverter", "\"13 A\"", "not compared");

    internal static SectionSpec Spec { get; } = new(
        "supply", "The socket",
        [Voltage, MainsFrequency, Phases, Lowest, Highest, LoopResistance, LoopInductance, Fuse])
    { Required = true };

    internal static Supply? Read(Section section, DefaultsTaken defaults) => section.Make(() =>
    {
        var nominal = section.Get(Voltage)!.Value;
        return new Supply(
            nominal, section.Get(Lowest) ?? nominal * (1 - Tolerance), section.Get(Highest) ?? nominal * (1 + Tolerance),
            section.Get(MainsFrequency)!.Value, section.Get(Phases)!.Value)
        {
            LoopResistance = section.Sided(LoopResistance).Value.Capability,
            LoopInductance = section.Sided(LoopInductance).Value.Capability,
            Fuse = section.Get(Fuse),
        };
    }) is not { } supply ? null : Noting(section, defaults, supply);

    private static Supply Noting(Section section, DefaultsTaken defaults, Supply supply)
    {
        string Volts(ElectricPotential volts) => QuantityWriter.Write(volts, QuantityKinds.Voltage);
        if (!section.Has(Lowest) || !section.Has(Highest))
            defaults.Add(new(
                "supply.lowest_voltage, supply.highest_voltage", "span of the supply voltage", Volts(supply.Lowest),
                Volts(supply.Highest), Provenance.FromMemory, "en-50160", "10 % either way"));
        return supply;
    }

    private static Sourced<Sided<T>> Same<T>(T value, string note) =>
        new(Foundations.Sided.Same(value), Provenance.OwnChoice, "this-project", note);
}
