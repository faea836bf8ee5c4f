using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using Spindlewright.Motors;
using Spindlewright.Motors.Plates;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The keys of <c>[motor]</c> that stand on the plate or are measured on the motor.</summary>
internal static class PlateKeys
{
    internal static readonly KeySpec<Power> RatedPower = Key.Optional(
        "power", Forms.Quantity(QuantityKinds.Power), "Rated shaft power", "\"0.75 kW\"", "usual for frame_size or shaft_diameter: a pair") with
    { Quantity = "rated power", ShownInTemplate = true };

    internal static readonly KeySpec<int> Poles = Key.Optional(
        "poles", Forms.WholeNumber(2, 24), "Number of poles: 2, 4, 6, 8", "4", "from the speed or the no-load speed") with
    { Quantity = "number of poles", ShownInTemplate = true };

    internal static readonly KeySpec<Frequency> RatedFrequency = Key.Required(
        "frequency", Forms.Quantity(QuantityKinds.Frequency), "Rated frequency", "\"50 Hz\"") with
    { Quantity = "rated frequency" };

    internal static readonly KeySpec<ElectricPotential> VoltageDelta = Key.Optional(
        "voltage_delta", Forms.Quantity(QuantityKinds.Voltage), "Rated line voltage in delta", "\"230 V\"", "voltage_star over √3") with
    { ShownInTemplate = true };

    internal static readonly KeySpec<ElectricPotential> VoltageStar = Key.Optional(
        "voltage_star", Forms.Quantity(QuantityKinds.Voltage), "Rated line voltage in star", "\"400 V\"", "√3 times voltage_delta") with
    { ShownInTemplate = true };

    internal static readonly KeySpec<ElectricCurrent> CurrentDelta = Key.Optional(
        "current_delta", Forms.Quantity(QuantityKinds.Current), "Rated line current in delta", "\"3.2 A\"", "√3 times current_star") with
    { ShownInTemplate = true };

    internal static readonly KeySpec<ElectricCurrent> CurrentStar = Key.Optional(
        "current_star", Forms.Quantity(QuantityKinds.Current), "Rated line current in star", "\"1.85 A\"", "current_delta over √3");

    internal static readonly KeySpec<RotationalSpeed> RatedSpeed = Key.Optional(
        "speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Rated (full-load) speed, below the synchronous speed 120 f / poles", "\"1430 r/min\"", "usual for the poles: a pair") with
    { Quantity = "rated speed", ShownInTemplate = true };

    internal static readonly KeySpec<double> PowerFactor = Key.Optional(
        "power_factor", Forms.Quantity(QuantityKinds.Number), "Power factor at rated load", "0.76", "from current and efficiency, or usual for the poles: a pair") with
    { Quantity = "power factor", ShownInTemplate = true };

    internal static readonly KeySpec<Ratio> Efficiency = Key.Optional(
        "efficiency", Forms.Quantity(QuantityKinds.Ratio), "Efficiency at rated load", "\"79.6 %\"", "from current and power factor, or the limits of the efficiency classes: a pair");

    internal static readonly KeySpec<Ratio> Breakdown = Key.Optional(
        "breakdown_torque", Forms.Quantity(QuantityKinds.Ratio), "Breakdown torque over rated torque", "\"290 %\"",
        "a pair: least of the standard for the size and poles, and upper catalogue practice") with
    { Quantity = "breakdown torque over rated" };

    internal static readonly KeySpec<Ratio> LockedRotorTorque = Key.Optional(
        "locked_rotor_torque", Forms.Quantity(QuantityKinds.Ratio), "Locked-rotor torque over rated torque", "\"240 %\"") with
    { Quantity = "locked-rotor torque over rated" };

    internal static readonly KeySpec<Ratio> LockedRotorCurrent = Key.Optional(
        "locked_rotor_current", Forms.Quantity(QuantityKinds.Ratio), "Locked-rotor current over rated current", "\"520 %\"") with
    { Quantity = "locked-rotor current over rated" };

    internal static readonly KeySpec<ElectricCurrent> NoLoadCurrent = Key.Optional(
        "no_load_current", Forms.Quantity(QuantityKinds.Current), "Measured line current at no load, rated voltage and frequency, in the connection whose current is given, else the one in use", "\"2.0 A\"") with
    { Quantity = "no-load current" };

    internal static readonly KeySpec<RotationalSpeed> NoLoadSpeed = Key.Optional(
        "no_load_speed", Forms.Quantity(QuantityKinds.RotationalSpeed), "Measured speed at no load, rated frequency; tells the poles", "\"1495 r/min\"") with
    { Quantity = "no-load speed" };

