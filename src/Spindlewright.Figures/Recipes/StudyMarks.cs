using System.Collections.Immutable;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Figures.Recipes;

/// <summary>Words and conversions that several recipes use.</summary>
internal static class StudyMarks
{
    internal const string TorqueCaution =
        "The bound is what a hand or a loose workpiece could meet; the modelled torque is not a limit on it. "
        + "A setting of boost or a vector mode takes the modelled loss away.";

    /// <summary>Least torque drawn on a logarithmic axis; below it a curve has a gap.</summary>
    private const double LeastDrawnNm = 0.01;

    internal static string Position(string name) => $"belt position {name}";

    internal static ImmutableArray<double> Values<T>(IEnumerable<T> points, Func<T, double> value) =>
        [.. points.Select(value)];

    /// <summary>Torques for a logarithmic axis, on which zero has no place.</summary>
    internal static ImmutableArray<double> LogTorques<T>(IEnumerable<T> points, Func<T, double> torqueNm) =>
        [.. points.Select(torqueNm).Select(value => value >= LeastDrawnNm ? value : double.NaN)];

    /// <summary>The bound at the motor shaft, the same at every frequency.</summary>
    internal static Rule MotorBound(StudyResults results) =>
        new(Role.Bound, RuleDirection.Level, results.Torques.Bound.Motor.NewtonMeters, "bound");

    /// <summary>The bound of a belt position over its speeds.</summary>
    internal static Curve SpindleBound(BeltPosition belt, Torque bound, ImmutableArray<double> speedsRpm) => new(
        Role.Bound, [speedsRpm[0], speedsRpm[^1]], [bound.NewtonMeters, bound.NewtonMeters], Position(belt.Name),
        $"position {belt.Name}");

    internal static ImmutableArray<double> SpeedsRpm(SpindleTorques spindle) =>
        Values(spindle.Points, at => at.SynchronousSpeed.RevolutionsPerMinute);

    /// <summary>A torque of both sides over frequency; at one temperature the sides may change places.</summary>
    internal static Band BothSides<T>(
        Role role, IReadOnlyList<T> points, Func<T, Frequency> frequency, Func<T, Sided<Torque>> torque, string legend) => new(
        role, Values(points, at => frequency(at).Hertz),
        Values(points, at => Math.Min(torque(at).Capability.NewtonMeters, torque(at).Hazard.NewtonMeters)),
        Values(points, at => Math.Max(torque(at).Capability.NewtonMeters, torque(at).Hazard.NewtonMeters)), legend: legend);

    internal static SourceNote OwnModel { get; } =
        new("this-project", "this project's model of the machine described", Provenance.OwnArithmetic);
}
