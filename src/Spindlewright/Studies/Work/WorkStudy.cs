using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Motors.Heat;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Work;

/// <summary>Will it do it? The operations of the machine file against torque, heat, belt, arm and column.</summary>
/// <param name="Items">One an operation.</param>
public sealed record WorkStudy(IReadOnlyList<WorkResult> Items)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="heat">What heat allows.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>One result an operation.</returns>
    public static WorkStudy Of(DrillPress press, TorqueStudy torques, HeatStudy heat, Handbook handbook)
    {
        var data = press.Heating ?? HeatingData.Usual(handbook);
        var bench = new Bench(
            press, torques, heat, handbook, new(press, Side.Capability),
            new(new(press, data, Side.Capability), new(press, data, Side.Hazard)));
        return new([.. press.Work.Select(item => bench.Of(item))]);
    }

    /// <summary>What every operation is set against.</summary>
    private sealed record Bench(
        DrillPress Press, TorqueStudy Torques, HeatStudy Heat, Handbook Handbook, Drive Drive, Sided<HeatedMotor> Motors)
    {
        private const int MostHolesFollowed = 500;

        internal WorkResult Of(WorkItem item)
        {
            var factors = new TabulatedFactors(Handbook.Drilling);
            var cut = item.Cut(factors, Handbook);
            var whole = Of(item, cut, factors);
            // An arm that gives less than the feed asked for decides what the machine meets.
            return whole.Feed?.FeedPerRevolution is { } fed && fed < cut.Feed
                ? whole with
                {
                    AtArmFeed = Of(
                        item, OperationCut.Of(item.Operation with { Feed = fed }, factors, Handbook, item.Speed), factors),
                }
                : whole;
        }

        private WorkResult Of(WorkItem item, OperationCut cut, TabulatedFactors factors)
        {
            var feed = Operation.DrillsFromTable(item.Kind)
                ? HandFeed.Of(
                    factors, item.Material, item.Diameter, item.Condition, Press.Quill.SustainedThrust, item.Operation.Hole)
                : null;
            return new(item, cut, feed, ArmLimits(cut), [.. Torques.Spindle.Select(spindle => At(item, cut, spindle))]);
        }

        private List<WorkLimit> ArmLimits(OperationCut cut)
        {
            if (cut.Load?.Thrust is not { } thrust) return [];
            var quill = Press.Quill;
            List<WorkLimit> limits = [new("arm at the lever", thrust / quill.SustainedThrust)];
            if (quill.GreatestThrust is { } greatest) limits.Add(new("column", thrust / greatest));
            return limits;
        }

        private WorkAtBelt At(WorkItem item, OperationCut cut, SpindleTorques spindle)
        {
            var belt = spindle.Belt;
            var needed = cut.Load?.Torque ?? Torque.Zero;
            var (found, words) = FrequencyFor.Of(Press, Drive, belt, item.Speed, needed);
            if (found is not { } frequency)
                return new(belt, null, null, spindle.Bound, words) { Margin = null };
            var friction = Press.Spindle.FrictionTorque.Capability;
            Torque AtSpindle(double motorNm) => UnitMath.Max(
                Torque.Zero, belt.SpindleTorque(Torque.FromNewtonMeters(motorNm), Side.Capability) - friction);
            var (motorNm, limit, _) = TorqueStudy.ShortTimeAt(Press, Drive, frequency.Hertz);
            var available = AtSpindle(motorNm);
            var continuous = Heat.Spindle.First(each => each.Belt == belt).At(frequency).Continuous;
            var slip = Press.Belting?.SlipAtSpindle(belt, item.Speed * belt.Ratio);
            return new(belt, frequency, available, spindle.Bound, $"short-time limit: {limit}")
            {
                Margin = needed > Torque.Zero ? available / needed : null,
                Continuous = continuous,
                Stall = AtSpindle(Drive.LockedRotorNm(frequency.Hertz)),
                Slip = slip,
                Winding = Motors.Map(motor => Winding(item, cut, motor, frequency, (needed + friction) / (belt.Ratio * belt.Efficiency.Capability))),
                ClassLimit = Heat.Data.ClassLimit,
                Limits = BeltLimits(needed, available, continuous, slip),
                TapStop = TapStop.Of(Press, item, frequency),
                Spin = SpinAccuracy.Of(Press, item, belt, frequency, Handbook),
            };
        }

        private static List<WorkLimit> BeltLimits(Torque needed, Torque available, Torque continuous, BeltSlip? slip)
        {
            List<WorkLimit> limits = [new("short-time torque", Over(needed, available)), new("continuous torque", Over(needed, continuous))];
            if (slip is not null) limits.Add(new("belt slip", Over(needed, slip.Least)));
            return limits;
        }

        private static double Over(Torque needed, Torque has) =>
            needed <= Torque.Zero ? 0 : has > Torque.Zero ? needed / has : double.PositiveInfinity;

        /// <summary>Winding after the holes of the item in a row, from the temperature of the air; null where it stalls.</summary>
        private static Temperature? Winding(
            WorkItem item, OperationCut cut, HeatedMotor motor, Frequency frequency, Torque load)
        {
            var (cutting, rest) = cut.Time is { } time
                ? (time.Cutting, time.Handling + item.Pause)
                : (item.Pause, Duration.Zero);
            if (motor.Stage(frequency.Hertz, load.NewtonMeters, cutting) is not { } loaded
                || motor.Stage(frequency.Hertz, 0, rest) is not { } idle)
                return null;
            var cycle = new DutyCycle(motor.Body, [loaded, idle]);
            var (rise, highest) = (TemperatureDelta.Zero, TemperatureDelta.Zero);
            for (var hole = 0; hole < Math.Min(item.Holes, MostHolesFollowed); hole++)
            {
                var rises = cycle.Over(rise);
                (rise, highest) = (rises[^1], UnitMath.Max(highest, rises.Max()));
            }
            return motor.Air + highest;
        }
    }
}
