using MathNet.Numerics.RootFinding;
using Spindlewright.Inverters;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Reads supply and load from the inputs of a motor check and solves its circuit there.</summary>
internal static class CheckedState
{
    private const string ConstantFlux = "constant flux";

    /// <summary>Supply of a check that names no constant flux: rated, or at constant volts per hertz.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="frequencyName">The input that holds the frequency.</param>
    /// <returns>Frequency, and voltage a phase.</returns>
    internal static (Frequency Frequency, ElectricPotential PhaseVoltage) Supply(
        PublishedCircuit circuit, CheckInputs inputs, string frequencyName = "frequency_hz")
    {
        if (inputs.NumberOrNull(frequencyName) is not { } hertz) return (circuit.RatedFrequency, circuit.RatedPhaseVoltage);
        if (inputs.Word("supply") is var supply and not "constant volts per hertz")
            throw new ArgumentException($"the supply '{supply}' is not accepted here; accepted: constant volts per hertz.");
        var curve = new StraightCurve(circuit.Windings.RatedLineVoltage, circuit.RatedFrequency, ElectricPotential.Zero);
        var frequency = Frequency.FromHertz(hertz);
        return (frequency, curve.LineVoltage(frequency) / Math.Sqrt(3));
    }

    /// <summary>The state that the inputs describe.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="inputs">The inputs.</param>
    /// <returns>The state.</returns>
    internal static OperatingPoint Of(PublishedCircuit circuit, CheckInputs inputs)
    {
        if (inputs.Has("supply") && inputs.Word("supply") == ConstantFlux) return AtConstantFlux(circuit, inputs);
        var (frequency, phaseVoltage) = Supply(circuit, inputs);
        if (inputs.NumberOrNull("shaft_power_w") is { } watts)
            return AtShaftPower(circuit, frequency, phaseVoltage, watts);
        if (inputs.NumberOrNull("shaft_torque_nm") is { } newtonMetres)
            return AtShaftTorque(circuit, frequency, phaseVoltage, newtonMetres);
        return circuit.Solve(frequency, phaseVoltage, Slip(circuit, frequency, inputs));
    }

    private static double Slip(PublishedCircuit circuit, Frequency frequency, CheckInputs inputs)
    {
        var synchronousRpm = circuit.Windings.SynchronousSpeedAt(frequency).RevolutionsPerMinute;
        if (inputs.NumberOrNull("slip_speed_r_per_min") is { } slipRpm) return slipRpm / synchronousRpm;
        if (inputs.NumberOrNull("speed_r_per_min") is { } rpm) return 1 - rpm / synchronousRpm;
        return inputs.Number("slip");
    }

    /// <summary>Air-gap volts per hertz held at what they are at the rated speed on the rated supply.</summary>
    private static OperatingPoint AtConstantFlux(PublishedCircuit circuit, CheckInputs inputs)
    {
        var synchronousRpm = circuit.Windings.SynchronousSpeed.RevolutionsPerMinute;
        var rated = circuit.Solve(
            circuit.RatedFrequency, circuit.RatedPhaseVoltage, 1 - inputs.Number("rated_speed_r_per_min") / synchronousRpm);
        var frequency = Frequency.FromHertz(inputs.Number("frequency_hz"));
        var slip = Slip(circuit, frequency, inputs);
        // The circuit is linear: the EMF goes with the voltage, so one trial gives the scale.
        var trial = circuit.Solve(frequency, circuit.RatedPhaseVoltage, slip);
        var wanted = rated.AirGapVoltage * (frequency / circuit.RatedFrequency);
        return circuit.Solve(frequency, circuit.RatedPhaseVoltage * (wanted / trial.AirGapVoltage), slip);
    }

    private static OperatingPoint AtShaftPower(
        PublishedCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage, double watts)
    {
        var (_, most) = CircuitSolver.PullOut(circuit.Windings, frequency, phaseVoltage);
        double Excess(double slip) => (double)circuit.Solve(frequency, phaseVoltage, slip).Shaft.Watts - watts;
        return circuit.Solve(frequency, phaseVoltage, Brent.FindRoot(Excess, 0, most, 1e-12, 200));
    }

    private static OperatingPoint AtShaftTorque(
        PublishedCircuit circuit, Frequency frequency, ElectricPotential phaseVoltage, double newtonMetres)
    {
        var loaded = circuit.WithLossesAt(circuit.Windings.SynchronousSpeedAt(frequency));
        return CircuitSolver.Running(loaded, frequency, phaseVoltage, Torque.FromNewtonMeters(newtonMetres))
            ?? throw new InvalidOperationException(FormattableString.Invariant(
                $"no running point: the motor stalls under {newtonMetres:G6} N·m."));
    }
}