    internal static readonly KeySpec<ElectricResistance> WindingResistance = Key.Optional(
        "winding_resistance", Forms.Quantity(QuantityKinds.Resistance), "Measured resistance between two terminals, in the connection whose current is given, else the one in use", "\"6.9 ohm\"") with
    { Quantity = "winding resistance between terminals" };

    internal static readonly KeySpec<Temperature> WindingMeasuredAt = Key.Optional(
        "winding_measured_at", Forms.Quantity(QuantityKinds.Temperature), "Winding temperature when its resistance was measured", "\"20 °C\"", "20 °C") with
    { Quantity = "temperature of the measured winding" };

    internal static readonly KeySpec<Length> FrameSize = Key.Optional(
        "frame_size", Forms.Quantity(QuantityKinds.Length), "Shaft height of the frame, where there is no readable power", "\"80 mm\"") with
    { Quantity = "frame size" };

    internal static readonly KeySpec<Length> ShaftDiameter = Key.Optional(
        "shaft_diameter", Forms.Quantity(QuantityKinds.Length), "Shaft diameter, where there is no readable power", "\"19 mm\"");

    internal static IReadOnlyList<KeySpec> All { get; } =
    [
        RatedPower, Poles, RatedFrequency, VoltageDelta, VoltageStar, CurrentDelta, CurrentStar, RatedSpeed, PowerFactor,
        Efficiency, Breakdown, LockedRotorTorque, LockedRotorCurrent, NoLoadCurrent, NoLoadSpeed, WindingResistance,
        WindingMeasuredAt, FrameSize, ShaftDiameter,
    ];

    /// <summary>Marks as faulty what the values alone show: figures that are needed together.</summary>
    internal static void Check(Section section, bool givesCircuit)
    {
        if (!section.Has(VoltageDelta) && !section.Has(VoltageStar))
            section.Fault(null, "neither voltage_delta nor voltage_star is given", "the voltages printed on the nameplate");
        if (!section.Has(RatedPower) && (givesCircuit || (!section.Has(FrameSize) && !section.Has(ShaftDiameter))))
            section.Fault(null, "power is not given", givesCircuit ? "the rated power" : "power = \"0.75 kW\", or frame_size or shaft_diameter");
        if (!section.Has(Poles) && (givesCircuit || (!section.Has(RatedSpeed) && !section.Has(NoLoadSpeed))))
            section.Fault(null, "poles is not given", givesCircuit ? "the number of poles" : "poles = 4, or speed or no_load_speed");
        if (givesCircuit && !section.Has(RatedSpeed))
            section.Fault(null, "speed is not given", "the rated speed");
        if (section.Get(Poles) is { } poles && poles % 2 != 0)
            section.Fault(Poles, "poles come in pairs", "an even number from 2 to 24");
    }

    /// <summary>Rated line voltage of a connection: as printed, or from the other one.</summary>
    internal static ElectricPotential Voltage(Section section, Connection connection) => connection == Connection.Delta
        ? section.Get(VoltageDelta) ?? section.Get(VoltageStar)!.Value / Math.Sqrt(3)
        : section.Get(VoltageStar) ?? section.Get(VoltageDelta)!.Value * Math.Sqrt(3);

    /// <summary>The figures, in the connection whose current is printed or else the one in use.</summary>
    internal static PlateFigures Read(Section section, Connection inUse)
    {
        var connection = section.Has(CurrentDelta) ? Connection.Delta : section.Has(CurrentStar) ? Connection.Star : inUse;
        return new()
        {
            LineVoltage = Voltage(section, connection),
            Connection = connection,
            Frequency = section.Get(RatedFrequency)!.Value,
            Power = section.Get(RatedPower),
            Poles = section.Get(Poles),
            Speed = section.Get(RatedSpeed),
            Current = section.Get(connection == Connection.Delta ? CurrentDelta : CurrentStar),
            PowerFactor = section.Get(PowerFactor),
            Efficiency = section.Get(Efficiency)?.DecimalFractions,
            BreakdownTorque = section.Get(Breakdown)?.DecimalFractions,
            LockedRotorTorque = section.Get(LockedRotorTorque)?.DecimalFractions,
            LockedRotorCurrent = section.Get(LockedRotorCurrent)?.DecimalFractions,
            NoLoadCurrent = section.Get(NoLoadCurrent),
            NoLoadSpeed = section.Get(NoLoadSpeed),
            WindingResistance = section.Get(WindingResistance),
            WindingMeasuredAt = section.Get(WindingMeasuredAt) ?? Temperature.FromDegreesCelsius(20),
            FrameSize = section.Get(FrameSize),
            ShaftDiameter = section.Get(ShaftDiameter),
        };
    }
}
