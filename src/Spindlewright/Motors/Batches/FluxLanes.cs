using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Finds the air-gap flux of saturated circuits and with it the susceptance of the magnetising branch.</summary>
/// <remarks>
/// Each lane stops by itself when its step no longer moves it, so that its result does not hang on its neighbours.
/// </remarks>
internal static class FluxLanes
{
    private const int MostSteps = 100;

    // Newton's steps square the error: what a step of this share leaves is below the last bit.
    private const double Settled = 3e-9;

    /// <summary>Susceptance of the magnetising branch in either form, with a drop or without.</summary>
    internal static L Magnetising<L>(
        in CircuitLanes<L> circuit, in SlipTerms<L> at, L phaseV, L dropV, bool anyDrop, CircuitForm form, ref L square)
        where L : struct, ILanes<L> =>
        form == CircuitForm.ConstantParameters ? circuit.B0
        : anyDrop ? WithDrop(circuit, at, phaseV, dropV, ref square)
        : WithoutDrop(circuit, at, phaseV, ref square);

    /// <summary>Susceptance without a drop.</summary>
    /// <remarks>
    /// B goes as y³, y = flux², and W is quadratic in B: y·(w0 + w1 y³ + w2 y⁶) = D (V / V rated flux)², whose coefficients are
    /// all positive whatever the slip (w1 goes with X1 + |Z1|²·|B0|). It rises and is convex, so Newton's steps
    /// from an upper bound fall monotonically on the root.
    /// </remarks>
    /// <param name="circuit">The circuits.</param>
    /// <param name="at">Their slips.</param>
    /// <param name="phaseV">Volts a phase that are set.</param>
    /// <param name="square">The square of flux at a slip nearby to start from, 0 for none; receives what was found.</param>
    private static L WithoutDrop<L>(in CircuitLanes<L> circuit, in SlipTerms<L> at, L phaseV, ref L square)
        where L : struct, ILanes<L>
    {
        var unsaturated = Terms<L>.At(circuit, at, circuit.B0);
        var w1 = circuit.B6 * unsaturated.WBySusceptance(circuit, at);
        var w2 = circuit.B6 * circuit.B6 * at.D * (circuit.R1 * circuit.R1 + circuit.X1 * circuit.X1);
        var reached = phaseV / circuit.FluxV;
        var target = reached * reached * at.D;
        square = Root(unsaturated.W, w1, w2, target, square);
        return circuit.B0 + circuit.B6 * (square * square * square);
    }

    // By itself, so that its loop is compiled without a call.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static L Root<L>(L w0, L w1, L w2, L target, L nearby) where L : struct, ILanes<L>
    {
        var (none, slope1, slope2) = (L.All(0), L.All(4) * w1, L.All(7) * w2);
        var most = L.Smaller(target / w0, L.Sqrt(L.Sqrt(target / w1)));
        // The first step from below lands above the root.
        var y = L.Choose((nearby > none) & (nearby < most), nearby, most);
        var active = y > none;
        for (var step = 0; step < MostSteps && L.Any(active); step++)
        {
            var cube = y * y * y;
            var residual = y * (w0 + cube * (w1 + cube * w2)) - target;
            var moved = residual / (w0 + cube * (slope1 + cube * slope2));
            y = L.Choose(active, y - moved, y);
            active &= moved * moved > L.All(Settled * Settled) * (y * y);
        }
        return y;
    }

    /// <summary>Susceptance with a drop that opposes the current.</summary>
    /// <remarks>
    /// With the flux given everything behind the gap is explicit: what must be set is
    /// |Vt|² + 2 Vd R I + Vd² = V², Vt terminal voltage. Newton's steps within a bracket.
    /// </remarks>
    private static L WithDrop<L>(in CircuitLanes<L> circuit, in SlipTerms<L> at, L phaseV, L dropV, ref L square)
        where L : struct, ILanes<L>
    {
        var (none, half, unbounded) = (L.All(0), L.All(0.5), L.All(double.MaxValue));
        var supplied = phaseV > dropV;
        var (low, high) = (none, unbounded);
        var flux = L.Choose(square > none, L.Sqrt(square), phaseV / circuit.FluxV);
        var active = supplied;
        for (var step = 0; step < MostSteps && L.Any(active); step++)
        {
            var set = SetVoltage<L>.At(circuit, at, flux, dropV);
            var over = set.Over(phaseV);
            var above = over > none;
            (low, high) = (L.Choose(above, low, flux), L.Choose(above, flux, high));
            var correction = over / set.Slope;
            var newton = flux - correction;
            var unsettled = correction * correction > L.All(Settled * Settled) * (flux * flux);
            // A step out of the bracket opens it where it has no upper end yet, else halves it; a last step may leave it by rounding.
            var outside = unsettled & ((newton < low) | (newton > high));
            var instead = L.Choose(high < unbounded, half * (low + high), flux + flux);
            flux = L.Choose(active, L.Choose(outside, instead, newton), flux);
            active &= unsettled;
        }
        square = L.Choose(supplied, flux * flux, none);
        return circuit.B0 + circuit.B6 * (square * square * square);
    }
}

/// <summary>The square of the phase voltage that must be set for an air-gap flux, and how it goes with the flux.</summary>
internal struct SetVoltage<L> where L : struct, ILanes<L>
{
    private L fromTerminals, fromDrop;

    /// <summary>Its slope against flux.</summary>
    internal L Slope;

    [MethodImpl(MethodImplOptions.NoInlining)]
    internal static SetVoltage<L> At(in CircuitLanes<L> circuit, in SlipTerms<L> at, L flux, L dropV)
    {
        var fifth = flux * flux * flux * flux * flux;
        var terms = Terms<L>.At(circuit, at, circuit.B0 + circuit.B6 * (fifth * flux));
        var perFlux = circuit.FluxV / L.Sqrt(at.D);
        var emf = flux * perFlux;
        var root = L.Sqrt(terms.Q);
        var (two, susceptance) = (L.All(2), L.All(6) * circuit.B6 * fifth);
        var slopeOfW = terms.WBySusceptance(circuit, at) * susceptance;
        var slopeOfQ = terms.QBySusceptance(circuit, at) * susceptance;
        var ratio = terms.P / root;
        var slopeOfRatio = slopeOfQ / root * (circuit.R1 - terms.P / (two * terms.Q));
        SetVoltage<L> made;
        made.fromTerminals = emf * emf * terms.W;
        made.fromDrop = two * dropV * emf * ratio + dropV * dropV;
        made.Slope = two * emf * perFlux * terms.W + emf * emf * slopeOfW + two * dropV * (perFlux * ratio + emf * slopeOfRatio);
        return made;
    }

    /// <summary>By how much it passes the square of what is set.</summary>
    internal readonly L Over(L phaseV) => fromTerminals + fromDrop - phaseV * phaseV;
}
