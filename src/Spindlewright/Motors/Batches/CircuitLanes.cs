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
    internal static CircuitLanes<L> At(CircuitColumns circuits, in Group group, L frequencyHz, CircuitForm form)
    {
        var places = group;
        L Of(Column column) => places.LoadCircuits<L>(circuits[column]);
        return At(
            Of(Column.R1Ohm), Of(Column.X1Ohm), Of(Column.R2Ohm), Of(Column.X2Ohm), Of(Column.XmOhm), Of(Column.CoreConductanceS),
            frequencyHz / Of(Column.RatedHz), frequencyHz / Of(Column.PolePairs), Of(Column.RatedPhaseV),
            form == CircuitForm.Saturated ? Of(Column.Saturation) : L.All(0), Of(Column.CoreLossExponent));
    }

    /// <summary>One circuit in all lanes, each at its frequency.</summary>
    internal static CircuitLanes<L> Of(CircuitColumns circuits, int place, L frequencyHz, CircuitForm form) =>
        At(circuits, new Group(0, place, 1), frequencyHz, form);

    private static CircuitLanes<L> At(
        L r1, L x1, L r2, L x2, L xm, L coreS, L a, L turnsPerS, L ratedPhaseV, L saturation, L exponent)
    {
        var magnetisingS = L.All(1) / (a * xm);
        return new()
        {
            R1 = r1,
            X1 = a * x1,
            R2 = r2,
            X2 = a * x2,
            CoreS = coreS * CoreFactor(a, exponent, coreS),
            B0 = (saturation - L.All(1)) * magnetisingS,
            B6 = L.All(0) - saturation * magnetisingS,
            FluxV = a * ratedPhaseV * xm / (x1 + xm),
            ThreeOverSpeed = L.All(3 / (2 * Math.PI)) / turnsPerS,
        };
    }

    /// <summary>Conductance of the core branch over its rated one, a^(n − 2).</summary>
    private static L CoreFactor(L a, L exponent, L coreS)
    {
        var one = L.All(1);
        var inverse = one / a;
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
