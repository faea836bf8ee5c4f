namespace Spindlewright.Motors.Batches;

/// <summary>The exponent of torque against slip, d ln T / d ln s: positive on the running side, 0 at the peak.</summary>
/// <remarks>
/// T ∝ e² s R2, e air-gap EMF over |ρ|. How e goes with slip follows from the voltage that must be set for it,
/// F(e, s) = e² W + 2 Vd e P/√Q + Vd² = V²: de/ds = −Fs/Fe.
/// </remarks>
internal static class TorqueExponent
{
    /// <summary>The exponent.</summary>
    /// <param name="circuit">The circuits.</param>
    /// <param name="slip">Their slips, above 0.</param>
    /// <param name="phaseV">Volts a phase that are set.</param>
    /// <param name="dropV">Volts a phase that oppose the current.</param>
    /// <param name="anyDrop">Whether there is a drop in the call.</param>
    /// <param name="form">Form of the circuit.</param>
    /// <param name="square">The square of flux at a slip nearby to start from, 0 for none; receives what was found.</param>
    internal static L At<L>(
        in CircuitLanes<L> circuit, L slip, L phaseV, L dropV, bool anyDrop, CircuitForm form, ref L square)
        where L : struct, ILanes<L>
    {
        var at = SlipTerms<L>.At(circuit, slip);
        var magnetisingS = FluxLanes.Magnetising(circuit, at, phaseV, dropV, anyDrop, form, ref square);
        var terms = Terms<L>.At(circuit, at, magnetisingS);
        var e = PointLanes<L>.EmfOverRotor(phaseV, dropV, anyDrop, terms);
        var (alongEmf, alongSlip) = Slopes(circuit, at, terms, magnetisingS, e, dropV, anyDrop);
        var exponent = L.All(1) - L.All(2) * slip * alongSlip / (e * alongEmf);
        return circuit.DoubleCage ? exponent + slip * SlipTerms<L>.Slopes(circuit, slip).R2BySlip / at.R2 : exponent;
    }

    /// <summary>Slopes of the square of the voltage that must be set, along e and along slip.</summary>
    private static (L AlongEmf, L AlongSlip) Slopes<L>(
        in CircuitLanes<L> circuit, in SlipTerms<L> at, in Terms<L> terms, L magnetisingS, L e, L dropV, bool anyDrop)
        where L : struct, ILanes<L>
    {
        var (two, half) = (L.All(2), L.All(0.5));
        // The susceptance goes as the sixth power of flux, and flux as e·√D.
        var saturated = magnetisingS - circuit.B0;
        var (r2BySlip, slipX2BySlip) = SlipTerms<L>.Slopes(circuit, at.Slip);
        var dBySlip = two * (at.R2 * r2BySlip + at.SlipX2 * slipX2BySlip);
        var (bByE, bBySlip) = (L.All(6) * saturated / e, L.All(3) * saturated * dBySlip / at.D);
        var (yRealBySlip, yImaginaryBySlip) = (
            L.All(1) + circuit.CoreS * r2BySlip - magnetisingS * slipX2BySlip - bBySlip * at.SlipX2,
            magnetisingS * r2BySlip + circuit.CoreS * slipX2BySlip + bBySlip * at.R2);
        var zRealBySlip = circuit.R1 * yRealBySlip - circuit.X1 * yImaginaryBySlip + r2BySlip;
        var zImaginaryBySlip = circuit.R1 * yImaginaryBySlip + circuit.X1 * yRealBySlip + slipX2BySlip;
        var wBySlip = two * (terms.ZReal * zRealBySlip + terms.ZImaginary * zImaginaryBySlip);
        var alongEmf = e * (two * terms.W + e * (terms.WBySusceptance(circuit, at) * bByE));
        var alongSlip = e * e * wBySlip;
        if (!anyDrop) return (alongEmf, alongSlip);

        var root = L.Sqrt(terms.Q);
        var perQ = half * terms.P / terms.Q;
        var qBySlip = two * (terms.YReal * yRealBySlip + terms.YImaginary * yImaginaryBySlip);
        var pBySlip = circuit.R1 * qBySlip + circuit.CoreS * dBySlip + at.R2 + at.Slip * r2BySlip;
        var ratioByE = terms.QBySusceptance(circuit, at) * bByE * (circuit.R1 - perQ) / root;
        var ratioBySlip = (pBySlip - perQ * qBySlip) / root;
        return (
            alongEmf + two * dropV * (terms.P / root + e * ratioByE),
            alongSlip + two * dropV * e * ratioBySlip);
    }
}
