using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Motors;
using Spindlewright.Machines;
using Spindlewright.Studies.Overpowering;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>Turns what was screened into measures.</summary>
internal sealed class ResultBuilder(
    DrillPress press, SizingWishes wishes, Handbook handbook, IReadOnlyList<WorkDemand> demands, IReadOnlyList<Requirement> requirements,
    CandidateEvaluator evaluator, BoundsOfMotors bounds)
{
    private readonly IReadOnlyList<DrillLadder> ladders = DrillLadder.Of(press, handbook);

    /// <summary>What a strong hand can put on the chuck body.</summary>
    internal Torque StrongHand { get; } = HandStrength.OfHandbook(handbook).At(press.Person.StrongPercentile, press.Spindle.ChuckDiameter);

    internal IReadOnlyList<DrillLadder> Ladders => ladders;

    /// <summary>Costs in the order of <see cref="Measure.All"/>, low side, less being better.</summary>
    /// <param name="screening">What was screened.</param>
    /// <param name="place">Place of the candidate.</param>
    /// <param name="candidate">The candidate.</param>
    /// <param name="counts">Which operations count.</param>
    /// <param name="withPrice">Whether prices are compared.</param>
    internal double[] Costs(Screening screening, int place, Candidate candidate, Func<int, bool> counts, bool withPrice) =>
    [
        -screening.WorstMargin(place, counts), -Coverage.Of(press, candidate, evaluator, wishes, demands).Share.Least,
        -ladders.Select(ladder => evaluator.LargestOf(candidate, ladder, Side.Capability)?.Millimeters ?? 0).DefaultIfEmpty(0).Average(),
        screening.Hottest(place, counts), candidate.Motor?.InputA.Most ?? double.NaN, EnergyJ(candidate, Side.Hazard),
        bounds.AtSlowest(press, candidate).NewtonMeters, candidate.Motor?.Build is { } build ? Most(build.Mass).Kilograms : double.NaN,
        withPrice ? candidate.Price ?? double.NaN : 0,
    ];

    internal CandidateResult Of(Screening screening, int place, Candidate candidate, Func<int, bool> counts)
    {
        var work = demands.Select((demand, item) => OfDemand(candidate, demand, screening.Discarded[place]
            ? evaluator.Of(candidate, item, Side.Capability) : screening.At(place, item), evaluator.Of(candidate, item, Side.Hazard))).ToList();
        var counted = work.Where((_, item) => counts(item)).ToList();
        var margins = counted.Select(each => each.Margin).OfType<Interval>().ToList();
        var windings = counted.Select(each => each.Winding).ToList();
        return new()
        {
            Candidate = candidate,
            Work = work,
            Tightest = counted.Where(each => each.Margin is not null).MinBy(each => each.Margin!.Value.Least),
            Unmet = [.. requirements.Where((_, requirement) => !screening.Meets(place, requirement))],
            Margin = margins.Count == 0 ? null : new(margins.Min(each => each.Least), margins.Min(each => each.Most)),
            Coverage = Coverage.Of(press, candidate, evaluator, wishes, demands),
            Drills = [.. ladders.Select(ladder => LargestOf(candidate, ladder))],
            Winding = windings.Count > 0 && windings.All(each => each is not null)
                ? (windings.Max(each => each!.Value.Cool), windings.Max(each => each!.Value.Hot)) : null,
            InputA = candidate.Motor?.InputA,
            EnergyJ = Interval.Of(EnergyJ(candidate, Side.Capability), EnergyJ(candidate, Side.Hazard)),
            Bound = bounds.AtSlowest(press, candidate),
            Crossing = new(Crossing(candidate, Side.Capability), Crossing(candidate, Side.Hazard)),
            MassKg = candidate.Motor?.Build is { } build ? Interval.Of(Least(build.Mass).Kilograms, Most(build.Mass).Kilograms) : null,
        };
    }

    /// <summary>On either side a drill may be lost that the other turns: the weaker motor also slips more, and so is not too fast.</summary>
    private LargestDrillOf LargestOf(Candidate candidate, DrillLadder ladder)
    {
        var (low, high) = (evaluator.LargestOf(candidate, ladder, Side.Capability), evaluator.LargestOf(candidate, ladder, Side.Hazard));
        return new(
            ladder.Material, ladder.Piloted, low is { } one && high is { } other && other < one ? other : low,
            low is { } least && (high is not { } most || most < least) ? low : high, ladder.Pushed);
    }

    private static DemandOutcome OfDemand(Candidate candidate, WorkDemand demand, in Outcome low, in Outcome high) => new(
        demand, low.Why, candidate.Pulleys.Belts[low.Belt], double.IsNaN(low.Hertz) ? null : Frequency.FromHertz(low.Hertz),
        RotationalSpeed.FromRevolutionsPerMinute(low.Rpm), Torque.FromNewtonMeters(low.AvailableNm),
        double.IsFinite(low.Margin) && double.IsFinite(high.Margin) && demand.Unmet is null
            ? new(Math.Min(low.Margin, high.Margin), Math.Max(low.Margin, high.Margin)) : null,
        double.IsFinite(low.WindingC) && double.IsFinite(high.WindingC)
            ? (Temperature.FromDegreesCelsius(high.WindingC), Temperature.FromDegreesCelsius(low.WindingC)) : null);

    /// <summary>½ (Jm + Js/i²) ω² at the highest motor speed that settings and speed limits allow, the most over the positions.</summary>
    private double EnergyJ(Candidate candidate, Side side)
    {
        var contact = press.ContactOrUsual;
        var motor = (candidate.Motor switch
        {
            null => MotorBuild.UsualInertia(press.AsFound!.Power, 4),
            { IsDescribed: true } => contact.MotorInertia,
            { Build: { } build } => build.Inertia,
            var other => MotorBuild.UsualInertia(other.Motor.RatedPower, other.Poles),
        }).On(side).KilogramSquareMeters;
        return candidate.Pulleys.Belts.Max(belt =>
        {
            var rpm = candidate.Kind == CandidateKind.Converted
                ? 120 * Math.Min(candidate.Limits!.Value.Highest.Hertz, evaluator.PermittedHertz(candidate, belt)) / candidate.Motor!.Poles
                : press.AsFound!.Speed.RevolutionsPerMinute;
            var speed = rpm * Math.PI / 30;
            return (motor + contact.SpindleInertia.On(side).KilogramSquareMeters / (belt.Ratio * belt.Ratio)) * speed * speed / 2;
        });
    }

    private RotationalSpeed? Crossing(Candidate candidate, Side side)
    {
        if (candidate.Kind != CandidateKind.Converted) return null;
        var belt = candidate.Pulleys.Slowest;
        var limitNm = (StrongHand.NewtonMeters + press.Spindle.FrictionTorque.On(side).NewtonMeters) / (belt.Ratio * belt.Efficiency.On(side));
        var top = Math.Min(candidate.Limits!.Value.Highest.Hertz, candidate.Law!.Curve.BaseFrequency.Hertz);
        var hertz = evaluator.Reader(candidate, side).FirstReachingHz(limitNm, candidate.Limits.Value.Lowest.Hertz, top);
        return double.IsInfinity(hertz) ? null : RotationalSpeed.FromRevolutionsPerMinute(120 * hertz / candidate.Motor!.Poles / belt.Ratio);
    }

    private static Mass Least(Sided<Mass> pair) => UnitMath.Min(pair.Capability, pair.Hazard);

    private static Mass Most(Sided<Mass> pair) => UnitMath.Max(pair.Capability, pair.Hazard);
}
