using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines.Text;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[motor]</c>: a nameplate, or ratings and a measured circuit in <c>[motor.circuit]</c>.</summary>
internal static class MotorSection
{
    internal static readonly KeySpec<Connection> ConnectionKey = Key.Required(
        "connection", Forms.Choice(("delta", Connection.Delta), ("star", Connection.Star)),
        "How the windings are joined at the inverter", "\"delta\"") with
    { Quantity = "volts per hertz" };

    private static readonly KeySpec<Power> RatedPower = Key.Required(
        "power", Forms.Quantity(QuantityKinds.Power), "Rated shaft power", "\"0.75 kW\"") with
    { Quantity = "rated power" };

    private static readonly KeySpec<int> Poles = Key.Required(
        "poles", Forms.WholeNumber(2, 24), "Number of poles: 2, 4, 6, 8", "4") with
    { Quantity = "number of poles" };

    private static readonly KeySpec<Frequency> RatedFrequency = Key.Required(
        "frequency", Forms.Quantity(QuantityKinds.Frequency), "Rated frequency", "\"50 Hz\"") with
    { Quantity = "rated frequency" };

    private static readonly KeySpec<ElectricPotential> VoltageDelta = Key.Optional(
        "voltage_delta", Forms.Quantity(QuantityKinds.Voltage), "Rated line voltage in delta", "\"230 V\"", "voltage_star over √3") with
    { ShownInTemplate = true };

    private static readonly KeySpec<ElectricPotential> VoltageStar = Key.Optional(
        "voltage_star", Forms.Quantity(QuantityKinds.Voltage), "Rated line voltage in star", "\"400 V\"", "√3 times voltage_delta") with
    { ShownInTemplate = true };

    private static readonly KeySpec<ElectricCurrent> CurrentDelta = Key.Optional(
        "current_delta", Forms.Quantity(QuantityKinds.Current), "Rated line current in delta", "\"3.2 A\"", "√3 times current_star") with
    { ShownInTemplate = true };

    private static readonly KeySpec<ElectricCurrent> CurrentStar = Key.Optional(
        "current_star", Forms.Quantity(QuantityKinds.Current), "Rated line current in star", "\"1.85 A\"", "current_delta over √3");

    private static readonly KeySpec<RotationalSpeed> RatedSpeed = Key.Required(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Rated (full-load) speed, below the synchronous speed 120 f / poles", "\"1430 r/min\"") with
    { Quantity = "rated speed" };

    private static readonly KeySpec<double> PowerFactor = Key.Optional(
        "power_factor", Forms.Quantity(QuantityKinds.Number), "Power factor at rated load; needed unless a circuit is given", "0.76") with
    { ShownInTemplate = true };

    private static readonly KeySpec<Ratio> Breakdown = Key.Optional(
        "breakdown_torque", Forms.Quantity(QuantityKinds.Ratio), "Breakdown torque over rated torque", "\"290 %\"",
        "a pair: least of the standard for the size and poles, and upper catalogue practice") with
    { Quantity = "breakdown torque over rated" };

    private static readonly KeySpec<Ratio> LockedRotorTorque = Key.Optional(
        "locked_rotor_torque", Forms.Quantity(QuantityKinds.Ratio), "Locked-rotor torque over rated torque; compared, not fitted", "\"240 %\"") with
    { Quantity = "locked-rotor torque over rated" };

    private static readonly KeySpec<Ratio> LockedRotorCurrent = Key.Optional(
        "locked_rotor_current", Forms.Quantity(QuantityKinds.Ratio), "Locked-rotor current over rated current; compared, not fitted", "\"520 %\"") with
    { Quantity = "locked-rotor current over rated" };

    private static readonly KeySpec<Temperature> Cold = Key.WithDefault(
        "winding_cold", Forms.Quantity(QuantityKinds.Temperature), "Coldest winding to be expected", "\"20 °C\"",
        Defaults.Pair(Temperature.FromDegreesCelsius(20), Provenance.OwnChoice, "a workshop in the morning"));

    private static readonly KeySpec<Temperature> Hot = Key.WithDefault(
        "winding_hot", Forms.Quantity(QuantityKinds.Temperature), "Hottest winding to be expected", "\"120 °C\"",
        Defaults.Pair(Temperature.FromDegreesCelsius(120), Provenance.SecondHand, "40 °C and the 80 K rise of class B", "iec-60034-1"));

    private static readonly KeySpec<Temperature> AtRatedLoad = Key.WithDefault(
        "winding_at_rated_load", Forms.Quantity(QuantityKinds.Temperature), "Winding temperature at which the nameplate holds", "\"95 °C\"",
        Defaults.Pair(Temperature.FromDegreesCelsius(95), Provenance.FromMemory, "reference temperature of class B", "iec-60034-1"));

