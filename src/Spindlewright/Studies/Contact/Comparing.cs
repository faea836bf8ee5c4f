using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>Makes comparisons over all belt positions and frequencies.</summary>
internal sealed class Comparing(SurfaceForceStudy forces, Handbook handbook)
{
    internal ContactComparison Force(string key, string words, string surface, Func<ForcesAtSurface, SideBySide<Force>> force, bool turning)
    {
        SideBySide<double> At(ForcePoint point) => force(On(point, surface)).Map(each => each.Newtons);
        var largest = All.MaxBy(each => At(each.Point).Bound).Point;
        var inertia = turning && InertiaTermLeads(On(largest, surface).Steady.Bound.Newtons, At(largest).Bound);
        return Make(
            key, words, point => At(point).Bound, point => At(point).AsModelled, inertia ? "inertia and speed" : "torque", !turning);
    }

    /// <summary>In F = Fd + √(Fd² + k·μ·v²) the moving mass leads where k·μ·v² is above Fd².</summary>
    private static bool InertiaTermLeads(double drivingN, double largestN) => largestN > (1 + Math.Sqrt(2)) * drivingN;

    /// <summary>Moment on a forearm that is held at its end: pull at the roll times its length.</summary>
    internal ContactComparison Moment(string key, Length forearm)
    {
        double At(ForcePoint point, Func<SideBySide<Force>, Force> which) => which(On(point, "wrapped roll").Steady).Newtons * forearm.Meters;
        return Make(key, FormattableString.Invariant($"pull at the wrapped roll across a forearm of {forearm.Millimeters:0} mm"), point => At(point, each => each.Bound), point => At(point, each => each.AsModelled), "torque", true);
    }

    internal ContactComparison SurfaceSpeed(string key) => Make(
        key, "speed of the chuck's surface", point => point.Speed.RadiansPerSecond * On(point, "chuck body").Surface.Diameter.Meters / 2 * 60, null, "speed", false);

    internal ContactComparison HeldAt(string key, string words, Length radius) => Make(
        key, words, point => point.Torque.Bound.NewtonMeters / radius.Meters,
        point => point.Torque.AsModelled.NewtonMeters / radius.Meters, "torque", true);

    internal ContactComparison Energy(string key, string words, LoosePlate plate) => Make(
        key, words, point => point.Energy.Joules + RunDown.EnergyOf(plate.Inertia, point.Speed).Joules, null, "inertia and speed", false);

    internal ContactComparison TrainEnergy(string key) =>
        Make(key, "energy of the drive train", point => point.Energy.Joules, null, "inertia and speed", false);

    internal ContactComparison StopTime(Duration stop) => Make("run-down", "measured time to standstill", _ => stop.Seconds, null, "inertia and speed", false);

    /// <summary>Fastest speed against a limit that the owner gave.</summary>
    internal ContactComparison OverLimit(SpeedLimit limit)
    {
        var row = new InjuryRow(
            "own-limit", limit.Name, null, limit.Speed.RevolutionsPerMinute, null, null, "r/min", "highest speed that it is made for", "", Citation.Yours());
        double Rpm(ForcesAtBelt belt, ForcePoint point) => point.Speed.RevolutionsPerMinute * (limit.TurnsWithMotor ? belt.Belt.Ratio : 1);
        var past = All.Where(each => Rpm(each.Belt, each.Point) > Figure(row)).Select(each => each.Point.Speed).ToList();
        return new("fastest speed of any belt position, unloaded", All.Max(each => Rpm(each.Belt, each.Point)), null, row, past.Count == 0 ? null : past.Min(), "speed");
    }

    /// <summary>Pull of the belt at the smallest motor pulley by the motor's bound.</summary>
    internal ContactComparison BeltPull(string key)
    {
        double Radius(ForcesAtBelt belt) => belt.Belt.Pulleys.Count == 0 ? double.PositiveInfinity : belt.Belt.Pulleys[0].Driving.Meters / 2;
        double Pull(ForcesAtBelt belt, Torque spindle) => spindle.NewtonMeters / belt.Belt.Ratio / Radius(belt);
        var value = forces.Belts.Max(belt => Pull(belt, belt.Bound));
        var row = handbook.Injury[key];
        return new(
            "pull of a belt at the motor's pulley", value, forces.Belts.Max(belt => belt.Points.Max(point => Pull(belt, point.Torque.AsModelled))), row,
            value > Figure(row) ? RotationalSpeed.Zero : null, "torque");
    }

    private IEnumerable<(ForcesAtBelt Belt, ForcePoint Point)> All => forces.Belts.SelectMany(belt => belt.Points.Select(point => (belt, point)));

    private static ForcesAtSurface On(ForcePoint point, string surface) => point.Surfaces.Single(each => each.Surface.Name == surface);

    private static double Figure(InjuryRow row) => (row.Low ?? row.Value ?? row.High)!.Value;

    private ContactComparison Make(
        string key, string words, Func<ForcePoint, double> value, Func<ForcePoint, double>? asModelled, string dominates, bool atStandstill)
    {
        var row = handbook.Injury[key];
        var past = All.Where(each => value(each.Point) > Figure(row)).Select(each => each.Point.Speed).ToList();
        return new(
            words, All.Max(each => value(each.Point)), asModelled is null ? null : All.Max(each => asModelled(each.Point)), row,
            past.Count == 0 ? null : atStandstill ? RotationalSpeed.Zero : past.Min(), dominates)
        {
            ModelledFirstExceeded = asModelled is null ? null : All.Where(each => asModelled(each.Point) > Figure(row))
                .Select(each => (RotationalSpeed?)each.Point.Speed).Min(speed => speed),
        };
    }
}
