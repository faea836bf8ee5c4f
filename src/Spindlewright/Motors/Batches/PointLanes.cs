using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Operating points, one a lane: torque, current and power factor.</summary>
internal struct PointLanes<L> where L : struct, ILanes<L>
{
    /// <summary>Air-gap torque in N·m, rms current in A, power factor at the terminals.</summary>
    internal L TorqueNm, CurrentA, PowerFactor;

    /// <summary>Solves points without a drop, the magnetising reactance being constant.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static PointLanes<L> Constant(in CircuitLanes<L> circuit, L phaseV, L slip)
    {
        var at = SlipTerms<L>.At(circuit, slip);
        return WithoutDrop(circuit, phaseV, at, Terms<L>.At(circuit, at, circuit.B0));
    }

    /// <summary>Solves points of either form, with a drop that opposes the current or without.</summary>
    /// <param name="circuit">Circuits at their frequencies.</param>
    /// <param name="phaseV">Rms volts a phase that are set.</param>
    /// <param name="dropV">Rms volts a phase that oppose the current.</param>
    /// <param name="anyDrop">Whether there is a drop in the call; without one the quicker formulas serve.</param>
    /// <param name="slip">Slips.</param>
    /// <param name="form">Form of the circuit.</param>
    internal static PointLanes<L> At(
        in CircuitLanes<L> circuit, L phaseV, L dropV, bool anyDrop, L slip, CircuitForm form)
    {
        var at = SlipTerms<L>.At(circuit, slip);
        var from = L.All(0);
        var magnetisingS = FluxLanes.Magnetising(circuit, at, phaseV, dropV, anyDrop, form, ref from);
        var terms = Terms<L>.At(circuit, at, magnetisingS);
        return anyDrop ? WithDrop(circuit, phaseV, dropV, at, terms) : WithoutDrop(circuit, phaseV, at, terms);
    }

    /// <summary>Rms air-gap EMF over |ρ|, equal to rotor current over slip.</summary>
    internal static L EmfOverRotor(L phaseV, L dropV, bool anyDrop, in Terms<L> terms) =>
        anyDrop ? Current(phaseV, dropV, terms, terms.Q * terms.W) / L.Sqrt(terms.Q) : phaseV / L.Sqrt(terms.W);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static PointLanes<L> WithoutDrop(in CircuitLanes<L> circuit, L phaseV, in SlipTerms<L> at, in Terms<L> terms)
    {
        var inverse = L.All(1) / L.Sqrt(terms.Q * terms.W);
        var perVolt = terms.Q * inverse;
        PointLanes<L> made;
        made.CurrentA = phaseV * perVolt;
        made.PowerFactor = terms.P * inverse;
        // Torque 3 I2² (R2/s)/ωs with I2 = V s/√W, and 1/W = Q·inverse².
        made.TorqueNm = circuit.ThreeOverSpeed * (phaseV * phaseV) * (at.Slip * at.R2) * (perVolt * inverse);
        return made;
    }

    private static PointLanes<L> WithDrop(
        in CircuitLanes<L> circuit, L phaseV, L dropV, in SlipTerms<L> at, in Terms<L> terms)
    {
        var product = terms.Q * terms.W;
        var currentA = Current(phaseV, dropV, terms, product);
        return new()
        {
            CurrentA = currentA,
            PowerFactor = terms.P / L.Sqrt(product),
            // I2 = I s/√Q.
            TorqueNm = circuit.ThreeOverSpeed * (currentA * currentA) * (at.Slip * at.R2) / terms.Q,
        };
    }

    /// <summary>
    /// The current from V² = (R·I + Vd)² + (X·I)², its root written so that nothing cancels where V hardly exceeds Vd.
    /// </summary>
    private static L Current(L phaseV, L dropV, in Terms<L> terms, L product)
    {
        var opposed = terms.P * dropV;
        var over = (phaseV - dropV) * (phaseV + dropV);
        var current = terms.Q * over / (L.Sqrt(opposed * opposed + product * over) + opposed);
        return L.Choose(phaseV > dropV, current, L.All(0));
    }
}
