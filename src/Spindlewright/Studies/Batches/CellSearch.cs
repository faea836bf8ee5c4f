using System.Numerics;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Batches;

/// <summary>Brackets the first crossing of one sample's torque with a limit; frequencies lie side by side in the lanes.</summary>
/// <remarks>
/// Every eighth end of the study's cells is looked at. A torque that passes between two of them is bracketed by them; where it peaks below the
/// limit every end about the peak is looked at too, and so are the law's bends and the frequency where it meets the link's ceiling: there
/// torque may have a sharp peak.
/// </remarks>
internal readonly ref struct CellSearch<L> where L : struct, ILanes<L>
{
    private const int Stride = FrequencyCells.PostStride;
    private const int Posts = FrequencyCells.Last / Stride + 1;

    // Room for a whole vector from the last post on.
    private const int Room = Posts + 8;

    private readonly ref readonly DriveLanes<L> drive;
    private readonly FrequencyCells cells;
    private readonly double limitNm, ceilingMetHz;
    private readonly bool exact;

    /// <summary>Makes a search.</summary>
    /// <param name="drive">The sample in every lane.</param>
    /// <param name="cells">Where to look.</param>
    /// <param name="limitNm">What its torque must pass.</param>
    /// <param name="ceilingMetHz">Where its voltage stops rising.</param>
    internal CellSearch(ref readonly DriveLanes<L> drive, FrequencyCells cells, double limitNm, double ceilingMetHz)
    {
        this.drive = ref drive;
        this.ceilingMetHz = ceilingMetHz;
        (this.cells, this.limitNm, exact) = (cells, limitNm, drive.Closed || drive.AnyDoubleCage);
    }

    /// <summary>Frequencies between which the torque first passes the limit; both the lowest where it does so from there; NaN where never.</summary>
    internal (double LowHz, double HighHz) First()
    {
        // Where pull-out torque has no closed form, a quick limit above it spares its solution wherever that stays below the hand.
        Span<double> torques = stackalloc double[Room];
        Span<double> quick = stackalloc double[Room];
        var (known, knownQuick) = (0, 0);
        for (var post = 0; post < Posts; post++)
        {
            if (post == knownQuick) Look(quick, knownQuick, exact, out knownQuick);
            if (!exact && quick[post] >= limitNm && post >= known) Look(torques, post, exact: true, out known);
            if (exact || quick[post] < limitNm) torques[post] = quick[post];
            if (post > 0 && FirstCornerPassed(cells.PostHz[post - 1], cells.PostHz[post]) is var corner && corner < cells.PostHz[post])
                return (cells.PostHz[post - 1], corner);
            if (torques[post] >= limitNm) return (cells.PostHz[Math.Max(0, post - 1)], cells.PostHz[post]);
            if (IsPast(torques, post) && Among(post - 2, post) is var end and >= 0) return (cells.Hz[end - 1], cells.Hz[end]);
        }
        // A peak beyond the last post but one has no post behind it to tell of it.
        return Among(Posts - 2, Posts - 1) is var last and >= 0 ? (cells.Hz[last - 1], cells.Hz[last]) : (double.NaN, double.NaN);
    }

    /// <summary>Whether the post before was a peak.</summary>
    private static bool IsPast(ReadOnlySpan<double> torques, int post) =>
        post > 0 && torques[post] < torques[post - 1] && (post == 1 || torques[post - 2] <= torques[post - 1]);

    /// <summary>The first corner of the voltage between two frequencies at which the torque passes the limit; infinite for none.</summary>
    private double FirstCornerPassed(double fromHz, double toHz)
    {
        var first = double.PositiveInfinity;
        foreach (var bendHz in cells.BendsHz)
            if (bendHz < first && bendHz > fromHz && bendHz < toHz && Passes(bendHz)) first = bendHz;
        return ceilingMetHz < first && ceilingMetHz > fromHz && ceilingMetHz < toHz && Passes(ceilingMetHz) ? ceilingMetHz : first;
    }

    private bool Passes(double hz)
    {
        Span<double> torques = stackalloc double[L.Count];
        L.Store(drive.PullOutNm(L.All(hz), L.All(cells.Curve.LineVolts(hz))), torques, 0);
        return torques[0] >= limitNm;
    }

    /// <summary>Torques at as many posts as there are lanes.</summary>
    private void Look(Span<double> torques, int from, bool exact, out int known)
    {
        var (hz, lineV) = (L.Load(cells.PostHz, from), L.Load(cells.PostLineV, from));
        L.Store(exact ? drive.PullOutNm(hz, lineV) : drive.UnsaturatedBreakdownNm(hz, lineV, withCore: true), torques, from);
        known = from + L.Count;
    }

    /// <summary>The first end between two posts at which the torque passes the limit; below 0 for none.</summary>
    private int Among(int fromPost, int toPost)
    {
        var (limit, last) = (L.All(limitNm), toPost * Stride - 1);
        for (var end = Math.Max(0, fromPost) * Stride + 1; end <= last; end += L.Count)
        {
            var torqueNm = drive.PullOutNm(L.Load(cells.Hz, end), L.Load(cells.LineV, end));
            if (L.Bits((torqueNm > limit) | L.Same(torqueNm, limit)) is var passed and not 0)
            {
                var first = end + BitOperations.TrailingZeroCount(passed);
                // What lies beyond is left to its own posts, whatever the width of a vector.
                return first <= last ? first : -1;
            }
        }
        return -1;
    }
}
