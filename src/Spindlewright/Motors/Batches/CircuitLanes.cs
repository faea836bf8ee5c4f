using System.Runtime.CompilerServices;
using static Spindlewright.Motors.Batches.CircuitColumns;

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

    /// <summary>Loads circuits that follow one another, each at its frequency.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static CircuitLanes<L> At(CircuitColumns circuits, in Group group, L frequencyHz, CircuitForm form)
    {
        var perHz = L.All(1) / frequencyHz;
        var a = frequencyHz * group.LoadCircuits<L>(circuits[Column.PerRatedHz]);
        var inverse = perHz * group.LoadCircuits<L>(circuits[Column.RatedHz]);
        var coreS = group.LoadCircuits<L>(circuits[Column.CoreConductanceS]);
        var magnetisingS = inverse * group.LoadCircuits<L>(circuits[Column.MagnetisingS]);
        var saturation = form == CircuitForm.Saturated ? group.LoadCircuits<L>(circuits[Column.Saturation]) : L.All(0);
        CircuitLanes<L> made;
        made.R1 = group.LoadCircuits<L>(circuits[Column.R1Ohm]);
        made.X1 = a * group.LoadCircuits<L>(circuits[Column.X1Ohm]);
        made.R2 = group.LoadCircuits<L>(circuits[Column.R2Ohm]);
        made.X2 = a * group.LoadCircuits<L>(circuits[Column.X2Ohm]);
        made.CoreS = coreS * CoreFactor(a, inverse, group.LoadCircuits<L>(circuits[Column.CoreLossExponent]), coreS);
        made.B0 = (saturation - L.All(1)) * magnetisingS;
        made.B6 = L.All(0) - saturation * magnetisingS;
        made.FluxV = a * group.LoadCircuits<L>(circuits[Column.RatedAirGapV]);
        made.ThreeOverSpeed = L.All(3 / (2 * Math.PI)) * perHz * group.LoadCircuits<L>(circuits[Column.PolePairs]);
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