    private static readonly KeySpec<Ratio> CoreShare = Key.WithDefault(
        "core_loss_share", Forms.Quantity(QuantityKinds.Ratio), "Core loss over all losses at rated load", "\"20 %\"",
        Defaults.Shares(shares => shares.Core)) with
    { Quantity = "core share" };

    private static readonly KeySpec<Ratio> RotationalShare = Key.WithDefault(
        "friction_and_windage_share", Forms.Quantity(QuantityKinds.Ratio), "Friction and windage over all losses at rated load", "\"8 %\"",
        Defaults.Shares(shares => shares.Rotational)) with
    { Quantity = "friction and windage share" };

    private static readonly KeySpec<Ratio> StrayShare = Key.WithDefault(
        "stray_load_share", Forms.Quantity(QuantityKinds.Ratio), "Stray-load loss over all losses at rated load", "\"2 %\"",
        Defaults.Shares(shares => shares.Stray)) with
    { Quantity = "stray-load share" };

    private static readonly KeySpec<Ratio> LeakageSplit = Key.WithDefault(
        "stator_share_of_leakage", Forms.Quantity(QuantityKinds.Ratio), "X1 over X1 + X2", "\"50 %\"",
        Defaults.Pair(Ratio.FromPercent(50), Provenance.SecondHand, "design A", "ieee-112")) with
    { Quantity = "stator share of leakage" };

    private static readonly KeySpec<Ratio> Saturation = Key.WithDefault(
        "saturation", Forms.Quantity(QuantityKinds.Ratio), "Share of the magnetising current at rated flux that stands on the seventh power of flux", "\"25 %\"",
        new(new(Ratio.FromPercent(35), Ratio.FromPercent(15)), Provenance.OwnChoice, "this-project", "no-load current rises by 1.2 to 1.4 for 10 % more volts"));

    private static readonly CircuitKeys Circuit = new();

    internal static SectionSpec Spec { get; } = new(
        "motor", "The motor: its nameplate, or its ratings and a measured circuit",
        [
            RatedPower, Poles, RatedFrequency, VoltageDelta, VoltageStar, ConnectionKey, CurrentDelta, CurrentStar, RatedSpeed,
            PowerFactor, Breakdown, LockedRotorTorque, LockedRotorCurrent, Cold, Hot, AtRatedLoad, CoreShare,
            RotationalShare, StrayShare, LeakageSplit, Saturation,
        ])
    { Required = true, Sections = [Circuit.Spec] };

    /// <summary>Marks as faulty what the values alone show: figures that are needed together.</summary>
    internal static void Check(Section section)
    {
        if (!section.Has(VoltageDelta) && !section.Has(VoltageStar))
            section.Fault(null, "neither voltage_delta nor voltage_star is given", "the voltages printed on the nameplate");
        if (section.Only(Circuit.Spec) is not null) return;
        if (!section.Has(CurrentDelta) && !section.Has(CurrentStar))
            section.Fault(null, "neither current_delta nor current_star is given", "a current printed on the nameplate, or [motor.circuit]");
        if (!section.Has(PowerFactor))
            section.Fault(null, "power_factor is not given", "power_factor = 0.76, or [motor.circuit]");
    }

    internal static MachineMotor? Read(Section section, Handbook handbook, DefaultsTaken defaults) => section.Make(() =>
    {
        var connection = section.Get(ConnectionKey)!.Value;
        var (cold, hot) = (section.Sided(Cold).Value.Capability, section.Sided(Hot).Value.Capability);
        var winding = (cold, Guard.Within(hot, cold, Temperature.FromDegreesCelsius(250), "motor", "winding hot", "not below winding_cold"));
        return section.Only(Circuit.Spec) is { } circuit
            ? Measured(section, circuit, connection, winding)
            : Fitted(section, handbook, defaults, connection, winding);
    });

    /// <summary>Rated line voltage of a connection: as printed, or from the other one.</summary>
    private static ElectricPotential Voltage(Section section, Connection connection) => connection == Connection.Delta
        ? section.Get(VoltageDelta) ?? section.Get(VoltageStar)!.Value / Math.Sqrt(3)
        : section.Get(VoltageStar) ?? section.Get(VoltageDelta)!.Value * Math.Sqrt(3);

