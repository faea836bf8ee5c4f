using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of the marked points of a motor's torque curve: breakdown and standstill.</summary>
internal sealed class TorqueCurveEvaluator() : CircuitEvaluator(All)
{
    private static readonly Dictionary<string, CircuitQuantity> All = new(StringComparer.Ordinal)
    {
        ["breakdown torque"] = (circuit, inputs, unit) =>
            InUnit.Of(Breakdown(circuit, inputs).Torque, QuantityKinds.Torque, unit),
        ["breakdown slip"] = (circuit, inputs, unit) => InUnit.Plain(Breakdown(circuit, inputs).Slip, unit),
        ["generating breakdown torque"] = (circuit, inputs, unit) =>
            InUnit.Of(GeneratingBreakdown(circuit, inputs), QuantityKinds.Torque, unit),
        ["locked-rotor torque"] = (circuit, inputs, unit) =>
            InUnit.Of(LockedRotor(circuit, inputs).AirGapTorque, QuantityKinds.Torque, unit),
        ["locked-rotor current"] = (circuit, inputs, unit) =>
            InUnit.Of(LockedRotor(circuit, inputs).Current, QuantityKinds.Current, unit),
        ["locked-rotor torque ratio"] = (circuit, inputs, unit) => InUnit.Plain(
            LockedRotor(circuit, inputs).AirGapTorque / LockedRotor(circuit, inputs, Over).AirGapTorque, unit),
        ["locked-rotor current ratio"] = (circuit, inputs, unit) => InUnit.Plain(
            LockedRotor(circuit, inputs).Current / LockedRotor(circuit, inputs, Over).Current, unit),
        ["line voltage for the breakdown torque of 50 Hz"] = (circuit, inputs, unit) =>
            InUnit.Of(VoltageForRatedBreakdown(circuit, inputs), QuantityKinds.Voltage, unit),
        ["rotor resistance for breakdown at standstill"] = (circuit, inputs, unit) =>
            InUnit.Of(ResistanceForStandstill(circuit, inputs), QuantityKinds.Resistance, unit),
    };

    private const string Over = "over_frequency_hz";

    private static (Torque Torque, double Slip) Breakdown(PublishedCircuit circuit, CheckInputs inputs)
    {
        var (frequency, phaseVoltage) = CheckedState.Supply(circuit, inputs);
        return CircuitSolver.Breakdown(circuit.Windings, frequency, phaseVoltage);
    }

    /// <summary>The trough of the curve at negative slip, looked for along the solved curve.</summary>
    private static Torque GeneratingBreakdown(PublishedCircuit circuit, CheckInputs inputs)
    {
        var (frequency, phaseVoltage) = CheckedState.Supply(circuit, inputs);
        double Braking(double slip) =>
            -CircuitSolver.Solve(circuit.Windings, frequency, phaseVoltage, -slip).AirGapTorque.NewtonMeters;
        return Torque.FromNewtonMeters(-Peak.Find(Braking, 0, 1).Value);
    }

    private static OperatingPoint LockedRotor(
        PublishedCircuit circuit, CheckInputs inputs, string frequencyName = "frequency_hz")
    {
        var (frequency, phaseVoltage) = CheckedState.Supply(circuit, inputs, frequencyName);
        return circuit.Solve(frequency, phaseVoltage, 1);
    }

    /// <summary>Torque goes with voltage squared, so the breakdown torque at rated voltage gives the scale.</summary>
    private static ElectricPotential VoltageForRatedBreakdown(PublishedCircuit circuit, CheckInputs inputs)
    {
        var frequency = Frequency.FromHertz(inputs.Number("frequency_hz"));
        var wanted = CircuitSolver.Breakdown(circuit.Windings, circuit.RatedFrequency, circuit.RatedPhaseVoltage).Torque;
        var atRatedVoltage = CircuitSolver.Breakdown(circuit.Windings, frequency, circuit.RatedPhaseVoltage).Torque;
        return circuit.Windings.RatedLineVoltage * Math.Sqrt(wanted / atRatedVoltage);
    }

    /// <summary>Breakdown slip goes with the rotor resistance.</summary>
    private static ElectricResistance ResistanceForStandstill(PublishedCircuit circuit, CheckInputs inputs) =>
        circuit.Windings.R2 / Breakdown(circuit, inputs).Slip;
}
