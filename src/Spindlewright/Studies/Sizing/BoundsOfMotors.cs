using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors.Batches;
using Spindlewright.Studies.Batches;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>No-credit bounds at the motor shaft of all motors under every law and pair of limits: what <see cref="Torques.TorqueBound"/> finds for one machine.</summary>
internal sealed class BoundsOfMotors
{
    private readonly Dictionary<(MotorChoice, LawChoice, FrequencyLimits), double> boundsNm = new(ByReference.Instance);

    internal BoundsOfMotors(DrillPress press, CandidateSpace space, Func<Candidate, TabulatedMotor> motorOf, CancellationToken cancellation)
    {
        var converted = space.Candidates.Where(each => each.Motor is not null).ToList();
        var settings = converted.Select(each => (Law: each.Law!, Limits: each.Limits!.Value)).Distinct().ToList();
        // Single cages have closed forms, which one double cage among them would cost all of them.
        var groups = converted.DistinctBy(each => each.Motor, ReferenceEqualityComparer.Instance).GroupBy(each => IsDouble(each.Motor!))
            .Select(group => new Batch(press, [.. group.Select(each => each.Motor!)], [.. group.Select(motorOf)])).ToList();
        var works = (from batch in groups from setting in settings select (Batch: batch, setting.Law, setting.Limits)).ToList();
        var found = new double[works.Count][];
        Parallel.For(0, works.Count, new ParallelOptions { CancellationToken = cancellation }, place =>
            found[place] = works[place].Batch.Bounds(works[place].Law, works[place].Limits));
        foreach (var (place, work) in works.Index())
            foreach (var (row, motor) in work.Batch.Motors.Index())
                boundsNm[(motor, work.Law, work.Limits)] = found[place][row];
    }

    /// <summary>The bound at the spindle of the position with the largest ratio.</summary>
    internal Torque AtSlowest(DrillPress press, Candidate candidate) => candidate.Kind == CandidateKind.Converted
        ? Torque.FromNewtonMeters(boundsNm[(candidate.Motor!, candidate.Law!, candidate.Limits!.Value)] * candidate.Pulleys.Slowest.Ratio)
        : Before.BeforeStudy.BoundOf(press, press.AsFound!, candidate.Pulleys.Slowest);

    private static bool IsDouble(MotorChoice motor) => motor.Motor.Circuit.Hazard.Si.CageRise != 0 || motor.Motor.Circuit.Capability.Si.CageRise != 0;

    /// <summary>Motors of one kind of cage, laid out once for all settings.</summary>
    private sealed class Batch
    {
        private readonly DrillPress press;
        private readonly TabulatedMotor[] tabulated;
        private readonly IReadOnlyList<CircuitColumns> columns, others;
        private readonly CircuitForm form;
        private readonly double[] supplyFactor, plateNm;

        internal Batch(DrillPress press, MotorChoice[] motors, TabulatedMotor[] tabulated)
        {
            (this.press, Motors, this.tabulated) = (press, motors, tabulated);
            (columns, others) = (BothTemperatures(Side.Hazard), BothTemperatures(Side.Capability));
            form = motors.Any(each => each.Motor.Circuit.Hazard.Saturation > 0 || each.Motor.Circuit.Capability.Saturation > 0)
                ? CircuitForm.Saturated : CircuitForm.ConstantParameters;
            var supply = press.Supply.Highest / press.Supply.Nominal;
            supplyFactor = [.. motors.Select(_ => supply * supply)];
            plateNm = [.. motors.Select(each => (each.Motor.BreakdownTorqueForBound ?? 0) * each.Motor.RatedTorque.NewtonMeters)];
        }

        internal MotorChoice[] Motors { get; }

        internal double[] Bounds(LawChoice law, FrequencyLimits limits)
        {
            var drives = new DriveColumns(press.Inverter.Set(limits.Lowest, limits.Highest, law.Curve), Side.Hazard, form, columns);
            for (var place = 0; place < tabulated.Length; place++)
                (drives.LinkFactor.Span[place], drives.CeilingPhaseV.Span[place]) =
                    (tabulated[place].Drives.Hazard.LinkFactor, tabulated[place].Drives.Hazard.CeilingPhaseV);
            var found = new double[tabulated.Length];
            BoundBatch.Of(drives, others, supplyFactor, plateNm, found, BatchRun.OneCore);
            return found;
        }

        private IReadOnlyList<CircuitColumns> BothTemperatures(Side side) =>
            [new([.. tabulated.Select(motor => motor.Cold(side))]), new([.. tabulated.Select(motor => motor.Hot(side))])];
    }

    /// <summary>Motors and laws are told apart as objects: their figures are many, and comparing them all costs more than solving.</summary>
    private sealed class ByReference : IEqualityComparer<(MotorChoice Motor, LawChoice Law, FrequencyLimits Limits)>
    {
        internal static ByReference Instance { get; } = new();

        public bool Equals((MotorChoice Motor, LawChoice Law, FrequencyLimits Limits) one, (MotorChoice Motor, LawChoice Law, FrequencyLimits Limits) other) =>
            ReferenceEquals(one.Motor, other.Motor) && ReferenceEquals(one.Law, other.Law) && one.Limits == other.Limits;

        public int GetHashCode((MotorChoice Motor, LawChoice Law, FrequencyLimits Limits) key) => HashCode.Combine(
            System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Motor), System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Law), key.Limits);
    }
}
