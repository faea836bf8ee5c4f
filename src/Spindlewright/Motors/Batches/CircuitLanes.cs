using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Circuits at their frequencies, one a lane: everything that does not depend on slip or voltage.</summary>
/// <remarks>
/// Susceptance of the magnetising branch is B0 + B6·φ⁶, φ air-gap flux over rated: with constant parameters B6 = 0, so that both
/// forms share every formula after it.
/// </remarks>
internal struct CircuitLanes<L> where L : struct, ILanes<L>
{
    /// <summary>Stator resistance; reactances at the frequency.</summary>
    internal L R1, X1, R2, X2;

    /// <summary>Conductance of the core branch at the frequency.</summary>
    internal L CoreS;

    /// <summary>Susceptance of the magnetising branch without flux, and what stands on its sixth power.</summary>
    internal L B0, B6;

    /// <summary>Air-gap EMF at the frequency that counts as rated flux.</summary>
    internal L FluxV;

    /// <summary>3 over mechanical synchronous speed.</summary>
    internal L ThreeOverSpeed;

    /// <summary>What a double cage adds to R2 and takes from X2 at high slip frequency; both 0 for a single cage.</summary>
    internal L CageRise, CageFall;

    /// <summary>Slip at which half of the current has moved to the outer cage, inverted.</summary>
    internal L Corner;

    /// <summary>Whether any circuit of the batch has a double cage.</summary>
    internal bool DoubleCage;

    /// <summary>Loads circuits that follow one another, each at its frequency.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static CircuitLanes<L> At(CircuitColumns circuits, in Group group, L frequencyHz, CircuitForm form) =>
        At(CircuitSet<L>.Load(circuits, group, form), frequencyHz);

    /// <summary>Circuits, each at its frequency.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static CircuitLanes<L> At(in CircuitSet<L> circuits, L frequencyHz)
    {
        var perHz = L.All(1) / frequencyHz;
        var (a, inverse) = (frequencyHz * circuits.PerRatedHz, perHz * circuits.RatedHz);
        var magnetisingS = inverse * circuits.MagnetisingS;
        CircuitLanes<L> made;
        (made.R1, made.X1) = (circuits.R1, a * circuits.X1);
        (made.R2, made.X2) = (circuits.R2, a * circuits.X2);
        made.CoreS = circuits.CoreS * CoreFactor(a, inverse, circuits.CoreLossExponent, circuits.CoreS);
        made.B0 = (circuits.Saturation - L.All(1)) * magnetisingS;
        made.B6 = L.All(0) - circuits.Saturation * magnetisingS;
        made.FluxV = a * circuits.RatedAirGapV;
        made.ThreeOverSpeed = L.All(3 / (2 * Math.PI)) * perHz * circuits.PolePairs;
        (made.CageRise, made.CageFall, made.Corner) = (circuits.CageRise, circuits.CageFall, a * circuits.Corner);
        made.DoubleCage = circuits.DoubleCage;
        return made;
    }

    /// <summary>Conductance of the core branch over its rated one, a^(n − 2).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static L CoreFactor(L a, L inverse, L exponent, L coreS)
    {
        // The usual power has a form that needs no logarithm. Which form is taken hangs on the lane alone, never on its neighbours.
        var usual = L.All(1.5);
        var rare = (exponent < usual) | (exponent > usual);
        var factor = L.Sqrt(inverse);
        return L.Any(rare & (coreS > L.All(0))) ? L.Choose(rare, Powers(a, exponent), factor) : factor;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static L Powers(L a, L exponent)
    {
        Span<double> bases = stackalloc double[8];
        Span<double> exponents = stackalloc double[8];
        L.Store(a, bases, 0);
        L.Store(exponent, exponents, 0);
        for (var lane = 0; lane < L.Count; lane++) bases[lane] = Math.Pow(bases[lane], exponents[lane] - 2);
        return L.Load(bases, 0);
    }
}
