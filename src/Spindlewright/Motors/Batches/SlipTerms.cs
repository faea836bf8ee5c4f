using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>What a slip makes of the circuit, before the magnetising branch is known.</summary>
/// <remarks>
/// <para>
/// Everything is multiplied through by the rotor's |Z|², D = R2² + (s X2)², so that one root and one quotient a point remain. With the
/// admittance behind the gap (G + jB)/D and Q = G² + B², W = U² + V²:
/// U + jV = (R1 + jX1)(G + jB) + D, impedance at the terminals (U + jV)/(G + jB), hence |Z|² = W/Q, its resistance (R1 Q + D G)/Q and
/// air-gap EMF over terminal voltage D/√W.
/// </para>
/// <para>Own algebra over the circuit of <see cref="CircuitSolver"/>, whose own path is written out plainly and stays the reference.</para>
/// </remarks>
internal struct SlipTerms<L> where L : struct, ILanes<L>
{
    /// <summary>Slip, slip × R2, rotor |Z|² and G.</summary>
    internal L Slip, SlipR2, D, G;

    /// <summary>Rotor's part of B.</summary>
    internal L RotorB;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static SlipTerms<L> At(in CircuitLanes<L> circuit, L slip)
    {
        var slipX2 = slip * circuit.X2;
        var (slipR2, d) = (slip * circuit.R2, circuit.R2 * circuit.R2 + slipX2 * slipX2);
        return new() { Slip = slip, SlipR2 = slipR2, D = d, G = circuit.CoreS * d + slipR2, RotorB = slip * slipX2 };
    }

    /// <summary>B with a susceptance of the magnetising branch.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal readonly L B(L magnetisingS) => magnetisingS * D - RotorB;
}

/// <summary>The circuit at a slip with its magnetising branch known; letters as in <see cref="SlipTerms{L}"/>.</summary>
internal struct Terms<L> where L : struct, ILanes<L>
{
    internal L B, U, V, Q, W;

    /// <summary>Resistance at the terminals times Q.</summary>
    internal L P;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Terms<L> At(in CircuitLanes<L> circuit, in SlipTerms<L> slip, L b)
    {
        var q = slip.G * slip.G + b * b;
        var u = circuit.R1 * slip.G - circuit.X1 * b + slip.D;
        var v = circuit.R1 * b + circuit.X1 * slip.G;
        return new() { B = b, U = u, V = v, Q = q, W = u * u + v * v, P = circuit.R1 * q + slip.D * slip.G };
    }
}
