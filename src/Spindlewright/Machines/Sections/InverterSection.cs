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
        Quadratic,
        MultiPoint,
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
        "curve", Forms.Choice(
            ("straight", Law.Straight), ("offset", Law.Offset), ("quadratic", Law.Quadratic), ("multi-point", Law.MultiPoint)),
        "V/f law: straight, offset (no volts below an offset frequency), quadratic, or multi-point", "\"straight\"", "straight");

    private static readonly KeySpec<ElectricPotential> Boost = Key.Optional(
        "boost", Forms.Quantity(QuantityKinds.Voltage), "Line voltage that the law sets at 0 Hz; not with an offset law", "\"0 V\"", "0 V");

    private static readonly KeySpec<Frequency> Offset = Key.Optional(
        "offset", Forms.Quantity(QuantityKinds.Frequency), "Frequency at which an offset law meets zero volts", "\"1.5 Hz\"") with
    { Quantity = "offset frequency" };

    private static readonly KeySpec<IReadOnlyList<Frequency>> PointFrequencies = Key.Optional(
        "point_frequencies", Forms.List(Forms.Quantity(QuantityKinds.Frequency), 1, MultiPointCurve.MostPoints),
        "Frequencies of a multi-point law between 0 Hz and the base point, rising", "[\"5 Hz\", \"25 Hz\"]") with
    { Quantity = "points of the V/f law" };

    private static readonly KeySpec<IReadOnlyList<ElectricPotential>> PointVoltages = Key.Optional(
        "point_voltages", Forms.List(Forms.Quantity(QuantityKinds.Voltage), 1, MultiPointCurve.MostPoints),
        "Line voltages at those frequencies", "[\"30 V\", \"120 V\"]");

    private static readonly KeySpec<bool> Doubler = Key.Optional(
        "voltage_doubler", Forms.TrueOrFalse, "Whether the input doubles the voltage, as on 115 to 120 V units for 230 V motors", "false", "false");

    private static readonly KeySpec<Modulation> ModulationKey = Key.Optional(
        "modulation", Forms.Choice(("space-vector", Modulation.SpaceVector), ("sine", Modulation.Sine)),
        "How the output stage modulates", "\"space-vector\"", "space-vector");

    private static readonly KeySpec<Ratio> LoadedLink = Key.Optional(
        "loaded_link", Forms.Quantity(QuantityKinds.Ratio), "Mean DC-link voltage under load over its no-load peak", "\"96 %\"",
        "computed for rated motor power at the lowest supply; unloaded on the hazard side");

    private static readonly KeySpec<ElectricCapacitance> LinkCapacitance = Key.Optional(
        "link_capacitance", Forms.Quantity(QuantityKinds.Capacitance), "Capacitance of the DC link; of each of the two capacitors of a doubler", "\"1000 µF\"",
        "sized by the unit's rated output");

    private static readonly KeySpec<ElectricResistance> ChargingResistance = Key.Optional(
        "charging_resistance", Forms.Quantity(QuantityKinds.Resistance), "Resistance that limits the charging current of the link", "\"30 ohm\"", "not credited");

    private static readonly KeySpec<Duration> DeadTime = Key.WithDefault(
        "dead_time", Forms.Quantity(QuantityKinds.Duration), "Dead time that is not compensated", "\"3 us\"",
        Pair(Duration.FromMicroseconds(3), Duration.Zero, Provenance.OwnChoice, "this-project", "usual in small units; never credited on the hazard side"));

    private static readonly KeySpec<Ratio> DeadTimeCompensation = Key.WithDefault(
        "dead_time_compensation", Forms.Quantity(QuantityKinds.Ratio), "Share of the dead time that the unit makes good", "\"0 %\"",
        Pair(Ratio.FromPercent(0), Ratio.FromPercent(100), Provenance.OwnChoice, "this-project", "none counted for drilling, all of it in a hazard"));

    private static readonly KeySpec<Frequency> Carrier = Key.WithDefault(
        "carrier_frequency", Forms.Quantity(QuantityKinds.Frequency), "Switching frequency", "\"8 kHz\"",
        Pair(Frequency.FromKilohertz(8), Frequency.FromKilohertz(8), Provenance.CommonPractice, "", "usual factory setting of small units"));

    private static readonly KeySpec<ElectricPotential> DeviceDrop = Key.WithDefault(
        "device_drop", Forms.Quantity(QuantityKinds.Voltage), "Drop of the switching devices, a phase", "\"1 V\"",
        Pair(ElectricPotential.FromVolts(1), ElectricPotential.Zero, Provenance.OwnChoice, "this-project", "order of a transistor and a diode; none on the hazard side"));

    private static readonly KeySpec<bool> FollowsSupply = Key.WithDefault(
        "output_follows_supply", Forms.TrueOrFalse, "Whether the output voltage rises and falls with the supply", "true",
        Pair(true, true, Provenance.CommonPractice, "", "inexpensive units do not regulate it"));

    private static readonly KeySpec<Ratio> SlipCompensation = Key.Optional(
        "slip_compensation", Forms.Quantity(QuantityKinds.Ratio), "Share of the rated slip that the unit adds to the frequency at rated torque", "\"100 %\"", "off");

    private static readonly KeySpec<Duration> Acceleration = Key.WithDefault(
        "acceleration_time", Forms.Quantity(QuantityKinds.Duration), "Time from 0 to base frequency", "\"5 s\"",
        Pair(Ramps.Usual.Acceleration, Ramps.Usual.Acceleration, Provenance.CommonPractice, "trade-practice", "usual factory setting"));

    private static readonly KeySpec<Duration> Deceleration = Key.WithDefault(
        "deceleration_time", Forms.Quantity(QuantityKinds.Duration), "Time from base frequency to 0", "\"5 s\"",
        Pair(Ramps.Usual.Deceleration, Ramps.Usual.Deceleration, Provenance.CommonPractice, "trade-practice", "usual factory setting"));

    private static readonly KeySpec<Power> Standby = Key.WithDefault(
        "standby_power", Forms.Quantity(QuantityKinds.Power), "Power that the unit takes whenever it is on the supply", "\"10 W\"",
        Pair(InverterLosses.Usual.Capability.Standby, InverterLosses.Usual.Hazard.Standby, Provenance.CommonPractice, "trade-practice", "small units with a display and a fan"));

    private static readonly KeySpec<Ratio> LossAtRatedCurrent = Key.WithDefault(
        "loss_at_rated_current", Forms.Quantity(QuantityKinds.Ratio), "Loss of the output stage at rated current over rated apparent power", "\"3 %\"",
        Pair(
            Ratio.FromDecimalFractions(InverterLosses.Usual.Capability.AtRatedCurrent),
            Ratio.FromDecimalFractions(InverterLosses.Usual.Hazard.AtRatedCurrent), Provenance.CommonPractice, "trade-practice", "units of 0.4 to 2.2 kW give out 95 to 97 % of what they take in"));

    private static readonly KeySpec<ElectricPotential> LinkTrip = Key.Optional(
        "link_trip", Forms.Quantity(QuantityKinds.Voltage), "Link voltage at which the unit trips on deceleration", "\"400 V\"",
        "a fifth above the no-load link at the highest supply") with
    { Quantity = "link trip voltage" };

    internal static SectionSpec Spec { get; } = new(
        "inverter", "The inverter as it is set",
        [
            RatedCurrent, CurrentLimit, LowestFrequency, BaseFrequency, BaseVoltage, HighestFrequency, Curve, Boost, Offset,
            PointFrequencies, PointVoltages, Doubler, ModulationKey, LoadedLink, LinkCapacitance, ChargingResistance, DeadTime,
            DeadTimeCompensation, Carrier, DeviceDrop, FollowsSupply, SlipCompensation, Acceleration, Deceleration, Standby,
            LossAtRatedCurrent, LinkTrip,
        ])
    { Required = true };

    internal static Inverter? Read(Section section, Supply supply, MachineMotor motor, DefaultsTaken defaults)
    {
        var inverter = section.Make(() => Made(section, supply, motor));
        if (inverter is not null) Note(section, inverter, defaults);
        return inverter;
    }

    /// <summary>Marks as faulty what the values alone show: a law without its parameters, or with those of another.</summary>
    internal static void Check(Section section)
    {
        var law = section.Get(Curve) ?? Law.Straight;
        if (law == Law.Offset && !section.Has(Offset))
            section.Fault(Curve, "an offset law needs the key offset", "offset = \"1.5 Hz\"");
        if (law == Law.Offset && section.Has(Boost))
            section.Fault(Boost, "an offset law has no boost", "a straight law with boost, or an offset law");
        if (law != Law.Offset && section.Has(Offset))
            section.Fault(Offset, "only an offset law has an offset", "curve = \"offset\"");
        foreach (var key in new KeySpec[] { PointFrequencies, PointVoltages })
            if (law == Law.MultiPoint && !section.Has(key))
                section.Fault(Curve, $"a multi-point law needs the key {key.Name}", $"{key.Name} = {key.Example}");
            else if (law != Law.MultiPoint && section.Has(key))
                section.Fault(key, "only a multi-point law has points", "curve = \"multi-point\"");
        if (section.Get(PointFrequencies) is { } hertz && section.Get(PointVoltages) is { } volts && hertz.Count != volts.Count)
            section.Fault(PointVoltages, $"{volts.Count} voltages stand beside {hertz.Count} frequencies", "as many voltages as frequencies");
    }

    private static Inverter Made(Section section, Supply supply, MachineMotor motor)
    {
        var curve = CurveOf(section, motor.Circuit.Hazard.RatedLineVoltage);
        var (ratedCurrent, doubler) = (section.Get(RatedCurrent)!.Value, section.Get(Doubler) ?? false);
        var capacitance = section.Get(LinkCapacitance) ?? LinkSize.Usual(ratedCurrent, curve.BaseVoltage, doubler);
        var loaded = section.Get(LoadedLink) is { } given
            ? Sided.Same(LinkFraction(given))
            : new(LinkSize.LoadedFraction(supply, motor, doubler, capacitance), 1);
        var link = new DcLink(doubler, loaded, section.Get(ModulationKey) ?? Modulation.SpaceVector);
        InverterLosses LossesOn(Side side) =>
            new(section.Sided(Standby).Value.On(side), section.Sided(LossAtRatedCurrent).Value.On(side).DecimalFractions);
        return new Inverter(
            ratedCurrent, section.Sided(CurrentLimit).Value.Capability.DecimalFractions,
            section.Get(LowestFrequency)!.Value, section.Get(HighestFrequency)!.Value, curve, link,
            Drop(section, supply, link), section.Sided(FollowsSupply).Value.Capability)
        {
            SlipCompensation = section.Get(SlipCompensation)?.DecimalFractions ?? 0,
            Ramps = new(section.Sided(Acceleration).Value.Capability, section.Sided(Deceleration).Value.Capability),
            LinkCapacitance = capacitance,
            ChargingResistance = section.Get(ChargingResistance),
            Losses = new(LossesOn(Side.Capability), LossesOn(Side.Hazard)),
            LinkTrip = section.Get(LinkTrip),
        };
    }

    private static VoltsPerHertzCurve CurveOf(Section section, ElectricPotential motorVoltage)
    {
        var (volts, hertz) = (section.Get(BaseVoltage) ?? motorVoltage, section.Get(BaseFrequency)!.Value);
        var boost = section.Get(Boost) ?? ElectricPotential.Zero;
        return section.Get(Curve) switch
        {
            Law.Offset => new OffsetCurve(volts, hertz, section.Get(Offset)!.Value),
            Law.Quadratic => new QuadraticCurve(volts, hertz, boost),
            Law.MultiPoint => new MultiPointCurve(volts, hertz, boost, [.. section.Get(PointFrequencies)!
                .Zip(section.Get(PointVoltages)!, (at, line) => new CurvePoint(at, line))]),
            _ => new StraightCurve(volts, hertz, boost),
        };
    }

    private static void Note(Section section, Inverter inverter, DefaultsTaken defaults)
    {
        var source = "this-project";
        if (!section.Has(LinkCapacitance))
        {
            var text = QuantityWriter.Write(inverter.LinkCapacitance!.Value, QuantityKinds.Capacitance);
            defaults.Add(new(
                "inverter.link_capacitance", LinkCapacitance.Meaning, text, text, Provenance.OwnArithmetic, source, LinkSize.Reason));
        }
        if (!section.Has(LoadedLink))
            defaults.Add(new(
                "inverter.loaded_link", LoadedLink.Meaning,
                FormattableString.Invariant($"{100 * inverter.Link.LoadedFraction.Capability:0.0} %"), "100 %",
                Provenance.OwnArithmetic, source, "time stepping of the rectifier at rated motor power and the lowest supply; unloaded on the hazard side"));
    }

    private static double LinkFraction(Ratio ratio) =>
        Guard.Within(ratio.DecimalFractions, 0.5, 1, "inverter", "loaded link", "mean voltage over no-load peak");

    /// <summary>The drop of the capability side; in a hazard none is credited, whatever was given.</summary>
    private static Sided<ElectricPotential> Drop(Section section, Supply supply, DcLink link)
    {
        var compensation = Guard.Within(
            section.Sided(DeadTimeCompensation).Value.Capability.DecimalFractions, 0, 1, "inverter", "dead time compensation");
        var capability = OutputDrop.PerPhase(
            link.Voltage(supply.On(Side.Capability), Side.Capability), section.Sided(DeadTime).Value.Capability * (1 - compensation),
            section.Sided(Carrier).Value.Capability, section.Sided(DeviceDrop).Value.Capability);
        return new(capability, ElectricPotential.Zero);
    }

    private static Sourced<Sided<T>> Pair<T>(T capability, T hazard, Provenance provenance, string source, string note) =>
        new(new(capability, hazard), provenance, source, note);
}
