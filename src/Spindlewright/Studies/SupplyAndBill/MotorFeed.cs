using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Mains;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.SupplyAndBill;

/// <summary>The motor at nominal supply, warm, and what inverter and rectifier take for it.</summary>
internal sealed class MotorFeed
{
    private readonly DrillPress press;

    internal MotorFeed(DrillPress press)
    {
        this.press = press;
        var inverter = press.Inverter;
        var doubler = inverter.Link.Doubler;
        Capacitance = inverter.LinkCapacitance ?? LinkSize.Usual(inverter.RatedCurrent, inverter.Curve.BaseVoltage, doubler);
        Rectifier = LinkSize.Rectifier(press.Supply, doubler, Capacitance);
        Circuit = press.Motor.Circuit.Capability;
        var rated = CircuitSolver.SolveAtRatedSupply(Circuit, press.Motor.RatedSpeed);
        RatedLinkPower = LinkPower(rated);
    }

    internal InputRectifier Rectifier { get; }

    internal EquivalentCircuit Circuit { get; }

    internal ElectricCapacitance Capacitance { get; }

    /// <summary>Capacitance across the whole link: half of each where two stand in series.</summary>
    internal ElectricCapacitance AcrossLink =>
        ElectricCapacitance.FromFarads(Capacitance.Farads / (press.Inverter.Link.Doubler ? 2 : 1));

    /// <summary>Power out of the link at rated motor load.</summary>
    internal Power RatedLinkPower { get; }

    /// <summary>The motor on the inverter at nominal supply; null where it stalls.</summary>
    internal OperatingPoint? OnInverter(Frequency frequency, Torque load)
    {
        var ceiling = press.Inverter.Link.Ceiling(press.Supply.Nominal, Side.Capability);
        var volts = UnitMath.Min(press.Inverter.Curve.LineVoltage(frequency), ceiling) / Math.Sqrt(3);
        return CircuitSolver.Running(Circuit, frequency, volts, load, press.Inverter.PhaseDrop.Capability);
    }

    /// <summary>The same motor on a three-phase line of its rated voltage and frequency; null where it stalls.</summary>
    internal OperatingPoint? DirectOnLine(Torque load) => CircuitSolver.Running(
        Circuit, Circuit.RatedFrequency, Circuit.RatedLineVoltage / Math.Sqrt(3), load);

    /// <summary>Power out of the link: motor, drop of the output stage counted as loss, and the inverter's own.</summary>
    private Power LinkPower(OperatingPoint motor) => motor.Input + press.Inverter.Losses.Capability.At(
        motor.Current, press.Inverter.RatedCurrent, press.Inverter.Curve.BaseVoltage);

    /// <summary>What the inverter takes from the socket at nominal supply for a motor that so runs.</summary>
    internal RectifierState Input(OperatingPoint motor) =>
        Rectifier.UnderPower(press.Supply.Nominal, press.Supply.Frequency, LinkPower(motor));

    internal InputAtLoad? AtBase(double share) =>
        OnInverter(press.Inverter.Curve.BaseFrequency, press.Motor.RatedTorque * share) is { } motor
            ? new(share, UnitMath.Max(motor.Shaft, Power.Zero), motor.Input, Input(motor))
            : null;
}
