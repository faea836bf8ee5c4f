using Spindlewright.Foundations;
using Spindlewright.Motors;

namespace Spindlewright.Machines;

/// <summary>
/// Inverter and motor of one side, resolved to numbers: what voltage is set at a frequency and what torque the motor
/// gives. Plain SI inside; studies turn it into quantities.
/// </summary>
/// <remarks>
/// On the capability side the supply is at its lowest, the link loaded, the drops in, and the smaller torque of cold
/// and hot counts; on the hazard side the reverse.
/// </remarks>
internal sealed class Drive
{
    private readonly DrillPress press;

    internal Drive(DrillPress press, Side side)
    {
        this.press = press;
        Side = side;
        Circuits = [.. press.Motor.AtBothTemperatures(side)];
        Si = [.. Circuits.Select(circuit => circuit.Si)];
        var supply = press.Supply.On(side);
        CeilingPhaseV = press.Inverter.Link.Ceiling(supply, side).Volts / Math.Sqrt(3);
        DropV = press.Inverter.PhaseDrop.On(side).Volts;
        LinkFactor = press.Inverter.OutputFollowsLink ? supply / press.Supply.Nominal : 1;
    }

    internal Side Side { get; }

    /// <summary>Cold and hot circuits.</summary>
    internal IReadOnlyList<EquivalentCircuit> Circuits { get; }

    internal IReadOnlyList<CircuitSi> Si { get; }

    internal double CeilingPhaseV { get; }

    /// <summary>What the set law's voltage goes with: supply over nominal where the output follows the link, else 1.</summary>
    internal double LinkFactor { get; }

    /// <summary>Phase drop of the output stage.</summary>
    internal double DropV { get; }

    /// <summary>Phase voltage set at a frequency, after the ceiling and before the drop.</summary>
    internal double PhaseV(double frequencyHz) =>
        Math.Min(press.Inverter.Curve.LineVolts(frequencyHz) * LinkFactor / Math.Sqrt(3), CeilingPhaseV);

    /// <summary>Where the voltage stops rising: base frequency, or lower where the ceiling is met first.</summary>
    internal double CeilingMetHz => press.Inverter.Curve.HertzReaching(CeilingPhaseV * Math.Sqrt(3) / LinkFactor);

    /// <summary>As modelled: air-gap torque at a slip.</summary>
    internal double TorqueNm(double frequencyHz, double slip) =>
        Worst(circuit => circuit.Solve(frequencyHz, PhaseV(frequencyHz), DropV, slip).TorqueNm);

    /// <summary>As modelled: the largest torque over 0 &lt; s ≤ 1.</summary>
    internal double PullOutNm(double frequencyHz) =>
        Worst(circuit => CircuitSolver.PullOutSi(circuit, frequencyHz, PhaseV(frequencyHz), DropV).TorqueNm);

    /// <summary>As modelled: torque at standstill.</summary>
    internal double LockedRotorNm(double frequencyHz) => TorqueNm(frequencyHz, 1);

    /// <summary>Ideal boost: the largest torque over 0 &lt; s ≤ 1 with stator flux held at its rated value.</summary>
    internal double IdealBoostNm(double frequencyHz) =>
        Worst(circuit => RatedFlux.PullOutNm(circuit, frequencyHz, CeilingPhaseV).TorqueNm);

    /// <summary>Ideal boost at a slip.</summary>
    internal double IdealBoostNm(double frequencyHz, double slip) =>
        Worst(circuit => RatedFlux.TorqueNm(circuit, frequencyHz, CeilingPhaseV, slip));

    private double Worst(Func<CircuitSi, double> torque) =>
        Side == Side.Capability ? Si.Min(torque) : Si.Max(torque);
}
