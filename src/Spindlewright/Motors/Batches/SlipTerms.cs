using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>What a slip makes of the circuit, before the magnetising branch is known.</summary>
/// <remarks>
/// <para>
/// With ρ = R2 + j s X2 (both at the slip, of a double cage), the shunt branch G + jB and the stator's Z1, everything is multiplied through by ρ, so that one root and one quotient
/// a point remain and both parts are linear in slip:
/// Y = (G + jB)·ρ + s, Z = Z1·Y + ρ, impedance at the terminals Z/Y, air-gap EMF over terminal voltage ρ/Z, rotor current over terminal
/// voltage s/Z. Below, D = |ρ|², Q = |Y|², W = |Z|² and P = Re(Z Y*) = R1 Q + G D + s R2.
/// </para>
/// <para>Own algebra over the circuit of <see cref="CircuitSolver"/>, whose own path is written out plainly and stays the reference.</para>
/// </remarks>
internal struct SlipTerms<L> where L : struct, ILanes<L>
{
    /// <summary>Slip; rotor resistance and slip × X2 there.</summary>
    internal L Slip, R2, SlipX2;

    /// <summary>|ρ|², and G D + s R2: what of P is not the stator's.</summary>
    internal L D, Behind;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static SlipTerms<L> At(in CircuitLanes<L> circuit, L slip)
    {
        var (r2, slipX2) = (circuit.R2, slip * circuit.X2);
        if (circuit.DoubleCage)
        {
            var outer = OuterShare(circuit, slip);
            r2 *= L.All(1) + circuit.CageRise * outer;
            slipX2 *= L.All(1) - circuit.CageFall * outer;
        }
        var d = r2 * r2 + slipX2 * slipX2;
        SlipTerms<L> made;
        (made.Slip, made.R2, made.SlipX2, made.D) = (slip, r2, slipX2, d);
        made.Behind = circuit.CoreS * d + slip * r2;
        return made;
    }

    /// <summary>How rotor resistance and slip × X2 go with slip.</summary>
    internal static (L R2BySlip, L SlipX2BySlip) Slopes(in CircuitLanes<L> circuit, L slip)
    {
        if (!circuit.DoubleCage) return (L.All(0), circuit.X2);
        var (one, outer) = (L.All(1), OuterShare(circuit, slip));
        var inner = one - outer;
        var outerBySlip = L.All(2) * slip * circuit.Corner * circuit.Corner * inner * inner;
        return (
            circuit.R2 * circuit.CageRise * outerBySlip,
            circuit.X2 * (one - circuit.CageFall * (outer + slip * outerBySlip)));
    }

    /// <summary>How far the current has moved to the outer cage, 0 to 1: q / (1 + q) of <see cref="RotorCage"/>.</summary>
    private static L OuterShare(in CircuitLanes<L> circuit, L slip)
    {
        var overCorner = slip * circuit.Corner;
        var square = overCorner * overCorner;
        return square / (L.All(1) + square);
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
        made.YReal = at.Slip + (circuit.CoreS * at.R2 - magnetisingS * at.SlipX2);
        made.YImaginary = magnetisingS * at.R2 + circuit.CoreS * at.SlipX2;
        made.ZReal = circuit.R1 * made.YReal - circuit.X1 * made.YImaginary + at.R2;
        made.ZImaginary = circuit.R1 * made.YImaginary + circuit.X1 * made.YReal + at.SlipX2;
        made.Q = made.YReal * made.YReal + made.YImaginary * made.YImaginary;
        made.W = made.ZReal * made.ZReal + made.ZImaginary * made.ZImaginary;
        made.P = circuit.R1 * made.Q + at.Behind;
        return made;
    }

    /// <summary>How Q goes with the susceptance of the magnetising branch.</summary>
    internal readonly L QBySusceptance(in CircuitLanes<L> circuit, in SlipTerms<L> at) =>
        L.All(2) * (YImaginary * at.R2 - YReal * at.SlipX2);

    /// <summary>How W goes with it.</summary>
    internal readonly L WBySusceptance(in CircuitLanes<L> circuit, in SlipTerms<L> at) =>
        L.All(2) * (ZImaginary * (circuit.R1 * at.R2 - circuit.X1 * at.SlipX2)
            - ZReal * (circuit.R1 * at.SlipX2 + circuit.X1 * at.R2));
}
