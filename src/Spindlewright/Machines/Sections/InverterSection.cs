using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Inverters;
using Spindlewright.Machines.Text;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[inverter]</c>.</summary>
internal static class InverterSection
{
    private enum Law
    {
        Straight,
        Offset,
    }

    private static readonly KeySpec<ElectricCurrent> RatedCurrent = Key.Required(
        "rated_current", Forms.Quantity(QuantityKinds.Current), "Rated output current", "\"7 A\"");

    private static readonly KeySpec<Ratio> CurrentLimit = Key.WithDefault(
        "current_limit", Forms.Quantity(QuantityKinds.Ratio), "Current limit in percent of the inverter's rated current", "\"150 %\"",
        Pair(Ratio.FromPercent(150), Ratio.FromPercent(150), Provenance.CommonPractice, "", "usual overload setting for a minute; never credited in a hazard"));

    private static readonly KeySpec<Frequency> LowestFrequency = Key.Required(
        "lowest_frequency", Forms.Quantity(QuantityKinds.Frequency), "Lowest output frequency that the settings allow", "\"7 Hz\"");

    private static readonly KeySpec<Frequency> BaseFrequency = Key.Required(
        "base_frequency", Forms.Quantity(QuantityKinds.Frequency), "Where the V/f law reaches its full voltage", "\"50 Hz\"");

    private static readonly KeySpec<ElectricPotential> BaseVoltage = Key.Optional(
        "base_voltage", Forms.Quantity(QuantityKinds.Voltage), "Line voltage that the law sets at base frequency", "\"230 V\"", "the motor's rated line voltage as connected");

    private static readonly KeySpec<Frequency> HighestFrequency = Key.Required(
        "highest_frequency", Forms.Quantity(QuantityKinds.Frequency), "Highest output frequency that the settings allow", "\"100 Hz\"");

    private static readonly KeySpec<Law> Curve = Key.Optional(
        "curve", Forms.Choice(("straight", Law.Straight), ("offset", Law.Offset)),
        "V/f law: straight, or offset (no volts below an offset frequency)", "\"straight\"", "straight");

    private static readonly KeySpec<ElectricPotential> Boost = Key.Optional(
        "boost", Forms.Quantity(QuantityKinds.Voltage), "Line voltage that a straight law sets at 0 Hz", "\"0 V\"", "0 V");

    private static readonly KeySpec<Frequency> Offset = Key.Optional(
        "offset", Forms.Quantity(QuantityKinds.Frequency), "Frequency at which an offset law meets zero volts", "\"1.5 Hz\"") with
    { Quantity = "offset frequency" };

    private static readonly KeySpec<bool> Doubler = Key.Optional(
        "voltage_doubler", Forms.TrueOrFalse, "Whether the input doubles the voltage, as on 115 to 120 V units for 230 V motors", "false", "false");

    private static readonly KeySpec<Modulation> ModulationKey = Key.Optional(
        "modulation", Forms.Choice(("space-vector", Modulation.SpaceVector), ("sine", Modulation.Sine)),
        "How the output stage modulates", "\"space-vector\"", "space-vector");

    private static readonly KeySpec<Ratio> LoadedLink = Key.WithDefault(
        "loaded_link", Forms.Quantity(QuantityKinds.Ratio), "Mean DC-link voltage under load over its no-load peak", "\"96 %\"",
        Pair(Ratio.FromPercent(95.65), Ratio.FromPercent(100), Provenance.OwnArithmetic, "this-project", "280 V of 292.7 V at 700 W from a 207 V socket; unloaded on the hazard side"));

    private static readonly KeySpec<Duration> DeadTime = Key.WithDefault(
        "dead_time", Forms.Quantity(QuantityKinds.Duration), "Dead time that is not compensated", "\"3 us\"",
        Pair(Duration.FromMicroseconds(3), Duration.Zero, Provenance.OwnChoice, "this-project", "usual in small units; fully compensated on the hazard side"));

