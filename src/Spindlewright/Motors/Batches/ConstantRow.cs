namespace Spindlewright.Motors.Batches;

/// <summary>One circuit at one frequency and voltage over many slips, constant parameters and no drop: the quickest form.</summary>
/// <remarks>
/// The letters of <see cref="SlipTerms{L}"/>, each a quadratic in slip whose coefficients are the row's: G = g0 + g1 s + g2 s², and so on. What is left
/// a point is short enough for several points to be under way at once.
/// </remarks>
internal static class ConstantRow
{
    internal static void Solve<L>(
        in CircuitLanes<L> circuit, L phaseV, ReadOnlySpan<double> slips, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
        where L : struct, ILanes<L>
    {
        var (r1, x1) = (circuit.R1, circuit.X1);
        var (d0, d2) = (circuit.R2 * circuit.R2, circuit.X2 * circuit.X2);
        var (g0, g1, g2) = (circuit.CoreS * d0, circuit.R2, circuit.CoreS * d2);
        var (b0, b2) = (circuit.B0 * d0, circuit.B0 * d2 - circuit.X2);
        var (u0, u1, u2) = (r1 * g0 - x1 * b0 + d0, r1 * g1, r1 * g2 - x1 * b2 + d2);
        var (v0, v1, v2) = (r1 * b0 + x1 * g0, x1 * g1, r1 * b2 + x1 * g2);
        var perTorque = circuit.ThreeOverSpeed * (phaseV * phaseV) * circuit.R2;
        var one = L.All(1);
        for (var start = 0; start < slips.Length; start += L.Count)
        {
            var s = slips.Length - start >= L.Count
                ? L.Load(slips, start)
                : new Group(start, 0, slips.Length - start).Load<L>(slips);
            var square = s * s;
            var d = d0 + d2 * square;
            var g = g0 + g1 * s + g2 * square;
            var b = b0 + b2 * square;
            var u = u0 + u1 * s + u2 * square;
            var v = v0 + v1 * s + v2 * square;
            var q = g * g + b * b;
            var inverse = one / L.Sqrt(q * (u * u + v * v));
            var perVolt = q * inverse;
            L.Store(phaseV * perVolt, currentA, start);
            L.Store((r1 * q + d * g) * inverse, powerFactor, start);
            L.Store(perTorque * s * d * (perVolt * inverse), torqueNm, start);
        }
    }
}
