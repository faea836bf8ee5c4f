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
        Blocks.Run(feeds.Count, run, new PointWork(circuits, feeds, slips, into, form));
    }

    /// <summary>Locked-rotor torque: at standstill.</summary>
    /// <param name="circuits">The circuits.</param>
    /// <param name="feeds">What they are fed with, in layers.</param>
    /// <param name="into">Receives as many torques with their slips.</param>
    /// <param name="form">Form of the circuit.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="PartException">Columns are not of one length.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; every place of the results is NaN.</exception>
    public static void LockedRotor(
        CircuitColumns circuits, in FeedColumns feeds, in TorqueColumns into, CircuitForm form, BatchRun run) =>
        Torques(circuits, feeds, into, TorquePoint.LockedRotor, form, run);

    /// <summary>Pull-out torque: the largest over 0 &lt; s ≤ 1, and its slip.</summary>
    /// <inheritdoc cref="LockedRotor"/>
    /// <remarks>
    /// In closed form with a single cage, constant parameters and no drop; else by the slope of torque against slip, the torque to the last bits, the
    /// slip to about 1e-9 of itself.
    /// </remarks>
    public static void PullOut(
        CircuitColumns circuits, in FeedColumns feeds, in TorqueColumns into, CircuitForm form, BatchRun run) =>
        Torques(circuits, feeds, into, TorquePoint.PullOut, form, run);

    /// <summary>Breakdown torque and its slip in closed form: the peak of the curve, with constant parameters and no drop.</summary>
    /// <param name="circuits">The circuits; saturation is left out and Xm taken as at rated flux.</param>
    /// <param name="feeds">What they are fed with, in layers, without drops.</param>
    /// <param name="into">Receives as many torques with their slips, which may exceed 1.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="PartException">Columns are not of one length, or there are drops.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; every place of the results is NaN.</exception>
    public static void Breakdown(CircuitColumns circuits, in FeedColumns feeds, in TorqueColumns into, BatchRun run)
    {
        if (!feeds.DropV.IsEmpty)
            throw new PartException(Part, "number of phase drops", $"{feeds.DropV.Length}", "none", "the closed form knows no drop");
        Torques(circuits, feeds, into, TorquePoint.Breakdown, CircuitForm.ConstantParameters, run);
    }

    /// <summary>Every circuit at every feed and every slip, handed on block by block and never stored.</summary>
    /// <typeparam name="TConsumer">What takes the points; a struct costs no call.</typeparam>
    /// <param name="circuits">The circuits.</param>
    /// <param name="feeds">Any number of feeds, each for every circuit.</param>
    /// <param name="slips">Any number of slips, each at every feed; eight or more make good use of the hardware.</param>
    /// <param name="consumer">Takes the points; called by many threads at once unless on one core.</param>
    /// <param name="form">Form of the circuit.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="PartException">Columns are not of one length, or there are more than 2³¹ − 1 points.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static void Sweep<TConsumer>(
        CircuitColumns circuits, in FeedColumns feeds, ReadOnlyMemory<double> slips, TConsumer consumer, CircuitForm form, BatchRun run)
        where TConsumer : IPointConsumer
    {
        SameLength(feeds.PhaseV.Length, feeds.Count, "number of phase voltages");
        if (!feeds.DropV.IsEmpty) SameLength(feeds.DropV.Length, feeds.Count, "number of phase drops");
        var points = (double)circuits.Count * feeds.Count * slips.Length;
        Guard.Within(points, 1, int.MaxValue, Part, "number of points");
        Blocks.Run((int)points, run, new SweepWork<TConsumer>(circuits, feeds, slips, consumer, form));
    }

    private static void Torques(
        CircuitColumns circuits, in FeedColumns feeds, in TorqueColumns into, TorquePoint point, CircuitForm form, BatchRun run)
    {
        feeds.Check(circuits);
        SameLength(into.TorqueNm.Length, feeds.Count, "room for torques");
        if (!into.Slip.IsEmpty) SameLength(into.Slip.Length, feeds.Count, "room for slips");
        Blocks.Run(feeds.Count, run, new TorqueWork(circuits, feeds, into, point, form));
    }

    internal static void SameLength(int found, int wanted, string quantity, string of = "frequencies")
    {
        if (found != wanted)
            throw new PartException(Part, quantity, $"{found}", $"{wanted}, as many as {of}");
    }
}
