using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Batches;

/// <summary>Drives of several samples, one a lane: what <see cref="Machines.Drive"/> is for one.</summary>
internal readonly struct DriveLanes<L> where L : struct, ILanes<L>
{
    private readonly CircuitSet<L> first, second;
    private readonly bool both, largest, anyDrop;
    private readonly CircuitForm form;
    private readonly L perLineV, ceilingPhaseV, dropV;

    /// <summary>Loads drives.</summary>
    /// <param name="drives">The drives.</param>
    /// <param name="group">The samples.</param>
    /// <param name="anyDrop">Whether any sample of the batch has a drop, so that a sample's formulas never hang on its neighbours.</param>
    internal DriveLanes(DriveColumns drives, in Group group, bool anyDrop)
    {
        (both, largest, form) = (drives.Circuits.Count > 1, drives.Side == Side.Hazard, drives.Form);
        this.anyDrop = anyDrop;
        first = CircuitSet<L>.Load(drives.Circuits[0], group, form);
        if (both) second = CircuitSet<L>.Load(drives.Circuits[1], group, form);
        perLineV = group.LoadCircuits<L>(drives.LinkFactor.Span) * L.All(1 / Math.Sqrt(3));
        ceilingPhaseV = group.LoadCircuits<L>(drives.CeilingPhaseV.Span);
        dropV = group.LoadCircuits<L>(drives.DropV.Span);
    }

    /// <summary>Whether pull-out torque has a closed form.</summary>
    internal bool Closed => form == CircuitForm.ConstantParameters && !anyDrop && !AnyDoubleCage;

    /// <summary>Whether any circuit of the batch has a double cage: there is no quick limit of its pull-out torque then.</summary>
    internal bool AnyDoubleCage => first.DoubleCage || second.DoubleCage;

    internal L PullOutNm(L frequencyHz, L lineV)
    {
        var phaseV = PhaseV(lineV);
        var torqueNm = PullOutNm(first, frequencyHz, phaseV);
        return both ? Worst(torqueNm, PullOutNm(second, frequencyHz, phaseV)) : torqueNm;
    }

    internal L LockedRotorNm(L frequencyHz, L lineV)
    {
        var phaseV = PhaseV(lineV);
        var torqueNm = LockedRotorNm(first, frequencyHz, phaseV);
        return both ? Worst(torqueNm, LockedRotorNm(second, frequencyHz, phaseV)) : torqueNm;
    }

    /// <summary>Breakdown torque without saturation and without a drop: never below pull-out torque, and quickly found.</summary>
    internal L UnsaturatedBreakdownNm(L frequencyHz, L lineV, bool withCore)
    {
        var phaseV = PhaseV(lineV);
        var torqueNm = UnsaturatedBreakdownNm(first, frequencyHz, phaseV, withCore);
        return both ? Worst(torqueNm, UnsaturatedBreakdownNm(second, frequencyHz, phaseV, withCore)) : torqueNm;
    }

    /// <summary>Phase voltage set where the law sets a line voltage.</summary>
    private L PhaseV(L lineV) => L.Smaller(lineV * perLineV, ceilingPhaseV);

    private L PullOutNm(in CircuitSet<L> circuits, L frequencyHz, L phaseV) => Closed
        ? ClosedPullOutNm(circuits, frequencyHz, phaseV)
        : PullOutLanes.PullOut(CircuitLanes<L>.At(circuits, frequencyHz), phaseV, dropV, anyDrop, form).TorqueNm;

    private L LockedRotorNm(in CircuitSet<L> circuits, L frequencyHz, L phaseV) => Closed
        ? ClosedLockedRotorNm(circuits, frequencyHz, phaseV)
        : PointLanes<L>.At(CircuitLanes<L>.At(circuits, frequencyHz), phaseV, dropV, anyDrop, L.All(1), form).TorqueNm;

    // The closed forms stand by themselves, so that all of each is compiled as one.
    private static L ClosedPullOutNm(in CircuitSet<L> circuits, L frequencyHz, L phaseV)
    {
        var circuit = CircuitLanes<L>.At(circuits, frequencyHz);
        return PullOutLanes.ClosedPullOut(circuit, phaseV).TorqueNm;
    }

    private static L ClosedLockedRotorNm(in CircuitSet<L> circuits, L frequencyHz, L phaseV)
    {
        var circuit = CircuitLanes<L>.At(circuits, frequencyHz);
        return PointLanes<L>.Constant(circuit, phaseV, L.All(1)).TorqueNm;
    }

    private static L UnsaturatedBreakdownNm(in CircuitSet<L> circuits, L frequencyHz, L phaseV, bool withCore)
    {
        var circuit = CircuitLanes<L>.At(circuits, frequencyHz);
        if (!withCore) circuit.CoreS = L.All(0);
        return PullOutLanes.BreakdownOfAnyCage(circuit, phaseV, circuit.B0).TorqueNm;
    }

    private L Worst(L a, L b) => largest ? L.Larger(a, b) : L.Smaller(a, b);
}

/// <summary>Line voltages of a law at several frequencies.</summary>
internal static class LawLanes
{
    internal static L LineV<L>(VoltsPerHertzCurve curve, L frequencyHz) where L : struct, ILanes<L>
    {
        Span<double> lanes = stackalloc double[L.Count];
        L.Store(frequencyHz, lanes, 0);
        for (var lane = 0; lane < L.Count; lane++) lanes[lane] = curve.LineVolts(lanes[lane]);
        return L.Load(lanes, 0);
    }
}

/// <summary>Breakdown torque without saturation, drop and core loss against frequency.</summary>
internal readonly struct UnsaturatedCurve<L>(DriveLanes<L> drive, VoltsPerHertzCurve curve) : ICurveLanes<L>
    where L : struct, ILanes<L>
{
    public L At(L frequencyHz) => drive.UnsaturatedBreakdownNm(frequencyHz, LawLanes.LineV(curve, frequencyHz), withCore: false);

    public L AtAll(double frequencyHz) =>
        drive.UnsaturatedBreakdownNm(L.All(frequencyHz), L.All(curve.LineVolts(frequencyHz)), withCore: false);
}
