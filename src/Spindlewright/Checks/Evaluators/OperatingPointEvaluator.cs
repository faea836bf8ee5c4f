using Spindlewright.Foundations.Reading;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Checks.Evaluators;

/// <summary>Checks of one state of a motor: at a slip, a speed, a shaft power or a shaft torque.</summary>
internal sealed class OperatingPointEvaluator() : CircuitEvaluator(All)
{
    private static readonly Dictionary<string, CircuitQuantity> All = new(StringComparer.Ordinal)
    {
        // Every circuit is star-equivalent: its current is the line current, and the stator current where it is a star.
        ["stator current"] = Current(at => at.Current),
        ["line current"] = Current(at => at.Current),
        ["rotor current"] = Current(at => at.RotorCurrent),
        ["power factor"] = Ratio(at => at.PowerFactor),
        ["efficiency"] = Ratio(at => at.Efficiency),
        ["input power"] = Watts(at => at.Input),
        ["stator copper loss"] = Watts(at => at.StatorLoss),
        ["rotor copper loss"] = Watts(at => at.RotorLoss),
        ["core loss"] = Watts(at => at.CoreLoss),
        ["air-gap power"] = Watts(at => at.AirGapPower),
        ["converted power"] = Watts(at => at.AirGapPower - at.RotorLoss),
        ["output power"] = Watts(at => at.Shaft),
        ["air-gap torque"] = NewtonMetres(at => at.AirGapTorque),
        ["shaft torque"] = NewtonMetres(at => at.ShaftTorque),
        ["shaft speed"] = (circuit, inputs, unit) =>
            InUnit.Of(CheckedState.Of(circuit, inputs).Speed, QuantityKinds.RotationalSpeed, unit),
        ["slip frequency"] = (circuit, inputs, unit) =>
            InUnit.Of(SlipFrequency(CheckedState.Of(circuit, inputs)), QuantityKinds.Frequency, unit),
    };

    private static Frequency SlipFrequency(OperatingPoint at) => at.Frequency * at.Slip;

    private static CircuitQuantity Current(Func<OperatingPoint, ElectricCurrent> of) => (circuit, inputs, unit) =>
        InUnit.Of(of(CheckedState.Of(circuit, inputs)), QuantityKinds.Current, unit);

    private static CircuitQuantity Watts(Func<OperatingPoint, Power> of) => (circuit, inputs, unit) =>
        InUnit.Of(of(CheckedState.Of(circuit, inputs)), QuantityKinds.Power, unit);

    private static CircuitQuantity NewtonMetres(Func<OperatingPoint, Torque> of) => (circuit, inputs, unit) =>
        InUnit.Of(of(CheckedState.Of(circuit, inputs)), QuantityKinds.Torque, unit);

    private static CircuitQuantity Ratio(Func<OperatingPoint, double> of) => (circuit, inputs, unit) =>
        InUnit.Plain(of(CheckedState.Of(circuit, inputs)), unit);
}
