using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
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
    private readonly double strongHandNm = HandStrength.OfHandbook(handbook).At(press.Person.StrongPercentile, press.Spindle.ChuckDiameter).NewtonMeters;

    internal IReadOnlyList<DrillLadder> Ladders => ladders;

    /// <summary>Costs in the order of <see cref="Measure.All"/>, low side, less being better.</summary>
    /// <param name="screening">What was screened.</param>
    /// <param name="place">Place of the candidate.</param>
    /// <param name="candidate">The candidate.</param>
    /// <param name="withPrice">Whether prices are compared.</param>
    internal double[] Costs(Screening screening, int place, Candidate candidate, bool withPrice) =>
    [
        -screening.WorstMargin(place), -Coverage.Of(press, candidate, evaluator, wishes, demands).Share.Least,
        -ladders.Select(ladder => evaluator.LargestOf(candidate, ladder, Side.Capability)?.Millimeters ?? 0).DefaultIfEmpty(0).Average(),
        screening.Hottest(place), candidate.Motor?.InputA.Most ?? double.NaN, EnergyJ(candidate, Side.Hazard),
        bounds.AtSlowest(press, candidate).NewtonMeters, candidate.Motor?.Build is { } build ? Most(build.Mass).Kilograms : double.NaN,
        withPrice ? candidate.Price ?? double.NaN : 0,
    ];

    internal CandidateResult Of(Screening screening, int place, Candidate candidate)
    {
        var work = demands.Select((demand, item) => OfDemand(candidate, demand, screening.Discarded[place]
            ? evaluator.Of(candidate, item, Side.Capability) : screening.At(place, item), evaluator.Of(candidate, item, Side.Hazard))).ToList();
        var margins = work.Select(each => each.Margin).OfType<Interval>().ToList();
        var windings = work.Select(each => each.Winding).ToList();
        return new()
        {
            Candidate = candidate,
            Work = work,
            Unmet = [.. requirements.Where((_, requirement) => !screening.Meets(place, requirement))],
            Margin = margins.Count == 0 ? null : new(margins.Min(each => each.Least), margins.Min(each => each.Most)),
            Coverage = Coverage.Of(press, candidate, evaluator, wishes, demands),
            Drills = [.. ladders.Select(ladder => new LargestDrillOf(
                ladder.Material, ladder.Piloted, evaluator.LargestOf(candidate, ladder, Side.Capability),
                evaluator.LargestOf(candidate, ladder, Side.Hazard), ladder.Pushed))],
            Winding = windings.Count > 0 && windings.All(each => each is not null)
                ? (windings.Max(each => each!.Value.Cool), windings.Max(each => each!.Value.Hot)) : null,
            InputA = candidate.Motor?.InputA,
            EnergyJ = Interval.Of(EnergyJ(candidate, Side.Capability), EnergyJ(candidate, Side.Hazard)),
            Bound = bounds.AtSlowest(press, candidate),
            Crossing = new(Crossing(candidate, Side.Capability), Crossing(candidate, Side.Hazard)),
            MassKg = candidate.Motor?.Build is { } build ? Interval.Of(Least(build.Mass).Kilograms, Most(build.Mass).Kilograms) : null,
        };
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
            null => ContactInputs.UsualMotorInertia(press.AsFound!.Power),
            { IsDescribed: true } => contact.MotorInertia,
            { Build: { } build } => build.Inertia,
            var other => ContactInputs.UsualMotorInertia(other.Motor.RatedPower),
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
        var limitNm = (strongHandNm + press.Spindle.FrictionTorque.On(side).NewtonMeters) / (belt.Ratio * belt.Efficiency.On(side));
        var top = Math.Min(candidate.Limits!.Value.Highest.Hertz, candidate.Law!.Curve.BaseFrequency.Hertz);
        var hertz = evaluator.Reader(candidate, side).FirstReachingHz(limitNm, candidate.Limits.Value.Lowest.Hertz, top);
        return double.IsInfinity(hertz) ? null : RotationalSpeed.FromRevolutionsPerMinute(120 * hertz / candidate.Motor!.Poles / belt.Ratio);
    }

    private static Mass Least(Sided<Mass> pair) => UnitMath.Min(pair.Capability, pair.Hazard);

    private static Mass Most(Sided<Mass> pair) => UnitMath.Max(pair.Capability, pair.Hazard);
}
