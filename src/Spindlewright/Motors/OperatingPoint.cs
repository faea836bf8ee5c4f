using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors;

/// <summary>One steady state of a motor, with every intermediate that a hand calculation would show.</summary>
/// <remarks>Powers are of all three phases. Voltage and current are rms a phase of the equivalent star.</remarks>
public sealed record OperatingPoint
{
    /// <summary>Supply frequency.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>(ns − n) / ns; below 0 the machine generates, above 1 it plugs.</summary>
    public required double Slip { get; init; }

    /// <summary>Voltage set a phase, before the drop of the output stage.</summary>
    public required ElectricPotential SetPhaseVoltage { get; init; }

    /// <summary>Voltage at the motor's terminals a phase.</summary>
    public required ElectricPotential TerminalPhaseVoltage { get; init; }

    /// <summary>Stator current, equal to the line current of the equivalent star.</summary>
    public required ElectricCurrent Current { get; init; }

    /// <summary>Power factor at the motor's terminals, negative when generating.</summary>
    public required double PowerFactor { get; init; }

    /// <summary>Rotor current referred to the stator.</summary>
    public required ElectricCurrent RotorCurrent { get; init; }

    /// <summary>Air-gap EMF a phase.</summary>
    public required ElectricPotential AirGapVoltage { get; init; }

    /// <summary>Electrical power into the terminals.</summary>
    public required Power Input { get; init; }

    /// <summary>Stator winding loss, 3 I1² R1.</summary>
    public required Power StatorLoss { get; init; }

    /// <summary>Core loss.</summary>
    public required Power CoreLoss { get; init; }

    /// <summary>Power across the gap, 3 I2² R2/s.</summary>
    public required Power AirGapPower { get; init; }

    /// <summary>Rotor winding loss, slip times air-gap power.</summary>
    public required Power RotorLoss { get; init; }

    /// <summary>Friction and windage.</summary>
    public required Power RotationalLoss { get; init; }

    /// <summary>Stray-load loss.</summary>
    public required Power StrayLoss { get; init; }

    /// <summary>Power at the shaft.</summary>
    public required Power Shaft { get; init; }

    /// <summary>Rotor speed.</summary>
    public required RotationalSpeed Speed { get; init; }

    /// <summary>Torque across the gap.</summary>
    public required Torque AirGapTorque { get; init; }

    /// <summary>Torque at the shaft: air-gap torque less friction, windage and stray-load torque.</summary>
    public required Torque ShaftTorque { get; init; }

    /// <summary>Shaft power over input; NaN where nothing is taken in.</summary>
    public double Efficiency => (double)(Shaft.Watts / Input.Watts);

    internal static OperatingPoint From(
        EquivalentCircuit circuit, double frequencyHz, double phaseV, double slip, in CircuitState state)
    {
        var speed = (1 - slip) * circuit.Si.SynchronousRadPerS(frequencyHz);
        var losses = ShaftLosses.At(circuit, state.CurrentA, speed);
        var shaftTorqueNm = state.TorqueNm - losses.TorqueNm;
        var impedance = Math.Sqrt(state.ROhm * state.ROhm + state.XOhm * state.XOhm);
        return new()
        {
            Frequency = Frequency.FromHertz(frequencyHz),
            Slip = slip,
            SetPhaseVoltage = ElectricPotential.FromVolts(phaseV),
            TerminalPhaseVoltage = ElectricPotential.FromVolts(state.CurrentA * impedance),
            Current = ElectricCurrent.FromAmperes(state.CurrentA),
            PowerFactor = state.ROhm / impedance,
            RotorCurrent = ElectricCurrent.FromAmperes(state.RotorCurrentA),
            AirGapVoltage = ElectricPotential.FromVolts(state.AirGapV),
            Input = Power.FromWatts(3 * state.CurrentA * state.CurrentA * state.ROhm),
            StatorLoss = Power.FromWatts(3 * state.CurrentA * state.CurrentA * circuit.R1.Ohms),
            CoreLoss = Power.FromWatts(state.CoreLossW),
            AirGapPower = Power.FromWatts(state.AirGapPowerW),
            RotorLoss = Power.FromWatts(slip * state.AirGapPowerW),
            RotationalLoss = Power.FromWatts(losses.RotationalW),
            StrayLoss = Power.FromWatts(losses.StrayW),
            Shaft = Power.FromWatts(shaftTorqueNm * speed),
            Speed = RotationalSpeed.FromRadiansPerSecond(speed),
            AirGapTorque = Torque.FromNewtonMeters(state.TorqueNm),
            ShaftTorque = Torque.FromNewtonMeters(shaftTorqueNm),
        };
    }
}

/// <summary>What friction, windage and stray-load loss take from the shaft.</summary>
internal readonly record struct ShaftLosses(double RotationalW, double StrayW, double TorqueNm)
{
    internal static ShaftLosses At(EquivalentCircuit circuit, double currentA, double speedRadPerS)
    {
        var (rotational, stray) =
            (circuit.Rotational.Watts(speedRadPerS), circuit.Stray.Watts(currentA, speedRadPerS));
        var torque = speedRadPerS == 0 ? 0 : (rotational + stray) / speedRadPerS;
        return new(rotational, stray, torque);
    }
}
