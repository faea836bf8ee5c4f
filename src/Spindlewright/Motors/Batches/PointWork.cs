using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Operating points of a layered batch.</summary>
internal readonly struct PointWork(
    CircuitColumns circuits, FeedColumns feeds, ReadOnlyMemory<double> slips, PointColumns into, CircuitForm form)
    : IBlockWork
{
    public void Do<L>(int start, int length) where L : struct, ILanes<L>
    {
        var anyDrop = !feeds.DropV.IsEmpty;
        foreach (var group in new Groups(start, length, circuits.Count, L.Count))
        {
            var lanes = FeedLanes<L>.Load(circuits, feeds, group, form);
            var points = PointLanes<L>.At(
                lanes.Circuit, lanes.PhaseV, lanes.DropV, anyDrop, group.Load<L>(slips.Span), form);
            group.Store(points.TorqueNm, into.TorqueNm.Span);
            group.Store(points.CurrentA, into.CurrentA.Span);
            group.Store(points.PowerFactor, into.PowerFactor.Span);
        }
    }

    public void Withdraw()
    {
        into.TorqueNm.Span.Fill(double.NaN);
        into.CurrentA.Span.Fill(double.NaN);
        into.PowerFactor.Span.Fill(double.NaN);
    }
}

/// <summary>Circuits and what they are fed with, one a lane.</summary>
internal struct FeedLanes<L> where L : struct, ILanes<L>
{
    internal CircuitLanes<L> Circuit;
    internal L FrequencyHz, PhaseV, DropV;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static FeedLanes<L> Load(CircuitColumns circuits, in FeedColumns feeds, in Group group, CircuitForm form)
    {
        var frequencyHz = group.Load<L>(feeds.FrequencyHz.Span);
        return new()
        {
            FrequencyHz = frequencyHz,
            Circuit = CircuitLanes<L>.At(circuits, group, frequencyHz, form),
            PhaseV = group.Load<L>(feeds.PhaseV.Span),
            DropV = feeds.DropV.IsEmpty ? L.All(0) : group.Load<L>(feeds.DropV.Span),
        };
    }
}
