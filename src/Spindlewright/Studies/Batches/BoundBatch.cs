using Spindlewright.Foundations;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Torques;

namespace Spindlewright.Studies.Batches;

/// <summary>Finds the no-credit bounds of many samples at once: what <see cref="TorqueBound"/> finds for one machine, which is the reference.</summary>
public static class BoundBatch
{
    /// <summary>Finds them.</summary>
    /// <param name="drives">Drives of the samples on the hazard side.</param>
    /// <param name="others">Columns of the capability side's circuits, of which the larger torque counts too; empty where both sides share theirs.</param>
    /// <param name="supplyFactor">(Highest supply / nominal)², one a sample.</param>
    /// <param name="nameplateNm">Breakdown torque by the nameplate in N·m, one a sample, 0 for none; empty for none at all.</param>
    /// <param name="boundNm">Receives the bounds at the motor shaft in N·m.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="PartException">Columns are not of one length, or the drives are of the other side.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; every bound is NaN.</exception>
    public static void Of(
        DriveColumns drives, IReadOnlyList<CircuitColumns> others, ReadOnlyMemory<double> supplyFactor, ReadOnlyMemory<double> nameplateNm,
        Memory<double> boundNm, BatchRun run)
    {
        if (drives.Side != Side.Hazard)
            throw new PartException("batch of bounds", "side of the drives", "capability", "hazard", "a bound credits nothing");
        BatchSolver.SameLength(supplyFactor.Length, drives.Count, "number of supply factors", "samples");
        if (!nameplateNm.IsEmpty) BatchSolver.SameLength(nameplateNm.Length, drives.Count, "number of nameplate torques", "samples");
        BatchSolver.SameLength(boundNm.Length, drives.Count, "room for bounds", "samples");
        var ends = TorqueBound.EndsHz(drives.Inverter);
        Blocks.Run(drives.Count, run, new BoundWork(drives, others.Count == 0 ? null : drives.With(others), supplyFactor, nameplateNm, boundNm, ends));
    }
}

/// <summary>Bounds of a block.</summary>
internal readonly struct BoundWork(
    DriveColumns drives, DriveColumns? others, ReadOnlyMemory<double> supplyFactor, ReadOnlyMemory<double> nameplateNm, Memory<double> boundNm,
    double[] endsHz) : IBlockWork
{
    public void Do<L>(int start, int length) where L : struct, ILanes<L>
    {
        foreach (var group in new Groups(start, length, drives.Count, L.Count)) group.Store(BoundNm<L>(group), boundNm.Span);
    }

    public void Withdraw() => boundNm.Span.Fill(double.NaN);

    private L BoundNm<L>(in Group group) where L : struct, ILanes<L>
    {
        var (one, counted) = (L.All(1), L.All(TorqueBound.MostCountedOverflux));
        var baseNm = WithoutResistanceNm<L>(drives.Circuits[0], group);
        if (others is not null) baseNm = L.Larger(baseNm, WithoutResistanceNm<L>(others.Circuits[0], group));
        if (!nameplateNm.IsEmpty) baseNm = L.Larger(baseNm, group.LoadCircuits<L>(nameplateNm.Span));
        baseNm *= group.LoadCircuits<L>(supplyFactor.Span);
        var overflux = L.Larger(one, SetOverflux<L>(group));
        var beyond = overflux > counted;
        if (L.Any(beyond))
            overflux = L.Choose(beyond, L.Larger(counted, L.Sqrt(LargestUnsaturatedNm<L>(group) / baseNm)), overflux);
        return baseNm * overflux * overflux;
    }

    private static L WithoutResistanceNm<L>(CircuitColumns circuits, in Group group) where L : struct, ILanes<L>
    {
        var circuit = CircuitLanes<L>.At(
            circuits, group, group.LoadCircuits<L>(circuits[CircuitColumns.Column.RatedHz]), CircuitForm.Saturated);
        (circuit.R1, circuit.CoreS) = (L.All(0), L.All(0));
        var ratedV = group.LoadCircuits<L>(circuits[CircuitColumns.Column.RatedPhaseV]);
        return PullOutLanes.BreakdownOfAnyCage(circuit, ratedV, circuit.B0).TorqueNm;
    }

    private L SetOverflux<L>(in Group group) where L : struct, ILanes<L>
    {
        var most = 0.0;
        foreach (var hertz in endsHz) most = Math.Max(most, drives.Inverter.Curve.LineVolts(hertz) / hertz);
        var circuits = drives.Circuits[0];
        var ratedV = group.LoadCircuits<L>(circuits[CircuitColumns.Column.RatedPhaseV]) * L.All(Math.Sqrt(3));
        return L.All(most) * group.LoadCircuits<L>(circuits[CircuitColumns.Column.RatedHz]) / ratedV;
    }

    /// <summary>The largest over the frequencies that are set, stretch by stretch between the law's bends and each in pieces.</summary>
    private L LargestUnsaturatedNm<L>(in Group group) where L : struct, ILanes<L> => others is null
        ? UnsaturatedBreakdownNm<L>(drives, group)
        : L.Larger(UnsaturatedBreakdownNm<L>(drives, group), UnsaturatedBreakdownNm<L>(others, group));

    private L UnsaturatedBreakdownNm<L>(DriveColumns drives, in Group group) where L : struct, ILanes<L>
    {
        var curve = new UnsaturatedCurve<L>(new DriveLanes<L>(drives, group, anyDrop: false), drives.Inverter.Curve);
        var largest = L.All(0);
        for (var stretch = 1; stretch < endsHz.Length; stretch++)
            for (var piece = 0; piece < TorqueBound.Pieces; piece++)
            {
                var (first, width) = (endsHz[stretch - 1], endsHz[stretch] - endsHz[stretch - 1]);
                var (from, to) = (first + width * piece / TorqueBound.Pieces, first + width * (piece + 1) / TorqueBound.Pieces);
                largest = L.Larger(largest, PeakLanes<L>.Largest(ref curve, from, to));
            }
        return largest;
    }
}
