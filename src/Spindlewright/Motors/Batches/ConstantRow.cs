using System.Runtime.InteropServices;

namespace Spindlewright.Motors.Batches;

/// <summary>One circuit at one frequency and voltage over many slips, constant parameters and no drop: the quickest form.</summary>
/// <remarks>
/// Y = a + jb and Z = u + jv of <see cref="SlipTerms{L}"/> are linear in slip with coefficients of the row. What is left a point is short
/// enough for several points to be under way at once.
/// </remarks>
internal struct ConstantRow<L> where L : struct, ILanes<L>
{
    private L r1, phaseV, perTorque;
    private L yReal, yRealBySlip, yImaginary, yImaginaryBySlip;
    private L zReal, zRealBySlip, zImaginary, zImaginaryBySlip;
    private L behind, behindBySlip, behindBySquare;

    internal static ConstantRow<L> Of(in CircuitLanes<L> circuit, L phaseV)
    {
        var (r1, x1) = (circuit.R1, circuit.X1);
        ConstantRow<L> row;
        (row.r1, row.phaseV, row.perTorque) = (r1, phaseV, circuit.ThreeOverSpeed * (phaseV * phaseV) * circuit.R2);
        (row.yReal, row.yRealBySlip) = (circuit.CoreS * circuit.R2, L.All(1) - circuit.B0 * circuit.X2);
        (row.yImaginary, row.yImaginaryBySlip) = (circuit.B0 * circuit.R2, circuit.CoreS * circuit.X2);
        row.zReal = r1 * row.yReal - x1 * row.yImaginary + circuit.R2;
        row.zRealBySlip = r1 * row.yRealBySlip - x1 * row.yImaginaryBySlip;
        row.zImaginary = r1 * row.yImaginary + x1 * row.yReal;
        row.zImaginaryBySlip = r1 * row.yImaginaryBySlip + x1 * row.yRealBySlip + circuit.X2;
        (row.behind, row.behindBySlip) = (row.yReal * circuit.R2, circuit.R2);
        row.behindBySquare = row.yImaginaryBySlip * circuit.X2;
        return row;
    }

    /// <summary>Solves a row.</summary>
    /// <param name="slips">The slips.</param>
    /// <param name="torqueNm">Receives torques; room for whole groups of lanes, as for the others.</param>
    /// <param name="currentA">Receives currents.</param>
    /// <param name="powerFactor">Receives power factors.</param>
    internal readonly void Solve(
        ReadOnlySpan<double> slips, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
    {
        var whole = slips.Length / L.Count * L.Count;
        Whole(this, slips[..whole], torqueNm, currentA, powerFactor);
        if (whole == slips.Length) return;
        Span<double> rest = stackalloc double[L.Count];
        rest.Fill(1);
        slips[whole..].CopyTo(rest);
        Whole(this, rest, torqueNm[whole..], currentA[whole..], powerFactor[whole..]);
    }

    // Without a call in its loop, so that the row's coefficients stay in registers.
    private static void Whole(
        in ConstantRow<L> row, ReadOnlySpan<double> slips, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
    {
        var (r1, phaseV, perTorque, one) = (row.r1, row.phaseV, row.perTorque, L.All(1));
        var (yReal, yRealBySlip) = (row.yReal, row.yRealBySlip);
        var (yImaginary, yImaginaryBySlip) = (row.yImaginary, row.yImaginaryBySlip);
        var (zReal, zRealBySlip) = (row.zReal, row.zRealBySlip);
        var (zImaginary, zImaginaryBySlip) = (row.zImaginary, row.zImaginaryBySlip);
        var (behind, behindBySlip, behindBySquare) = (row.behind, row.behindBySlip, row.behindBySquare);
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
