using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.SupplyAndBill;

/// <summary>Switching on, ramping up and slowing down.</summary>
internal static class SwitchingStudy
{
    /// <summary>No-load link over which a unit trips where it does not say.</summary>
    private const double TripOverHighestPeak = 1.2;

    internal static SwitchingOn On(DrillPress press, MotorFeed feed, Handbook handbook)
    {
        var (supply, circuit) = (press.Supply, feed.Circuit);
        var locked = CircuitSolver.Solve(circuit, circuit.RatedFrequency, circuit.RatedLineVoltage / Math.Sqrt(3), 1).Current;
        var peak = handbook.MotorFacts["first-half-cycle-peak"].Range().Value;
        var motors = InertiaOf(press).Map(inertia => Ramping(press, feed, inertia));
        return new(
            feed.Rectifier.ChargingPeak(supply.Highest, supply.Frequency, ElectricResistance.Zero),
            press.Inverter.ChargingResistance is { } charging
                ? feed.Rectifier.ChargingPeak(supply.Highest, supply.Frequency, charging)
                : null,
            locked, Interval.Of(peak.Least * locked.Amperes, peak.Most * locked.Amperes),
            motors.Map(motor => motor?.Current),
            motors.Map(motor => motor is null ? (ElectricCurrent?)null : feed.Input(motor).Current));
    }

    internal static IReadOnlyList<SlowingDown> Down(DrillPress press, MotorFeed feed)
    {
        var (atBase, highest) = (press.Inverter.Curve.BaseFrequency, press.Inverter.HighestFrequency);
        return [.. new[] { UnitMath.Min(atBase, highest), highest }.Distinct().Select(from => From(press, feed, from))];
    }

    /// <summary>Inertia at the motor shaft: much is the high figures on the fastest position, little the low ones on the slowest.</summary>
    private static Sided<MassMomentOfInertia> InertiaOf(DrillPress press)
    {
        var contact = press.ContactOrUsual;
        return new(
            contact.AtMotor(press.Belts.Min(belt => belt.Ratio), Side.Hazard), contact.AtMotor(press.Belts.Max(belt => belt.Ratio), Side.Capability));
    }

    /// <summary>The motor at the end of the acceleration ramp, speeding up its inertia and nothing else.</summary>
    private static OperatingPoint? Ramping(DrillPress press, MotorFeed feed, MassMomentOfInertia inertia)
    {
        var speed = feed.Circuit.SynchronousSpeedAt(press.Inverter.Curve.BaseFrequency).RadiansPerSecond;
        var torque = inertia.KilogramSquareMeters * speed / press.Inverter.Ramps.Acceleration.Seconds;
        return feed.OnInverter(press.Inverter.Curve.BaseFrequency, Torque.FromNewtonMeters(torque));
    }

    private static SlowingDown From(DrillPress press, MotorFeed feed, Frequency from)
    {
        var energy = InertiaOf(press).Map(inertia => Hazards.RunDown.EnergyOf(inertia, feed.Circuit.SynchronousSpeedAt(from)));
        var factor = DcLink.PeakOverRms(press.Inverter.Link.Doubler);
        var (nominal, highest) = (press.Supply.Nominal * factor, press.Supply.Highest * factor);
        var trip = press.Inverter.LinkTrip ?? highest * TripOverHighestPeak;
        var room = LinkRise.Room(feed.AcrossLink, highest, trip);
        // What the unloaded motor loses while it slows down; at half the speed, as a mean over the ramp.
        var lossW = (feed.OnInverter(from / 2, Torque.Zero)?.Input.Watts ?? 0) + press.Inverter.Losses.Hazard.Standby.Watts;
        return new(
            from, energy, energy.Map(all => LinkRise.After(nominal, feed.AcrossLink, all)), trip,
            energy.Map(all => Duration.FromSeconds(Math.Max(0, (all - room).Joules) / (double)lossW)),
            press.Inverter.Ramps.Deceleration * (from / press.Inverter.Curve.BaseFrequency));
    }
}
