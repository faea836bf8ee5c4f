using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Studies.Ratios;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>Everything that is compared: motors × pulleys × frequency limits × laws, and the machine as found.</summary>
public sealed record CandidateSpace
{
    /// <summary>All candidates; the number of each is its place where the machine as found is described.</summary>
    public required IReadOnlyList<Candidate> Candidates { get; init; }

    /// <summary>Motors.</summary>
    public required IReadOnlyList<MotorChoice> Motors { get; init; }

    /// <summary>Laws: the described one first.</summary>
    public required IReadOnlyList<LawChoice> Laws { get; init; }

    /// <summary>Motors and pulleys that were not looked at, with the reason.</summary>
    public required IReadOnlyList<string> Refused { get; init; }

    /// <summary>Lays the candidates out.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="wishes">What may be bought, altered and set.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>The candidates.</returns>
    public static CandidateSpace Of(DrillPress press, SizingWishes wishes, Handbook handbook, CancellationToken cancellation = default)
    {
        var offer = MotorsOnOffer.Of(press, wishes, handbook, cancellation);
        var refused = new List<string>(offer.Refused);
        var laws = LawsOf(press, wishes);
        var regeared = new Dictionary<(int Poles, FrequencyLimits Limits), PulleySet?>();
        PulleySet? Regeared(int poles, FrequencyLimits limits)
        {
            if (!regeared.TryGetValue((poles, limits), out var set))
                regeared[(poles, limits)] = set = RegearedFor(press, poles, limits, handbook, refused);
            return set;
        }

        var asTheyAre = new PulleySet(PulleyWay.AsTheyAre, press.Belts);
        var candidates = new List<Candidate>(FixedOf(press, wishes, handbook));
        foreach (var motor in offer.Motors)
            foreach (var limits in LimitsOf(press, wishes, motor))
                foreach (var law in laws.Where(law => limits.Lowest <= law.Curve.BaseFrequency))
                    foreach (var pulleys in new[] { asTheyAre, Regeared(motor.Poles, limits) }.OfType<PulleySet>())
                        candidates.Add(Converted(candidates.Count, press, wishes, (motor, limits, law, pulleys)));
        return new() { Candidates = candidates, Motors = offer.Motors, Laws = laws, Refused = [.. refused.Distinct()] };
    }

    private static Candidate Converted(
        int place, DrillPress press, SizingWishes wishes, (MotorChoice Motor, FrequencyLimits Limits, LawChoice Law, PulleySet Pulleys) of) =>
        new(press.AsFound is null ? place + 2 : place, CandidateKind.Converted, of.Pulleys)
        {
            Motor = of.Motor,
            Limits = of.Limits,
            Law = of.Law,
            IsDescribed = of.Motor.IsDescribed && of.Pulleys.Way == PulleyWay.AsTheyAre && of.Law.Curve == press.Inverter.Curve
                && of.Limits == new FrequencyLimits(press.Inverter.LowestFrequency, press.Inverter.HighestFrequency),
            Price = of.Motor.IsDescribed ? null
                : of.Motor.Price + wishes.InverterPrice + (of.Pulleys.Way == PulleyWay.Regeared ? wishes.PulleyPrice : 0),
        };

    /// <summary>The described law, and straight ones with each boost.</summary>
    private static List<LawChoice> LawsOf(DrillPress press, SizingWishes wishes)
    {
        var described = press.Inverter.Curve;
        var laws = new List<LawChoice> { new(Words(described), described) };
        foreach (var boost in wishes.Boosts)
        {
            var curve = new StraightCurve(described.BaseVoltage, described.BaseFrequency, described.BaseVoltage * boost);
            if (!laws.Any(law => law.Curve is StraightCurve same && Math.Abs(same.Boost.Volts - curve.Boost.Volts) < 1e-9))
                laws.Add(new(Words(curve), curve));
        }
        return laws;
    }

    private static string Words(VoltsPerHertzCurve curve) => curve is StraightCurve straight
        ? straight.Boost.Volts > 0 ? Invariant($"boost {100 * (straight.Boost / straight.BaseVoltage):0.#} %") : "no boost"
        : $"{curve.Name} law as described";

    /// <summary>Every pair of limits that is wished for, below the motor's highest speed, and the described pair.</summary>
    private static IEnumerable<FrequencyLimits> LimitsOf(DrillPress press, SizingWishes wishes, MotorChoice motor)
    {
        var described = new FrequencyLimits(press.Inverter.LowestFrequency, press.Inverter.HighestFrequency);
        var pairs =
            from lowest in wishes.LowestFrequencies
            from highest in wishes.HighestFrequencies
            let top = motor.Highest is { } most ? UnitMath.Min(most, highest) : highest
            where lowest < top
            select new FrequencyLimits(lowest, top);
        return (motor.IsDescribed ? pairs.Prepend(described) : pairs).Distinct();
    }

    /// <summary>Pulleys for the speeds of the work; null where there is no work, or no pulleys do it.</summary>
    private static PulleySet? RegearedFor(DrillPress press, int poles, FrequencyLimits limits, Handbook handbook, List<string> refused)
    {
        if (RatioStudy.WishOf(press, handbook, poles, limits.Lowest, limits.Highest) is not { } wish) return null;
        try
        {
            var design = ConversionDesign.Of(wish, handbook);
            var efficiency = press.Belts.MinBy(belt => belt.Pulleys.Count)!.Efficiency;
            var belts = design.Choices.DistinctBy(choice => choice.Pair).Select((choice, place) => BeltPosition.FromPulleys(
                Invariant($"{place + 1}: {choice.Pair.Driving.Millimeters:0}/{choice.Pair.Driven.Millimeters:0} mm"), [choice.Pair], efficiency)).ToList();
            // A pair too large for the distance between the axes is refused here.
            foreach (var belt in belts) press.Belting?.Layouts(belt);
            return new(PulleyWay.Regeared, belts);
        }
        catch (PartException impossible)
        {
            refused.Add(Invariant($"regearing for {poles} poles at {limits.Words}: {impossible.Message}"));
            return null;
        }
    }

    private static IEnumerable<Candidate> FixedOf(DrillPress press, SizingWishes wishes, Handbook handbook)
    {
        if (press.AsFound is not { } found) yield break;
        yield return new(0, CandidateKind.AsFound, new(PulleyWay.AsTheyAre, found.Belts)) { Price = 0 };
        yield return new(1, CandidateKind.IntermediatePulley, IntermediateRival.Of(press, found, handbook)) { Price = wishes.IntermediatePrice };
    }
}
