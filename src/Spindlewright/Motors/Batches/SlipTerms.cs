using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>What a slip makes of the circuit, before the magnetising branch is known.</summary>
/// <remarks>
/// <para>
/// With ρ = R2 + j s X2, the shunt branch G + jB and the stator's Z1, everything is multiplied through by ρ, so that one root and one quotient
/// a point remain and both parts are linear in slip:
/// Y = (G + jB)·ρ + s, Z = Z1·Y + ρ, impedance at the terminals Z/Y, air-gap EMF over terminal voltage ρ/Z, rotor current over terminal
/// voltage s/Z. Below, D = |ρ|², Q = |Y|², W = |Z|² and P = Re(Z Y*) = R1 Q + G D + s R2.
/// </para>
/// <para>Own algebra over the circuit of <see cref="CircuitSolver"/>, whose own path is written out plainly and stays the reference.</para>
/// </remarks>
internal struct SlipTerms<L> where L : struct, ILanes<L>
{
    /// <summary>Slip, and slip × X2.</summary>
    internal L Slip, SlipX2;

    /// <summary>|ρ|², and G D + s R2: what of P is not the stator's.</summary>
    internal L D, Behind;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static SlipTerms<L> At(in CircuitLanes<L> circuit, L slip)
    {
        var slipX2 = slip * circuit.X2;
        var d = circuit.R2 * circuit.R2 + slipX2 * slipX2;
        SlipTerms<L> made;
        (made.Slip, made.SlipX2, made.D) = (slip, slipX2, d);
        made.Behind = circuit.CoreS * d + slip * circuit.R2;
        return made;
    }
}

/// <summary>The circuit at a slip with its magnetising branch known; letters as in <see cref="SlipTerms{L}"/>.</summary>
internal struct Terms<L> where L : struct, ILanes<L>
{
    /// <summary>Real and imaginary parts of Y and of Z.</summary>
    internal L YReal, YImaginary, ZReal, ZImaginary;

    internal L P, Q, W;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Terms<L> At(in CircuitLanes<L> circuit, in SlipTerms<L> at, L magnetisingS)
    {
        Terms<L> made;
        made.YReal = at.Slip + (circuit.CoreS * circuit.R2 - magnetisingS * at.SlipX2);
        made.YImaginary = magnetisingS * circuit.R2 + circuit.CoreS * at.SlipX2;
        made.ZReal = circuit.R1 * made.YReal - circuit.X1 * made.YImaginary + circuit.R2;
        made.ZImaginary = circuit.R1 * made.YImaginary + circuit.X1 * made.YReal + at.SlipX2;
        made.Q = made.YReal * made.YReal + made.YImaginary * made.YImaginary;
        made.W = made.ZReal * made.ZReal + made.ZImaginary * made.ZImaginary;
        made.P = circuit.R1 * made.Q + at.Behind;
        return made;
    }

    /// <summary>How Q goes with the susceptance of the magnetising branch.</summary>
    internal readonly L QBySusceptance(in CircuitLanes<L> circuit, in SlipTerms<L> at) =>
        L.All(2) * (YImaginary * circuit.R2 - YReal * at.SlipX2);

    /// <summary>How W goes with it.</summary>
    internal readonly L WBySusceptance(in CircuitLanes<L> circuit, in SlipTerms<L> at) =>
        L.All(2) * (ZImaginary * (circuit.R1 * circuit.R2 - circuit.X1 * at.SlipX2)
            - ZReal * (circuit.R1 * at.SlipX2 + circuit.X1 * circuit.R2));
}
