using System.Numerics;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Batches;

/// <summary>Looks for the first cell of one sample at whose end its torque passes a limit; frequencies lie side by side in the lanes.</summary>
internal readonly struct CellSearch<L>(DriveLanes<L> drive, FrequencyCells cells, double limitNm, bool closed)
    where L : struct, ILanes<L>
{
    /// <summary>How many cells are passed over at a time where a torque is costly.</summary>
    private const int Stride = 8;

    /// <summary>The first end, 0 for the lowest frequency itself; below 0 for none.</summary>
    /// <remarks>Where pull-out torque has a closed form every end is looked at, else those that a quick limit leaves.</remarks>
    internal int First()
    {
        for (var end = 0; end <= FrequencyCells.Last; end += L.Count)
        {
            var (hz, lineV) = (L.Load(cells.Hz, end), L.Load(cells.LineV, end));
            var torqueNm = closed ? drive.PullOutNm(hz, lineV) : drive.UnsaturatedBreakdownNm(hz, lineV, withCore: true);
            if (Passed(torqueNm) is var passed and not 0)
            {
                var first = end + BitOperations.TrailingZeroCount(passed);
                return closed ? first : FirstFrom(first);
            }
        }
        return -1;
    }

    private int FirstFrom(int from)
    {
        for (var end = from; end <= FrequencyCells.Last; end += Stride * Stride)
        {
            var place = Among(end, Stride);
            if (place < 0) continue;
            var coarse = Math.Min(end + place * Stride, FrequencyCells.Last);
            if (coarse == from) return from;
            var fine = Math.Max(from, coarse - Stride + 1);
            return Math.Min(fine + Among(fine, 1), FrequencyCells.Last);
        }
        return -1;
    }

    /// <summary>The first of eight ends, so many cells apart; below 0 for none.</summary>
    private int Among(int from, int stride)
    {
        Span<double> hz = stackalloc double[Stride];
        Span<double> lineV = stackalloc double[Stride];
        for (var place = 0; place < Stride; place++)
        {
            var end = Math.Min(from + place * stride, FrequencyCells.Last);
            (hz[place], lineV[place]) = (cells.Hz[end], cells.LineV[end]);
        }
        for (var place = 0; place < Stride; place += L.Count)
            if (Passed(drive.PullOutNm(L.Load(hz, place), L.Load(lineV, place))) is var passed and not 0)
                return place + BitOperations.TrailingZeroCount(passed);
        return -1;
    }

    private ulong Passed(L torqueNm)
    {
        var limit = L.All(limitNm);
        return L.Bits((torqueNm > limit) | L.Same(torqueNm, limit));
    }
}
