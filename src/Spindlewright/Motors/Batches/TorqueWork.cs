namespace Spindlewright.Motors.Batches;

/// <summary>Which point of the curve is looked for.</summary>
internal enum TorquePoint
{
    LockedRotor,
    PullOut,
    Breakdown,
}

/// <summary>Points of the torque curve of a layered batch.</summary>
internal readonly struct TorqueWork(
    CircuitColumns circuits, FeedColumns feeds, TorqueColumns into, TorquePoint point, CircuitForm form) : IBlockWork
{
    public void Do<L>(int start, int length) where L : struct, ILanes<L>
    {
        var anyDrop = !feeds.DropV.IsEmpty;
        foreach (var group in new Groups(start, length, circuits.Count, L.Count))
        {
            var lanes = FeedLanes<L>.Load(circuits, feeds, group, form);
            var found = point switch
            {
                TorquePoint.LockedRotor => new TorqueLanes<L>
                {
                    TorqueNm = PointLanes<L>.At(lanes.Circuit, lanes.PhaseV, lanes.DropV, anyDrop, L.All(1), form).TorqueNm,
                    Slip = L.All(1),
                },
                TorquePoint.PullOut => PullOutLanes.PullOut(lanes.Circuit, lanes.PhaseV, lanes.DropV, anyDrop, form),
                _ => PullOutLanes.BreakdownOfAnyCage(lanes.Circuit, lanes.PhaseV, lanes.Circuit.B0),
            };
            group.Store(found.TorqueNm, into.TorqueNm.Span);
            if (!into.Slip.IsEmpty) group.Store(found.Slip, into.Slip.Span);
        }
    }

    public void Withdraw()
    {
        into.TorqueNm.Span.Fill(double.NaN);
        into.Slip.Span.Fill(double.NaN);
    }
}