    private static readonly KeySpec<Frequency> Carrier = Key.WithDefault(
        "carrier_frequency", Forms.Quantity(QuantityKinds.Frequency), "Switching frequency", "\"8 kHz\"",
        Pair(Frequency.FromKilohertz(8), Frequency.FromKilohertz(8), Provenance.CommonPractice, "", "usual factory setting of small units"));

    private static readonly KeySpec<ElectricPotential> DeviceDrop = Key.WithDefault(
        "device_drop", Forms.Quantity(QuantityKinds.Voltage), "Drop of the switching devices, a phase", "\"1 V\"",
        Pair(ElectricPotential.FromVolts(1), ElectricPotential.Zero, Provenance.OwnChoice, "this-project", "order of a transistor and a diode; none on the hazard side"));

    private static readonly KeySpec<bool> FollowsSupply = Key.WithDefault(
        "output_follows_supply", Forms.TrueOrFalse, "Whether the output voltage rises and falls with the supply", "true",
        Pair(true, true, Provenance.CommonPractice, "", "inexpensive units do not regulate it"));

    internal static SectionSpec Spec { get; } = new(
        "inverter", "The inverter as it is set",
        [
            RatedCurrent, CurrentLimit, LowestFrequency, BaseFrequency, BaseVoltage, HighestFrequency, Curve, Boost, Offset,
            Doubler, ModulationKey, LoadedLink, DeadTime, Carrier, DeviceDrop, FollowsSupply,
        ])
    { Required = true };

    internal static Inverter? Read(Section section, Supply supply, ElectricPotential motorVoltage) => section.Make(() =>
    {
        var link = new DcLink(
            section.Get(Doubler) ?? false, section.Sided(LoadedLink).Value.Map(ratio => LinkFraction(ratio)),
            section.Get(ModulationKey) ?? Modulation.SpaceVector);
        return new Inverter(
            section.Get(RatedCurrent)!.Value, section.Sided(CurrentLimit).Value.Capability.DecimalFractions,
            section.Get(LowestFrequency)!.Value, section.Get(HighestFrequency)!.Value, CurveOf(section, motorVoltage), link,
            Drop(section, supply, link), section.Sided(FollowsSupply).Value.Capability);
    });

    /// <summary>Marks as faulty what the values alone show: a law without its parameter.</summary>
    internal static void Check(Section section)
    {
        var law = section.Get(Curve) ?? Law.Straight;
        if (law == Law.Offset && !section.Has(Offset))
            section.Fault(Curve, "an offset law needs the key offset", "offset = \"1.5 Hz\"");
        if (law == Law.Offset && section.Has(Boost))
            section.Fault(Boost, "an offset law has no boost", "a straight law with boost, or an offset law");
        if (law == Law.Straight && section.Has(Offset))
            section.Fault(Offset, "a straight law has no offset", "curve = \"offset\"");
    }

    private static VoltsPerHertzCurve CurveOf(Section section, ElectricPotential motorVoltage)
    {
        var (volts, hertz) = (section.Get(BaseVoltage) ?? motorVoltage, section.Get(BaseFrequency)!.Value);
        return section.Get(Curve) == Law.Offset
            ? new OffsetCurve(volts, hertz, section.Get(Offset)!.Value)
            : new StraightCurve(volts, hertz, section.Get(Boost) ?? ElectricPotential.Zero);
    }

    private static double LinkFraction(Ratio ratio) =>
        Guard.Within(ratio.DecimalFractions, 0.5, 1, "inverter", "loaded link", "mean voltage over no-load peak");

    private static Sided<ElectricPotential> Drop(Section section, Supply supply, DcLink link)
    {
        var (deadTime, carrier, device) =
            (section.Sided(DeadTime).Value, section.Sided(Carrier).Value, section.Sided(DeviceDrop).Value);
        ElectricPotential On(Side side) => OutputDrop.PerPhase(
            link.Voltage(supply.On(side), side), deadTime.On(side), carrier.On(side), device.On(side));
        return new(On(Side.Capability), On(Side.Hazard));
    }

    private static Sourced<Sided<T>> Pair<T>(T capability, T hazard, Provenance provenance, string source, string note) =>
        new(new(capability, hazard), provenance, source, note);
}
