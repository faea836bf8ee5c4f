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
internal readonly struct SweepWork<L, TConsumer>(
    CircuitColumns circuits, FeedColumns feeds, ReadOnlyMemory<double> slips, TConsumer consumer, CircuitForm form) : IBlockWork
    where L : struct, ILanes<L>
    where TConsumer : IPointConsumer
{
    // Three results of this many points stay near beside their slips, and a row's own quantities are spread over many points.
    private const int PieceLength = 1024;

    public void Do(int start, int length)
    {
        Span<double> room = stackalloc double[3 * PieceLength];
        var end = start + length;
        while (start < end)
        {
            var (row, first) = (start / slips.Length, start % slips.Length);
            var taken = Math.Min(Math.Min(end - start, slips.Length - first), PieceLength);
            Piece(row / feeds.Count, row % feeds.Count, first, taken, room);
            start += taken;
        }
    }

    public void Withdraw()
    {
        // What was handed on belongs to the consumer.
    }

    private void Piece(int circuit, int feed, int first, int length, Span<double> room)
    {
        // A group of one repeats it in every lane.
        var lanes = FeedLanes<L>.Load(circuits, feeds, new Group(feed, circuit, 1), form);
        var points = slips.Span.Slice(first, length);
        var torqueNm = room[..PieceLength];
        var currentA = room.Slice(PieceLength, PieceLength);
        var powerFactor = room.Slice(2 * PieceLength, PieceLength);
        if (form == CircuitForm.ConstantParameters && feeds.DropV.IsEmpty)
            ConstantRow.Solve(lanes.Circuit, lanes.PhaseV, points, torqueNm, currentA, powerFactor);
        else
            for (var start = 0; start < length; start += L.Count)
            {
                var slip = new Group(start, 0, Math.Min(L.Count, length - start)).Load<L>(points);
                var found = PointLanes<L>.At(lanes.Circuit, lanes.PhaseV, lanes.DropV, !feeds.DropV.IsEmpty, slip, form);
                // The room is cut in whole groups, so that the last may be written whole.
                L.Store(found.TorqueNm, torqueNm, start);
                L.Store(found.CurrentA, currentA, start);
                L.Store(found.PowerFactor, powerFactor, start);
            }
        consumer.Take(circuit, feed, first, torqueNm[..length], currentA[..length], powerFactor[..length]);
    }
}
