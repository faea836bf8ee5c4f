using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>Makes comparisons over all belt positions and every speed that they pass through from standstill.</summary>
/// <remarks>
/// What is compared is a function of belt position, torque and speed that falls with neither. With the bound, which holds at every
/// frequency, it is largest at the fastest speed of a position, and the speed at which it first exceeds a figure is one root. The modelled
/// torque is known at the frequencies of the grid, between which the first speed is interpolated.
/// </remarks>
internal sealed class Comparing(SurfaceForceStudy forces, Handbook handbook)
{
    /// <summary>What is compared, in the unit of the published figure.</summary>
    private delegate double Compared(ForcesAtBelt belt, Torque torque, RotationalSpeed speed);

    internal ContactComparison Force(string key, string words, string surface, Func<ForcesAtSurface, SideBySide<Force>> force)
    {
        ForcesAtSurface On(ForcesAtBelt belt, Torque torque, RotationalSpeed speed) => SurfaceForceStudy.At(
            SurfaceNamed(belt, surface), new(torque, torque, torque, torque), belt.Inertia, speed, forces.Body);
        double Newtons(ForcesAtBelt belt, Torque torque, RotationalSpeed speed) => force(On(belt, torque, speed)).Bound.Newtons;
        var largest = forces.Belts.MaxBy(belt => Newtons(belt, belt.Bound, belt.Fastest))!;
        var steady = On(largest, largest.Bound, largest.Fastest).Steady.Bound.Newtons;
        return Make(
            key, words, Newtons,
            InertiaTermLeads(steady, Newtons(largest, largest.Bound, largest.Fastest)) ? "inertia and speed" : "torque");
    }

    /// <summary>In F = Fd + √(Fd² + k·μ·v²) the moving mass leads where k·μ·v² is above Fd².</summary>
    private static bool InertiaTermLeads(double drivingN, double largestN) => largestN > (1 + Math.Sqrt(2)) * drivingN;

    /// <summary>Moment on a forearm that is held at its end: pull at the roll times its length.</summary>
    internal ContactComparison Moment(string key, Length forearm) => Make(
        key, FormattableString.Invariant($"pull at the wrapped roll across a forearm of {forearm.Millimeters:0} mm"),
        (belt, torque, _) => torque.NewtonMeters / (SurfaceNamed(belt, "wrapped roll").Diameter.Meters / 2) * forearm.Meters, "torque");

    internal ContactComparison SurfaceSpeed(string key) => Make(
        key, "speed of the chuck's surface",
        (belt, _, speed) => speed.RadiansPerSecond * SurfaceNamed(belt, "chuck body").Diameter.Meters / 2 * 60, "speed", withTorque: false);

    internal ContactComparison HeldAt(string key, string words, Length radius) =>
        Make(key, words, (_, torque, _) => torque.NewtonMeters / radius.Meters, "torque");

    internal ContactComparison Energy(string key, string words, LoosePlate plate) => Make(
        key, words, (belt, _, speed) => RunDown.EnergyOf(belt.Inertia + plate.Inertia, speed).Joules, "inertia and speed", withTorque: false);

    internal ContactComparison TrainEnergy(string key) => Make(
        key, "energy of the drive train", (belt, _, speed) => RunDown.EnergyOf(belt.Inertia, speed).Joules, "inertia and speed", withTorque: false);

    /// <summary>A measured stop time holds for the fastest speed in use: no lower speed can be named.</summary>
    internal ContactComparison StopTime(Duration stop)
    {
        var row = handbook.Injury["run-down"];
        var first = stop.Seconds > Figure(row) ? forces.Belts.Max(belt => belt.Fastest) : (RotationalSpeed?)null;
        return new("measured time to standstill", stop.Seconds, null, row, first, "inertia and speed");
    }

    /// <summary>Fastest speed against a limit that the owner gave.</summary>
    internal ContactComparison OverLimit(SpeedLimit limit)
    {
        var row = new InjuryRow(
            "own-limit", limit.Name, null, limit.Speed.RevolutionsPerMinute, null, null, "r/min", "highest speed that it is made for", "", Citation.Yours());
        return Make(
            row, "fastest speed of any belt position, unloaded",
            (belt, _, speed) => speed.RevolutionsPerMinute * (limit.TurnsWithMotor ? belt.Belt.Ratio : 1), "speed", withTorque: false);
    }

    /// <summary>Pull of the belt at the first motor pulley by the motor's torque.</summary>
    internal ContactComparison BeltPull(string key) => Make(
        key, "pull of a belt at the motor's pulley",
        (belt, torque, _) => belt.Belt.Pulleys is [var first, ..] ? torque.NewtonMeters / belt.Belt.Ratio / (first.Driving.Meters / 2) : 0, "torque");

    private static Surface SurfaceNamed(ForcesAtBelt belt, string name) =>
        belt.Points[0].Surfaces.Single(each => each.Surface.Name == name).Surface;

    private static double Figure(InjuryRow row) => (row.Low ?? row.Value ?? row.High)!.Value;

    private ContactComparison Make(string key, string words, Compared value, string dominates, bool withTorque = true) =>
        Make(handbook.Injury[key], words, value, dominates, withTorque);

    private ContactComparison Make(InjuryRow row, string words, Compared value, string dominates, bool withTorque)
    {
        double Modelled(ForcesAtBelt belt, ForcePoint point) => value(belt, point.Torque.AsModelled, point.Speed);
        return new(
            words, forces.Belts.Max(belt => value(belt, belt.Bound, belt.Fastest)),
            withTorque ? forces.Belts.Max(belt => belt.Points.Max(point => Modelled(belt, point))) : null, row,
            forces.Belts.Min(belt => FirstByBound(belt, value, Figure(row))), dominates)
        {
            ModelledFirstExceeded = withTorque ? forces.Belts.Min(belt => FirstAsModelled(belt, value, Figure(row))) : null,
        };
    }

    private static RotationalSpeed? FirstByBound(ForcesAtBelt belt, Compared value, double figure)
    {
        double Excess(double rpm) => value(belt, belt.Bound, RotationalSpeed.FromRevolutionsPerMinute(rpm)) - figure;
        var fastest = belt.Fastest.RevolutionsPerMinute;
        if (Excess(0) > 0) return RotationalSpeed.Zero;
        return Excess(fastest) <= 0 ? null : RotationalSpeed.FromRevolutionsPerMinute(Brent.FindRoot(Excess, 0, fastest, 1e-9, 200));
    }

    private static RotationalSpeed? FirstAsModelled(ForcesAtBelt belt, Compared value, double figure)
    {
        // At the lowest frequency the spindle starts from standstill with the torque that it has there.
        if (value(belt, belt.Points[0].Torque.AsModelled, RotationalSpeed.Zero) > figure) return RotationalSpeed.Zero;
        var (below, at) = (0.0, RotationalSpeed.Zero);
        foreach (var point in belt.Points)
        {
            var here = value(belt, point.Torque.AsModelled, point.Speed);
            if (here > figure) return at + (point.Speed - at) * ((figure - below) / (here - below));
            (below, at) = (here, point.Speed);
        }
        return null;
    }
}
