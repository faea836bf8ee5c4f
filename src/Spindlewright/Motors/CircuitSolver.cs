using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors;

/// <summary>Solves an equivalent circuit exactly: operating points and the points of its torque curve.</summary>
/// <remarks>
/// <para>
/// Z = R1 + j a X1 + (Rfe(a) ∥ j a Xm ∥ (R2/s + j a X2)), a = f / f rated; T = 3 I2² (R2/s) / ωs.
/// </para>
/// <para>
/// <em>Breakdown torque</em> is the peak of the curve, whose slip may exceed 1 at low frequency; <em>pull-out
/// torque</em> is the largest over 0 &lt; s ≤ 1; <em>locked-rotor torque</em> stands at s = 1. All are air-gap torques.
/// Frequencies, voltages and slips may be any that are finite; frequency above 0.
/// </para>
/// </remarks>
public static class CircuitSolver
{
    private const string Part = "operating point";

    /// <summary>The state at a frequency, a set voltage and a slip.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="frequency">Above 0.</param>
    /// <param name="phaseVoltage">Rms a phase of the star, set before the drop; 0 or more.</param>
    /// <param name="slip">Any finite number: 0 synchronous, 1 standstill, below 0 generating, above 1 plugging.</param>
    /// <param name="phaseDrop">Rms a phase that opposes the current; default none.</param>
    /// <returns>The operating point.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static OperatingPoint Solve(
        EquivalentCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage, double slip,
        ElectricPotential phaseDrop = default)
    {
        var (hertz, volts, dropV) = Checked(frequency, phaseVoltage, phaseDrop);
        Guard.Finite(slip, Part, "slip");
        return OperatingPoint.From(circuit, hertz, volts, slip, circuit.Si.Solve(hertz, volts, dropV, slip));
    }

    /// <summary>The state at rated frequency and voltage at a given speed.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="speed">Any finite speed.</param>
    /// <returns>The operating point.</returns>
    public static OperatingPoint SolveAtRatedSupply(EquivalentCircuit circuit, RotationalSpeed speed) =>
        Solve(
            circuit, circuit.RatedFrequency, circuit.RatedLineVoltage / Math.Sqrt(3),
            1 - speed.RevolutionsPerMinute / circuit.SynchronousSpeed.RevolutionsPerMinute);

    /// <summary>Breakdown torque and its slip for a constant magnetising reactance and no drop.</summary>
    /// <param name="circuit">The circuit; its saturation is left out and Xm taken as at rated flux.</param>
    /// <param name="frequency">Above 0.</param>
    /// <param name="phaseVoltage">Rms a phase of the star.</param>
    /// <returns>Torque and slip at the peak.</returns>
    /// <remarks>
    /// Single cage, closed form: R2/s = |Zth + j a X2|; T = 3 Vth² / (2 ωs (Rth + |Zth + j a X2|)), core branch in Zth and
    /// Vth. Double cage: the highest peak of the solved curve, found to 1e-9 of its slip.
    /// </remarks>
    public static (Torque Torque, double Slip) Breakdown(
        EquivalentCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage)
    {
        var (hertz, volts, _) = Checked(frequency, phaseVoltage, default);
        var (torque, slip) = circuit.Si.Breakdown(hertz, volts, circuit.Xm.Ohms);
        return (Torque.FromNewtonMeters(torque), slip);
    }

    /// <summary>Locked-rotor torque: at standstill.</summary>
    /// <inheritdoc cref="PullOut"/>
    /// <returns>The air-gap torque at slip 1.</returns>
    public static Torque LockedRotor(
        EquivalentCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage,
        ElectricPotential phaseDrop = default) =>
        Solve(circuit, frequency, phaseVoltage, 1, phaseDrop).AirGapTorque;

    /// <summary>Pull-out torque: the largest over 0 &lt; s ≤ 1, and its slip.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="frequency">Above 0.</param>
    /// <param name="phaseVoltage">Rms a phase of the star, set before the drop.</param>
    /// <param name="phaseDrop">Rms a phase that opposes the current.</param>
    /// <returns>Air-gap torque and slip.</returns>
    public static (Torque Torque, double Slip) PullOut(
        EquivalentCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage,
        ElectricPotential phaseDrop = default)
    {
        var (hertz, volts, dropV) = Checked(frequency, phaseVoltage, phaseDrop);
        var (torque, slip) = PullOutSi(circuit.Si, hertz, volts, dropV);
        return (Torque.FromNewtonMeters(torque), slip);
    }

    /// <summary>Where shaft torque meets a load on the running side of the curve; null where the motor stalls.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="frequency">Above 0.</param>
    /// <param name="phaseVoltage">Rms a phase of the star, set before the drop.</param>
    /// <param name="load">Load torque at the motor shaft, 0 or more.</param>
    /// <param name="phaseDrop">Rms a phase that opposes the current.</param>
    /// <returns>The running point, or null.</returns>
    public static OperatingPoint? Running(
        EquivalentCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage, Torque load,
        ElectricPotential phaseDrop = default)
    {
        var (hertz, volts, dropV) = Checked(frequency, phaseVoltage, phaseDrop);
        var loadNm = Guard.NotNegative(load, Part, "load torque").NewtonMeters;
        var si = circuit.Si;
        var peakSlip = PullOutSi(si, hertz, volts, dropV).Slip;
        if (Excess(peakSlip) < 0) return null;
        // With a loss on the shaft the no-load point itself lies at a small positive slip; zero slip never carries it.
        var slip = Excess(0) >= 0 ? 0 : Brent.FindRoot(Excess, 0, peakSlip, 1e-13, 200);
        return OperatingPoint.From(circuit, hertz, volts, slip, si.Solve(hertz, volts, dropV, slip));

        double Excess(double slip) => ShaftNm(circuit, si, hertz, volts, dropV, slip) - loadNm;
    }

    /// <summary>Torque at the shaft, after the losses there.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="si">The same in plain numbers.</param>
    /// <param name="frequencyHz">Above 0.</param>
    /// <param name="phaseV">Rms a phase of the star, set before the drop.</param>
    /// <param name="dropV">Rms a phase that opposes the current.</param>
    /// <param name="slip">Any.</param>
    internal static double ShaftNm(
        EquivalentCircuit circuit, in CircuitSi si, double frequencyHz, double phaseV, double dropV, double slip)
    {
        var state = si.Solve(frequencyHz, phaseV, dropV, slip);
        var speed = (1 - slip) * si.SynchronousRadPerS(frequencyHz);
        return state.TorqueNm - ShaftLosses.At(circuit, state.CurrentA, speed).TorqueNm;
    }

    internal static (double TorqueNm, double Slip) PullOutSi(
        CircuitSi si, double frequencyHz, double phaseV, double dropV)
    {
        if (phaseV <= dropV) return (0, 1);
        if (si is { CageRise: 0, Saturation: 0 } && dropV == 0)
        {
            var (peak, peakSlip) = si.Breakdown(frequencyHz, phaseV, si.XmOhm);
            return peakSlip <= 1 ? (peak, peakSlip) : (TorqueAt(1), 1);
        }
        return Largest(si, frequencyHz, TorqueAt);

        double TorqueAt(double slip) => si.Solve(frequencyHz, phaseV, dropV, slip).TorqueNm;
    }

    /// <summary>The largest of a torque that follows the circuit's curve over 0 &lt; s ≤ 1, and its slip.</summary>
    internal static (double Value, double Slip) Largest(CircuitSi si, double frequencyHz, Func<double, double> torqueNm) =>
        si.CageRise == 0
            ? Peak.Find(torqueNm, 0, 1)
            : Peak.FindHighest(torqueNm, Math.Min(0.1, 0.05 * si.BreakdownSlips(frequencyHz, si.XmOhm).Least), 1);

    private static (double Hertz, double PhaseV, double DropV) Checked(
        Frequency frequency, ElectricPotential phaseVoltage, ElectricPotential phaseDrop) =>
        (Guard.Positive(frequency, Part, "frequency").Hertz,
            Guard.NotNegative(phaseVoltage, Part, "phase voltage").Volts,
            Guard.NotNegative(phaseDrop, Part, "phase drop").Volts);
}
