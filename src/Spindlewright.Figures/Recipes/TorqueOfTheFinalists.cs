using System.Collections.Immutable;
using Spindlewright.Figures.Catalogue;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Sizing;
using Spindlewright.Studies.Torques;
using static System.FormattableString;

namespace Spindlewright.Figures.Recipes;

/// <summary>Short-time torque at the spindle against its speed, for the machine recommended and those beside it, with what the work asks.</summary>
public sealed class TorqueOfTheFinalists : IFigureRecipe<StudyResults>
{
    private const int Speeds = 60;

    /// <inheritdoc/>
    public string Id => "torque-of-finalists";

    /// <inheritdoc/>
    public string Name => "torque of finalists";

    /// <inheritdoc/>
    public string Description => "What torque have the machines that are left, at which speeds, and what does the work ask?";

    /// <inheritdoc/>
    public bool AppliesTo(StudyResults results) => results.Sizing is { } study && Converted(study).Any();

    /// <inheritdoc/>
    public Figure Make(StudyResults results)
    {
        var study = results.Sizing!;
        Role[] roles = [Role.AsModelled, Role.IdealBoost, Role.Continuous, Role.LockedRotor];
        var marks = ImmutableArray.CreateBuilder<Mark>();
        foreach (var (place, finalist) in Converted(study).Index())
        {
            var torques = TorqueStudy.Of(finalist.Result.Candidate.Machine(results.Press));
            var (speeds, shortTime) = Envelope(torques);
            marks.Add(new Curve(roles[place % roles.Length], speeds, shortTime, finalist.Role, legend: finalist.Role));
            if (place == 0)
                marks.Add(new Curve(
                    Role.Bound, [speeds[0], speeds[^1]], [finalist.Result.Bound.NewtonMeters, finalist.Result.Bound.NewtonMeters], finalist.Role,
                    legend: "bound, recommended"));
        }
        var needed = study.Demands.Where(demand => demand.Torque.NewtonMeters > 0.01).ToList();
        if (needed.Count > 0)
            marks.Add(new Points(
                Role.Demand, [.. needed.Select(demand => demand.Wanted.RevolutionsPerMinute)], [.. needed.Select(demand => demand.Torque.NewtonMeters)], "the work"));
        if (results.Before is { } before)
            marks.Add(new Points(
                Role.AsFound, [.. before.Belts.Select(belt => belt.Speed.RevolutionsPerMinute)], [.. before.Belts.Select(belt => belt.RatedTorque.NewtonMeters)], "as found",
                legend: "rated torque as found"));
        return new(
            Id, "Short-time torque of the finalists by spindle speed", new Axis("spindle speed", "r/min", AxisScale.Logarithmic),
            new Axis("torque at the spindle", "N·m", AxisScale.Logarithmic), marks.ToImmutable(), sources: [StudyMarks.OwnModel],
            notes:
            [
                "Short-time torque of the best belt position at each unloaded speed, low side: 1.6 times rated, 0.75 of pull-out and the current limit, whichever is least.",
                string.Join(" ", Converted(study).Select(each => Invariant($"{each.Role.WithCapital()}: {each.Result.Candidate.Words}, bound {each.Result.Bound.NewtonMeters:0.0} N·m."))),
            ],
            cautions: [StudyMarks.TorqueCaution]);
    }

    internal static IEnumerable<Finalist> Converted(SizingStudy study) =>
        study.Recommendation.Finalists.Where(each => each.Result.Candidate.Kind == CandidateKind.Converted);

    /// <summary>The most over the belt positions at each of many speeds.</summary>
    private static (ImmutableArray<double> SpeedsRpm, ImmutableArray<double> TorqueNm) Envelope(TorqueStudy torques)
    {
        var lowest = torques.Spindle.Min(spindle => spindle.Points[0].SynchronousSpeed.RevolutionsPerMinute);
        var highest = torques.Spindle.Max(spindle => spindle.Points[^1].SynchronousSpeed.RevolutionsPerMinute);
        ImmutableArray<double> speeds = [.. Enumerable.Range(0, Speeds).Select(i => lowest * Math.Pow(highest / lowest, i / (Speeds - 1.0)))];
        return (speeds, [.. speeds.Select(rpm => torques.Spindle.Max(spindle => At(spindle, rpm))).Select(nm => nm >= 0.01 ? nm : double.NaN)]);
    }

    private static double At(SpindleTorques spindle, double rpm)
    {
        var points = spindle.Points;
        for (var upper = 1; upper < points.Count; upper++)
        {
            var (low, high) = (points[upper - 1].SynchronousSpeed.RevolutionsPerMinute, points[upper].SynchronousSpeed.RevolutionsPerMinute);
            if (rpm < low * (1 - 1e-9) || rpm > high * (1 + 1e-9)) continue;
            var (from, to) = (points[upper - 1].ShortTime.NewtonMeters, points[upper].ShortTime.NewtonMeters);
            return from + (to - from) * (rpm - low) / (high - low);
        }
        return 0;
    }
}
