using System.Runtime.Intrinsics;
using Spindlewright.Foundations;

namespace Spindlewright.Motors.Batches;

/// <summary>Solves many circuits at many frequencies, voltages and slips at once.</summary>
/// <remarks>
/// <para>
/// The same circuit as <see cref="CircuitSolver"/>, whose path is the reference: a property test holds the two equal to 1e-12 of
/// the value. Nothing is allocated a point, and on one core nothing at all.
/// </para>
/// <para>
/// Numbers out of range are not looked for, point by point: a frequency, voltage or slip that is NaN gives NaN at its own place and
/// nowhere else.
/// </para>
/// </remarks>
public static class BatchSolver
{
    internal const string Part = "batch";

    /// <summary>Operating points.</summary>
    /// <param name="circuits">The circuits.</param>
    /// <param name="feeds">What they are fed with, in layers.</param>
    /// <param name="slips">One a point: 0 synchronous, 1 standstill, below 0 generating, above 1 plugging.</param>
    /// <param name="into">Receives as many points.</param>
    /// <param name="form">Form of the circuit.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="PartException">Columns are not of one length.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; every place of the results is NaN.</exception>
    public static void OperatingPoints(
        CircuitColumns circuits, in FeedColumns feeds, ReadOnlyMemory<double> slips, in PointColumns into, CircuitForm form,
        BatchRun run)
    {
        feeds.Check(circuits);
        SameLength(slips.Length, feeds.Count, "number of slips");
        SameLength(into.TorqueNm.Length, feeds.Count, "room for torques");
        SameLength(into.CurrentA.Length, feeds.Count, "room for currents");
        SameLength(into.PowerFactor.Length, feeds.Count, "room for power factors");
        if (Vector512.IsHardwareAccelerated) PointWork<Lanes8>.Run(circuits, feeds, slips, into, form, run);
        else if (Vector256.IsHardwareAccelerated) PointWork<Lanes4>.Run(circuits, feeds, slips, into, form, run);
        else PointWork<Lanes2>.Run(circuits, feeds, slips, into, form, run);
    }

    internal static void SameLength(int found, int wanted, string quantity)
    {
        if (found != wanted)
            throw new PartException(Part, quantity, $"{found}", $"{wanted}, as many as frequencies");
    }
}