    private static MachineMotor Measured(
        Section section, Section circuit, Connection connection, (Temperature Cold, Temperature Hot) winding)
    {
        var read = Circuit.Read(
            circuit, Voltage(section, connection), section.Get(RatedFrequency)!.Value, section.Get(Poles)!.Value,
            section.Sided(Saturation).Value);
        var speed = section.Get(RatedSpeed)!.Value;
        var synchronous = read.Hazard.SynchronousSpeed;
        if (speed >= synchronous)
            throw new PartException(
                "motor", "rated speed", QuantityWriter.Write(speed, QuantityKinds.RotationalSpeed),
                $"below {QuantityWriter.Write(synchronous, QuantityKinds.RotationalSpeed)}", "synchronous speed, 120 f / poles");
        var atRated = CircuitSolver.SolveAtRatedSupply(read.Hazard, speed);
        return new()
        {
            Circuit = read,
            Connection = connection,
            RatedPower = section.Get(RatedPower)!.Value,
            RatedSpeed = speed,
            RatedCurrent = section.Get(connection == Connection.Delta ? CurrentDelta : CurrentStar) ?? atRated.Current,
            Winding = winding,
        };
    }

    private static MachineMotor Fitted(
        Section section, Handbook handbook, DefaultsTaken defaults, Connection connection,
        (Temperature Cold, Temperature Hot) winding)
    {
        var plate = Plate(section);
        var breakdown = BreakdownDefault(section, handbook, defaults, plate);
        NameplateFit On(Side side) => NameplateFit.Of(plate, Settings(section, side, breakdown.On(side)));
        var fit = new Sided<NameplateFit>(On(Side.Capability), On(Side.Hazard));
        return new()
        {
            Circuit = fit.Map(each => each.Circuit.Rejoined(plate.Connection, connection)),
            Connection = connection,
            RatedPower = plate.Power,
            RatedSpeed = plate.Speed,
            RatedCurrent = plate.Current * CurrentFactor(plate.Connection, connection),
            Winding = winding,
            BreakdownTorqueForBound = plate.BreakdownTorque ?? breakdown.Hazard,
            Fit = fit,
        };
    }

    private static double CurrentFactor(Connection from, Connection to) =>
        from == to ? 1 : to == Connection.Delta ? Math.Sqrt(3) : 1 / Math.Sqrt(3);

    private static Nameplate Plate(Section section)
    {
        // Voltage and current are taken in the connection whose current is printed.
        var connection = section.Has(CurrentDelta) ? Connection.Delta : Connection.Star;
        return new(
            section.Get(RatedPower)!.Value, Voltage(section, connection), connection, section.Get(RatedFrequency)!.Value,
            section.Get(Poles)!.Value, section.Get(RatedSpeed)!.Value,
            section.Get(connection == Connection.Delta ? CurrentDelta : CurrentStar)!.Value, section.Get(PowerFactor)!.Value)
        {
            BreakdownTorque = section.Get(Breakdown)?.DecimalFractions,
            LockedRotorTorque = section.Get(LockedRotorTorque)?.DecimalFractions,
            LockedRotorCurrent = section.Get(LockedRotorCurrent)?.DecimalFractions,
        };
    }

    private static Sided<double> BreakdownDefault(
        Section section, Handbook handbook, DefaultsTaken defaults, Nameplate plate)
    {
        var pair = handbook.MotorDefaults.Pair("breakdown torque", plate.Poles, plate.Power);
        if (!section.Has(Breakdown))
            defaults.Add(new(
                "motor.breakdown_torque", "breakdown torque over rated torque",
                QuantityWriter.Number(pair.Capability.Value), QuantityWriter.Number(pair.Hazard.Value),
                pair.Hazard.Provenance, pair.Capability.Source,
                $"{pair.Capability.Provenance.InWords()}: {pair.Capability.Note}; {pair.Hazard.Provenance.InWords()}: {pair.Hazard.Note}"));
        return pair.Map(each => each.Value);
    }

    private static FitSettings Settings(Section section, Side side, double breakdown) => new(
        new LossShares(
            section.Sided(CoreShare).Value.On(side).DecimalFractions,
            section.Sided(RotationalShare).Value.On(side).DecimalFractions,
            section.Sided(StrayShare).Value.On(side).DecimalFractions),
        section.Sided(LeakageSplit).Value.On(side).DecimalFractions, section.Sided(Saturation).Value.On(side).DecimalFractions,
        section.Sided(AtRatedLoad).Value.On(side), breakdown);

    /// <summary>Shapes of the section's defaults.</summary>
    private static class Defaults
    {
        internal static Sourced<Sided<T>> Pair<T>(T value, Provenance provenance, string note, string source = "this-project") =>
            new(Sided.Same(value), provenance, source, note);

        internal static Sourced<Sided<Ratio>> Shares(Func<LossShares, double> share) => new(
            LossShares.Default.Map(shares => Ratio.FromDecimalFractions(share(shares))), Provenance.OwnChoice, "this-project",
            "small enclosed motors; a larger share leaves less stator resistance");
    }
}
