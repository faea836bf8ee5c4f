namespace Spindlewright.Motors.Batches;

/// <summary>The exponent of torque against slip, d ln T / d ln s: positive on the running side, 0 at the peak.</summary>
/// <remarks>
/// T ∝ E² s/D. How the air-gap EMF E goes with slip follows from the voltage that must be set for it, F(E, s) = V²: dE/ds = −Fs/FE.
/// </remarks>
internal static class TorqueExponent
{
    internal static L At<L>(in CircuitLanes<L> circuit, L slip, L phaseV, L dropV, bool anyDrop, CircuitForm form)
        where L : struct, ILanes<L>
    {
        var at = SlipTerms<L>.At(circuit, slip);
        var magnetisingS = form == CircuitForm.ConstantParameters
            ? circuit.B0
            : anyDrop
                ? FluxLanes.MagnetisingWithDrop(circuit, at, phaseV, dropV)
                : FluxLanes.Magnetising(circuit, at, phaseV);
        var terms = Terms<L>.At(circuit, at, at.B(magnetisingS));
        var emfV = PointLanes<L>.AirGapV(phaseV, dropV, anyDrop, at, terms);
        var (alongEmf, alongSlip) = Slopes(circuit, at, terms, magnetisingS, emfV, dropV, anyDrop);
        var (one, two) = (L.All(1), L.All(2));
        // s·dD/ds over D.
        var ofD = two * slip * circuit.X2 * (slip * circuit.X2) / at.D;
        return one - ofD - two * slip * alongSlip / (emfV * alongEmf);
    }

    /// <summary>Slopes of the square of the voltage that must be set, along air-gap EMF and along slip.</summary>
    private static (L AlongEmf, L AlongSlip) Slopes<L>(
        in CircuitLanes<L> circuit, in SlipTerms<L> at, in Terms<L> terms, L magnetisingS, L emfV, L dropV, bool anyDrop)
        where L : struct, ILanes<L>
    {
        var two = L.All(2);
        var inverse = L.All(1) / at.D;
        var perD = emfV * inverse;
        // Along EMF: B alone moves, by 6 B6 φ⁶ D / E.
        var bByEmf = L.All(6) * (magnetisingS - circuit.B0) * at.D / emfV;
        var wByEmf = two * (circuit.R1 * terms.V - circuit.X1 * terms.U) * bByEmf;
        // Along slip.
        var dBySlip = two * at.Slip * circuit.X2 * circuit.X2;
        var gBySlip = circuit.CoreS * dBySlip + circuit.R2;
        var bBySlip = magnetisingS * dBySlip - two * at.Slip * circuit.X2;
        var uBySlip = circuit.R1 * gBySlip - circuit.X1 * bBySlip + dBySlip;
        var vBySlip = circuit.R1 * bBySlip + circuit.X1 * gBySlip;
        var wBySlip = two * (terms.U * uBySlip + terms.V * vBySlip);
        var alongEmf = perD * (two * terms.W * inverse + perD * wByEmf);
        var alongSlip = perD * perD * (wBySlip - two * terms.W * dBySlip * inverse);
        if (!anyDrop) return (alongEmf, alongSlip);

        // 2 Vd E P/(D √Q).
        var (root, half) = (L.Sqrt(terms.Q), L.All(0.5));
        var qByEmf = two * terms.B * bByEmf;
        var ratio = terms.P / root;
        var ratioByEmf = qByEmf / root * (circuit.R1 - half * terms.P / terms.Q);
        var qBySlip = two * (at.G * gBySlip + terms.B * bBySlip);
        var pBySlip = circuit.R1 * qBySlip + dBySlip * at.G + at.D * gBySlip;
        var ratioBySlip = (pBySlip - half * terms.P * qBySlip / terms.Q) / root - ratio * dBySlip * inverse;
        return (
            alongEmf + two * dropV * (ratio * inverse + perD * ratioByEmf),
            alongSlip + two * dropV * perD * ratioBySlip);
    }
}
