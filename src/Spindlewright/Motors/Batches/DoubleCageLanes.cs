namespace Spindlewright.Motors.Batches;

/// <summary>Largest torques of curves that may have two peaks: those of double cages.</summary>
internal static partial class PullOutLanes
{
    private const int CellDoublings = 5;
    private const int PeakCells = 1 << CellDoublings;

    /// <summary>Pull-out torque where some of the circuits have a double cage: each by the formulas of its own kind.</summary>
    private static TorqueLanes<L> OfAnyCage<L>(CircuitLanes<L> circuit, L phaseV, L dropV, bool anyDrop, CircuitForm form)
        where L : struct, ILanes<L>
    {
        var (none, one) = (L.All(0), L.All(1));
        var supplied = phaseV > dropV;
        // Far below the inner cage's own breakdown slip no peak can stand.
        var from = L.Smaller(L.All(0.1), L.All(0.05) * Breakdown(circuit, phaseV, circuit.B0 + circuit.B6).Slip);
        var found = Highest(circuit, phaseV, dropV, anyDrop, form, from, one, supplied);
        found.TorqueNm = L.Choose(supplied, found.TorqueNm, none);
        found.Slip = L.Choose(supplied, found.Slip, one);
        var doubled = circuit.CageRise > none;
        circuit.DoubleCage = false;
        // A single cage among double ones keeps the bits that it has among its like.
        var single = PullOut(circuit, phaseV, dropV, anyDrop, form);
        return new()
        {
            TorqueNm = L.Choose(doubled, found.TorqueNm, single.TorqueNm),
            Slip = L.Choose(doubled, found.Slip, single.Slip),
        };
    }

    /// <summary>Breakdown torque with constant parameters and no drop: closed form of a single cage, the highest peak of a double one.</summary>
    internal static TorqueLanes<L> BreakdownOfAnyCage<L>(in CircuitLanes<L> circuit, L phaseV, L magnetisingS)
        where L : struct, ILanes<L>
    {
        var inner = Breakdown(circuit, phaseV, magnetisingS);
        if (!circuit.DoubleCage) return inner;
        var (none, outerAlone, both) = (L.All(0), circuit, circuit);
        outerAlone.R2 *= L.All(1) + circuit.CageRise;
        outerAlone.X2 *= L.All(1) - circuit.CageFall;
        var outer = Breakdown(outerAlone, phaseV, magnetisingS);
        both.B0 = magnetisingS;
        var quarter = L.All(0.25);
        var found = Highest(
            both, phaseV, none, false, CircuitForm.ConstantParameters, quarter * inner.Slip, L.All(4) * outer.Slip, phaseV > none);
        var doubled = circuit.CageRise > none;
        return new()
        {
            TorqueNm = L.Choose(doubled, found.TorqueNm, inner.TorqueNm),
            Slip = L.Choose(doubled, found.Slip, inner.Slip),
        };
    }

    /// <summary>The highest peak between two slips, an end included; a walk in equal ratios tells two of them apart.</summary>
    private static TorqueLanes<L> Highest<L>(
        in CircuitLanes<L> circuit, L phaseV, L dropV, bool anyDrop, CircuitForm form, L from, L to, L active)
        where L : struct, ILanes<L>
    {
        var (none, half) = (L.All(0), L.All(0.5));
        var ratio = to / from;
        for (var doubling = 0; doubling < CellDoublings; doubling++) ratio = L.Sqrt(ratio);
        var best = new TorqueLanes<L> { Slip = to, TorqueNm = PointLanes<L>.At(circuit, phaseV, dropV, anyDrop, to, form).TorqueNm };
        var (here, square) = (from, none);
        var rising = TorqueExponent.At(circuit, here, phaseV, dropV, anyDrop, form, ref square) > none;
        for (var cell = 1; cell <= PeakCells; cell++)
        {
            var next = cell == PeakCells ? to : here * ratio;
            var risesOn = TorqueExponent.At(circuit, next, phaseV, dropV, anyDrop, form, ref square) > none;
            var turns = L.Choose(risesOn, none, active & rising);
            if (L.Any(turns))
            {
                var slip = PeakSlip(circuit, phaseV, dropV, anyDrop, form, half * (here + next), here, next, turns);
                var torqueNm = PointLanes<L>.At(circuit, phaseV, dropV, anyDrop, slip, form).TorqueNm;
                var higher = turns & (torqueNm > best.TorqueNm);
                best.TorqueNm = L.Choose(higher, torqueNm, best.TorqueNm);
                best.Slip = L.Choose(higher, slip, best.Slip);
            }
            (here, rising) = (next, risesOn);
        }
        return best;
    }
}
