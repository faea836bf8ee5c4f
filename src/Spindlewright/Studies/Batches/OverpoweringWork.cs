using Spindlewright.Foundations;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Overpowering;

namespace Spindlewright.Studies.Batches;

/// <summary>Overpowering speeds of a block: brackets sample by sample, crossings and conditions several samples at once.</summary>
internal readonly struct OverpoweringWork(
    DriveColumns drives, HandColumns hands, FrequencyCells cells, double oneTurnRpm, OverpoweringColumns into) : IBlockWork
{
    private const int MostSteps = 100;
    private const double Settled = 1e-13;

    private readonly bool anyDrop = drives.DropV.Span.ContainsAnyExcept(0);

    public void Do<L>(int start, int length) where L : struct, ILanes<L>
    {
        Span<double> low = stackalloc double[L.Count];
        Span<double> high = stackalloc double[L.Count];
        foreach (var group in new Groups(start, length, drives.Count, L.Count))
        {
            for (var lane = 0; lane < L.Count; lane++)
            {
                var sample = group.Start + Math.Min(lane, group.Length - 1);
                // Where there is nothing to look for, a bracket without width, at NaN or at the lowest frequency.
                (low[lane], high[lane]) = FirstCrossing<L>(sample);
            }
            Conclude(group, L.Load(low, 0), L.Load(high, 0));
        }
    }

    public void Withdraw()
    {
        // The columns are handed out only once they are whole.
    }

    private double LimitNm(int sample) =>
        (hands.FrictionNm.Span[sample] + hands.HandNm.Span[sample]) / (hands.Ratio.Span[sample] * hands.Efficiency.Span[sample]);

    private (double LowHz, double HighHz) FirstCrossing<L>(int sample) where L : struct, ILanes<L>
    {
        var drive = new DriveLanes<L>(drives, new Group(sample, sample, 1), anyDrop);
        var ceilingMetHz = cells.Curve.HertzReaching(drives.CeilingPhaseV.Span[sample] * Math.Sqrt(3) / drives.LinkFactor.Span[sample]);
        return new CellSearch<L>(in drive, cells, LimitNm(sample), ceilingMetHz).First();
    }

    private void Conclude<L>(in Group group, L low, L high) where L : struct, ILanes<L>
    {
        var drive = new DriveLanes<L>(drives, group, anyDrop);
        var inside = low < high;
        var hz = L.Any(inside) ? Crossing(drive, group, low, high) : high;
        var falls = L.Any(inside) ? LockedRotorFalls(drive, hz) : inside;
        Span<double> found = stackalloc double[L.Count];
        L.Store(hz, found, 0);
        var fallsBits = L.Bits(falls);
        for (var lane = 0; lane < group.Length; lane++)
        {
            var sample = group.Start + lane;
            var poles = 2 * drives.Circuits[0][CircuitColumns.Column.PolePairs][sample];
            var rpm = 120 * found[lane] / poles / hands.Ratio.Span[sample];
            (into.CrossingHz[sample], into.CrossingRpm[sample]) = (found[lane], rpm);
            into.Outcomes[sample] =
                double.IsNaN(found[lane]) ? OverpoweringOutcome.NeverPassed
                : found[lane] <= cells.LowestHz ? OverpoweringOutcome.AlreadyAtStandstill
                : (fallsBits >> lane & 1) != 0 ? OverpoweringOutcome.LockedRotorFallsBefore
                : rpm >= oneTurnRpm ? OverpoweringOutcome.PastOneTurn
                : OverpoweringOutcome.At;
        }
    }

    /// <summary>Where pull-out torque passes the limit within a bracket: false position with the standing end's weight halved.</summary>
    private L Crossing<L>(in DriveLanes<L> drive, in Group group, L low, L high) where L : struct, ILanes<L>
    {
        Span<double> limits = stackalloc double[L.Count];
        for (var lane = 0; lane < L.Count; lane++) limits[lane] = LimitNm(group.Start + Math.Min(lane, group.Length - 1));
        var (none, half, limit) = (L.All(0), L.All(0.5), L.Load(limits, 0));
        var active = low < high;
        var (atLow, atHigh) = (Excess(drive, low, limit), Excess(drive, high, limit));
        var (hz, stood) = (high, none);
        for (var step = 0; step < MostSteps && L.Any(active); step++)
        {
            var next = (low * atHigh - high * atLow) / (atHigh - atLow);
            next = L.Choose((next > low) & (next < high), next, half * (low + high));
            var excess = Excess(drive, next, limit);
            var below = excess < none;
            atHigh = L.Choose(below & (stood < none), half * atHigh, L.Choose(below, atHigh, excess));
            atLow = L.Choose(below, excess, L.Choose(stood > none, half * atLow, atLow));
            (low, high) = (L.Choose(below, next, low), L.Choose(below, high, next));
            stood = L.Choose(below, L.All(-1), L.All(1));
            var moved = next - hz;
            hz = L.Choose(active, next, hz);
            active &= (moved * moved > L.All(Settled * Settled) * (hz * hz)) & (high - low > L.All(Settled) * hz);
        }
        return hz;
    }

    private L Excess<L>(in DriveLanes<L> drive, L hz, L limit) where L : struct, ILanes<L> =>
        drive.PullOutNm(hz, LawLanes.LineV(cells.Curve, hz)) - limit;

    /// <summary>Whether locked-rotor torque falls anywhere on the way to a frequency, or there.</summary>
    private L LockedRotorFalls<L>(in DriveLanes<L> drive, L hz) where L : struct, ILanes<L>
    {
        var before = drive.LockedRotorNm(L.All(cells.WatchedHz[0]), L.All(cells.WatchedLineV[0]));
        var falls = L.All(1) < L.All(0);
        for (var place = 1; place < cells.WatchedHz.Length; place++)
        {
            var watchedHz = L.All(cells.WatchedHz[place]);
            var onTheWay = (watchedHz < hz) | L.Same(watchedHz, hz);
            if (!L.Any(onTheWay)) break;
            var torqueNm = drive.LockedRotorNm(watchedHz, L.All(cells.WatchedLineV[place]));
            falls |= onTheWay & (torqueNm < before);
            before = L.Choose(onTheWay, torqueNm, before);
        }
        var (there, justBelowHz) = (LockedRotorNm(drive, hz), hz * L.All(OverpoweringStudy.JustBelow));
        return falls | (there < before) | (there < LockedRotorNm(drive, justBelowHz));
    }

    private L LockedRotorNm<L>(in DriveLanes<L> drive, L hz) where L : struct, ILanes<L> =>
        drive.LockedRotorNm(hz, LawLanes.LineV(cells.Curve, hz));
}
