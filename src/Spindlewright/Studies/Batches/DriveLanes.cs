using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Motors.Batches;

namespace Spindlewright.Studies.Batches;

/// <summary>Drives of several samples, one a lane: what <see cref="Machines.Drive"/> is for one.</summary>
internal readonly struct DriveLanes<L> where L : struct, ILanes<L>
{
    private readonly DriveColumns drives;
    private readonly Group group;
    private readonly L perLineV, ceilingPhaseV, dropV;
    private readonly bool anyDrop;

    /// <param name="drives">The drives.</param>
    /// <param name="group">The samples.</param>
    /// <param name="anyDrop">Whether any sample of the batch has a drop, so that a sample's formulas never hang on its neighbours.</param>
    internal DriveLanes(DriveColumns drives, in Group group, bool anyDrop)
    {
        (this.drives, this.group, this.anyDrop) = (drives, group, anyDrop);
        perLineV = group.LoadCircuits<L>(drives.LinkFactor.Span) * L.All(1 / Math.Sqrt(3));
        ceilingPhaseV = group.LoadCircuits<L>(drives.CeilingPhaseV.Span);
        dropV = group.LoadCircuits<L>(drives.DropV.Span);
    }

    /// <summary>Phase voltage set where the law sets a line voltage.</summary>
    internal L PhaseV(L lineV) => L.Smaller(lineV * perLineV, ceilingPhaseV);

    internal L PullOutNm(L frequencyHz, L lineV)
    {
        var (phaseV, found) = (PhaseV(lineV), L.All(0));
        for (var column = 0; column < drives.Circuits.Count; column++)
        {
            var circuit = CircuitLanes<L>.At(drives.Circuits[column], group, frequencyHz, drives.Form);
            found = Worst(column, found, PullOutLanes.PullOut(circuit, phaseV, dropV, anyDrop, drives.Form).TorqueNm);
        }
        return found;
    }

    internal L LockedRotorNm(L frequencyHz, L lineV)
    {
        var (phaseV, found) = (PhaseV(lineV), L.All(0));
        for (var column = 0; column < drives.Circuits.Count; column++)
        {
            var circuit = CircuitLanes<L>.At(drives.Circuits[column], group, frequencyHz, drives.Form);
            found = Worst(column, found, PointLanes<L>.At(circuit, phaseV, dropV, anyDrop, L.All(1), drives.Form).TorqueNm);
        }
        return found;
    }

    /// <summary>Breakdown torque without saturation and without a drop: never below pull-out torque, and quickly found.</summary>
    internal L UnsaturatedBreakdownNm(L frequencyHz, L lineV, bool withCore)
    {
        var (phaseV, found) = (PhaseV(lineV), L.All(0));
        for (var column = 0; column < drives.Circuits.Count; column++)
        {
            var circuit = CircuitLanes<L>.At(drives.Circuits[column], group, frequencyHz, CircuitForm.Saturated);
            if (!withCore) circuit.CoreS = L.All(0);
            found = Worst(column, found, PullOutLanes.Breakdown(circuit, phaseV, circuit.B0).TorqueNm);
        }
        return found;
    }

    private L Worst(int column, L before, L torqueNm) =>
        column == 0 ? torqueNm : drives.Side == Side.Hazard ? L.Larger(before, torqueNm) : L.Smaller(before, torqueNm);
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

/// <summary>Locked-rotor torque against frequency.</summary>
internal readonly struct LockedRotorCurve<L>(DriveLanes<L> drive, VoltsPerHertzCurve curve) : ICurveLanes<L>
    where L : struct, ILanes<L>
{
    public L At(L frequencyHz) => drive.LockedRotorNm(frequencyHz, LawLanes.LineV(curve, frequencyHz));
}

/// <summary>Breakdown torque without saturation, drop and core loss against frequency.</summary>
internal readonly struct UnsaturatedCurve<L>(DriveLanes<L> drive, VoltsPerHertzCurve curve) : ICurveLanes<L>
    where L : struct, ILanes<L>
{
    public L At(L frequencyHz) => drive.UnsaturatedBreakdownNm(frequencyHz, LawLanes.LineV(curve, frequencyHz), withCore: false);
}
