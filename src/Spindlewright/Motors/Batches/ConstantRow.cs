using System.Runtime.InteropServices;

namespace Spindlewright.Motors.Batches;

/// <summary>One circuit at one frequency and voltage over many slips, constant parameters and no drop: the quickest form.</summary>
/// <remarks>
/// Y = a + jb and Z = u + jv of <see cref="SlipTerms{L}"/> are linear in slip with coefficients of the row. What is left a point is short
/// enough for several points to be under way at once.
/// </remarks>
internal static class ConstantRow
{
    /// <summary>Solves a row.</summary>
    /// <param name="circuit">The circuit in all lanes.</param>
    /// <param name="phaseV">Volts a phase that are set.</param>
    /// <param name="slips">The slips.</param>
    /// <param name="torqueNm">Receives torques; room for whole groups of lanes, as for the others.</param>
    /// <param name="currentA">Receives currents.</param>
    /// <param name="powerFactor">Receives power factors.</param>
    internal static void Solve<L>(
        in CircuitLanes<L> circuit, L phaseV, ReadOnlySpan<double> slips, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
        where L : struct, ILanes<L>
    {
        var whole = slips.Length / L.Count * L.Count;
        Whole(circuit, phaseV, slips[..whole], torqueNm, currentA, powerFactor);
        if (whole == slips.Length) return;
        Span<double> rest = stackalloc double[L.Count];
        rest.Fill(1);
        slips[whole..].CopyTo(rest);
        Whole(circuit, phaseV, rest, torqueNm[whole..], currentA[whole..], powerFactor[whole..]);
    }

    // Without a call in its loop, so that the row's coefficients stay in registers.
    private static void Whole<L>(
        in CircuitLanes<L> circuit, L phaseV, ReadOnlySpan<double> slips, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
        where L : struct, ILanes<L>
    {
        var (r1, x1, one) = (circuit.R1, circuit.X1, L.All(1));
        var (yReal, yRealBySlip) = (circuit.CoreS * circuit.R2, one - circuit.B0 * circuit.X2);
        var (yImaginary, yImaginaryBySlip) = (circuit.B0 * circuit.R2, circuit.CoreS * circuit.X2);
        var (zReal, zRealBySlip) = (r1 * yReal - x1 * yImaginary + circuit.R2, r1 * yRealBySlip - x1 * yImaginaryBySlip);
        var (zImaginary, zImaginaryBySlip) = (
            r1 * yImaginary + x1 * yReal, r1 * yImaginaryBySlip + x1 * yRealBySlip + circuit.X2);
        var (behind, behindBySlip, behindBySquare) = (yReal * circuit.R2, circuit.R2, yImaginaryBySlip * circuit.X2);
        var perTorque = circuit.ThreeOverSpeed * (phaseV * phaseV) * circuit.R2;
        var slip = MemoryMarshal.Cast<double, L>(slips);
        var torque = MemoryMarshal.Cast<double, L>(torqueNm);
        var current = MemoryMarshal.Cast<double, L>(currentA);
        var factor = MemoryMarshal.Cast<double, L>(powerFactor);
        for (var group = 0; group < slip.Length; group++)
        {
            var s = slip[group];
            var (a, b) = (yReal + yRealBySlip * s, yImaginary + yImaginaryBySlip * s);
            var (u, v) = (zReal + zRealBySlip * s, zImaginary + zImaginaryBySlip * s);
            var q = a * a + b * b;
            var inverse = one / L.Sqrt(q * (u * u + v * v));
            var perVolt = q * inverse;
            current[group] = phaseV * perVolt;
            factor[group] = (r1 * q + (behind + s * (behindBySlip + s * behindBySquare))) * inverse;
            torque[group] = perTorque * s * (perVolt * inverse);
        }
    }
}
