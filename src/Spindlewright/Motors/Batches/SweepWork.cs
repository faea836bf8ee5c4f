namespace Spindlewright.Motors.Batches;

/// <summary>Takes the operating points of a sweep as they are found.</summary>
public interface IPointConsumer
{
    /// <summary>Takes points of one circuit at one feed, whose slips follow one another.</summary>
    /// <param name="circuit">Place of the circuit.</param>
    /// <param name="feed">Place of the feed.</param>
    /// <param name="firstSlip">Place of the first slip.</param>
    /// <param name="torqueNm">Air-gap torques in N·m.</param>
    /// <param name="currentA">Rms stator currents in A.</param>
    /// <param name="powerFactor">Power factors at the motor's terminals.</param>
    void Take(
        int circuit, int feed, int firstSlip, ReadOnlySpan<double> torqueNm, ReadOnlySpan<double> currentA,
        ReadOnlySpan<double> powerFactor);
}

/// <summary>Operating points of a sweep: slip runs fastest, then feed, then circuit.</summary>
internal readonly struct SweepWork<TConsumer>(
    CircuitColumns circuits, FeedColumns feeds, ReadOnlyMemory<double> slips, TConsumer consumer, CircuitForm form) : IBlockWork
    where TConsumer : IPointConsumer
{
    // Three results of this many points stay in the nearest cache beside their slips.
    private const int PieceLength = 256;

    public void Do<L>(int start, int length) where L : struct, ILanes<L>
    {
        Span<double> room = stackalloc double[3 * PieceLength];
        for (var end = start + length; start < end;)
        {
            var (row, first) = (start / slips.Length, start % slips.Length);
            var taken = Math.Min(end - start, slips.Length - first);
            Row<L>(row / feeds.Count, row % feeds.Count, first, taken, room);
            start += taken;
        }
    }

    public void Withdraw()
    {
        // What was handed on belongs to the consumer.
    }

    private void Row<L>(int circuit, int feed, int first, int length, Span<double> room) where L : struct, ILanes<L>
    {
        // A group of one repeats it in every lane.
        var lanes = FeedLanes<L>.Load(circuits, feeds, new Group(feed, circuit, 1), form);
        var plain = form == CircuitForm.ConstantParameters && feeds.DropV.IsEmpty && !circuits.DoubleCage;
        var row = ConstantRow<L>.Of(lanes.Circuit, lanes.PhaseV);
        var torqueNm = room[..PieceLength];
        var currentA = room.Slice(PieceLength, PieceLength);
        var powerFactor = room.Slice(2 * PieceLength, PieceLength);
        for (var start = 0; start < length; start += PieceLength)
        {
            var taken = Math.Min(PieceLength, length - start);
            var points = slips.Span.Slice(first + start, taken);
            if (plain) row.Solve(points, torqueNm, currentA, powerFactor);
            else Solve(lanes, points, torqueNm, currentA, powerFactor);
            consumer.Take(circuit, feed, first + start, torqueNm[..taken], currentA[..taken], powerFactor[..taken]);
        }
    }

    private void Solve<L>(
        in FeedLanes<L> lanes, ReadOnlySpan<double> points, Span<double> torqueNm, Span<double> currentA, Span<double> powerFactor)
        where L : struct, ILanes<L>
    {
        for (var start = 0; start < points.Length; start += L.Count)
        {
            var slip = new Group(start, 0, Math.Min(L.Count, points.Length - start)).Load<L>(points);
            var found = PointLanes<L>.At(lanes.Circuit, lanes.PhaseV, lanes.DropV, !feeds.DropV.IsEmpty, slip, form);
            // The room is cut in whole groups, so that the last may be written whole.
            L.Store(found.TorqueNm, torqueNm, start);
            L.Store(found.CurrentA, currentA, start);
            L.Store(found.PowerFactor, powerFactor, start);
        }
    }
}
