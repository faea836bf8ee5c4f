using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>No-credit bounds at the motor shaft of all motors under every law and pair of limits.</summary>
internal sealed class BoundsOfMotors
{
    private readonly Dictionary<MotorChoice, int> places;
    private readonly Dictionary<(LawChoice, FrequencyLimits), double[]> boundsNm;

    internal BoundsOfMotors(DrillPress press, CandidateSpace space, Func<Candidate, TabulatedMotor> motorOf, CancellationToken cancellation)
    {
        places = space.Motors.Index().ToDictionary(each => each.Item, each => each.Index, (IEqualityComparer<MotorChoice>)ReferenceEqualityComparer.Instance);
        var motors = new TabulatedMotor[space.Motors.Count];
        foreach (var candidate in space.Candidates.Where(each => each.Motor is not null).DistinctBy(each => each.Motor))
            motors[places[candidate.Motor!]] = motorOf(candidate);
        var settings = space.Candidates.Where(each => each.Motor is not null).Select(each => (each.Law!, each.Limits!.Value)).Distinct().ToList();
        var columns = Side.Hazard.BothTemperatures(motors);
        var others = Side.Capability.BothTemperatures(motors);
        var found = new double[settings.Count][];
        var supply = press.Supply.Highest / press.Supply.Nominal;
        double[] supplyFactor = [.. motors.Select(_ => supply * supply)];
        double[] plateNm = [.. space.Motors.Select(each => (each.Motor.BreakdownTorqueForBound ?? 0) * each.Motor.RatedTorque.NewtonMeters)];
        Parallel.For(0, settings.Count, new ParallelOptions { CancellationToken = cancellation }, setting =>
        {
            var (law, limits) = settings[setting];
            var form = space.Motors.Any(each => each.Motor.Circuit.Hazard.Saturation > 0) ? CircuitForm.Saturated : CircuitForm.ConstantParameters;
            var drives = new DriveColumns(press.Inverter.Set(limits.Lowest, limits.Highest, law.Curve), Side.Hazard, form, columns);
            for (var place = 0; place < motors.Length; place++)
                (drives.LinkFactor.Span[place], drives.CeilingPhaseV.Span[place]) =
                    (motors[place].Drives.Hazard.LinkFactor, motors[place].Drives.Hazard.CeilingPhaseV);
            found[setting] = new double[motors.Length];
            BoundBatch.Of(drives, others, supplyFactor, plateNm, found[setting], BatchRun.OneCore);
        });
        boundsNm = settings.Index().ToDictionary(each => each.Item, each => found[each.Index]);
    }

    /// <summary>The bound at the spindle of the position with the largest ratio.</summary>
    internal Torque AtSlowest(DrillPress press, Candidate candidate) => candidate.Kind == CandidateKind.Converted
        ? Torque.FromNewtonMeters(boundsNm[(candidate.Law!, candidate.Limits!.Value)][places[candidate.Motor!]] * candidate.Pulleys.Slowest.Ratio)
        : Before.BeforeStudy.BoundOf(press, press.AsFound!, candidate.Pulleys.Slowest);
}

/// <summary>Columns of circuits for one side.</summary>
internal static class CircuitsOfSide
{
    internal static IReadOnlyList<CircuitColumns> BothTemperatures(this Side side, IReadOnlyList<TabulatedMotor> motors) =>
        [new([.. motors.Select(motor => motor.Cold(side))]), new([.. motors.Select(motor => motor.Hot(side))])];
}
