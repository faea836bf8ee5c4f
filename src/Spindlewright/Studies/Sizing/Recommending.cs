using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>Puts the choice into words.</summary>
internal sealed class Recommending(SizingRun run, DrawnContenders drawn, IReadOnlyList<CandidateResult> unbeaten, DrillPress press)
{
    private static readonly double[] StricterMargins = [1.25, 1.5];

    internal Recommendation Of(int place)
    {
        var choice = run.ResultAt(place);
        return new(choice, [.. Reasons(choice, place)], [.. HazardPrice(choice)], [.. OthersOf(place)], FinalistsOf(choice));
    }

    /// <summary>The operation with the least margin on the low side; null where none needs torque.</summary>
    internal static int? TightestItem(SizingRun run, CandidateResult result) =>
        result.Tightest is { } tightest ? run.Demands.Index().First(each => ReferenceEquals(each.Item, tightest.Demand)).Index : null;

    private IEnumerable<string> Reasons(CandidateResult choice, int place)
    {
        var wanted = run.GivenUp.Count == 0 ? "every requirement" : $"every requirement but {string.Join(", ", run.GivenUp.Select(each => each.Name))}";
        yield return Invariant($"{run.Space.Candidates.Count} candidates were compared. On the low side, with the worst of everything at once, {run.Meeting.Count} of them meet {wanted}; {unbeaten.Count} of these nothing beats in every respect. The least bound among them is {unbeaten[0].Bound.NewtonMeters:0.0} N·m: {unbeaten[0].Candidate.Words}.");
        var row = drawn.Places.IndexOf(place);
        yield return Invariant($"{drawn.Places.Count} candidates about that bound and below it were tried in {drawn.Plan.Count} drawn worlds. {choice.Candidate.Words.WithCapital()} has the least bound of those that do all the work in at least {100 * run.Wishes.Reliability:0} of 100: {choice.Bound.NewtonMeters:0.0} N·m at the spindle. {BoundByHand(choice.Candidate)}");
        if (TightestItem(run, choice) is { } item)
            yield return TightestByHand(choice, choice.Work[item], row, item);
        if (row > 0)
        {
            var smaller = drawn.Places[row - 1];
            yield return Invariant($"The next smaller bound, {run.BoundNm(smaller):0.0} N·m, has {run.Space.Candidates[smaller].Words}: it does all the work in {100 * drawn.Share(row - 1, _ => true, run.Wishes.TorqueMargin):0} of 100 draws.");
        }
        if (choice.Winding is var (cool, hot))
            yield return Invariant($"Over the holes in a row the winding comes to {hot.DegreesCelsius:0} °C on the hot side ({cool.DegreesCelsius:0} °C on the cool one).");
    }

    private string TightestByHand(CandidateResult choice, DemandOutcome tightest, int row, int item)
    {
        var margins = new SampleSummary(drawn.MarginsOf(row, item));
        var words = Invariant($"Its tightest operation is {tightest.Demand.Item.Name}: {tightest.Demand.Torque.NewtonMeters:0.0} N·m needed at {tightest.Demand.Wanted.RevolutionsPerMinute:0} r/min. {AvailableByHand(choice, tightest)}");
        var low = tightest.Margin is { } margin ? Invariant($" The margin there is {tightest.Available.NewtonMeters:0.0} / {tightest.Demand.Torque.NewtonMeters:0.0} = {margin.Least:0.00} on the low side and {margin.Most:0.00} on the high side;") : "";
        return words + low + Invariant($" drawn it is {margins.Quantile(0.05).Estimate:0.00} at the fifth of 100 and {margins.Quantile(0.5).Estimate:0.00} in the middle.");
    }

    /// <summary>The bound taken apart into what it is multiplied from.</summary>
    private string BoundByHand(Candidate candidate)
    {
        var slowest = candidate.Pulleys.Slowest;
        if (candidate.Kind != CandidateKind.Converted)
        {
            var found = press.AsFound!;
            var supply = press.Supply.Highest / press.Supply.Nominal;
            return Invariant($"By hand: rated torque {found.RatedTorque.NewtonMeters:0.00} N·m × breakdown {found.BreakdownTorque.Hazard:0.0} × supply {supply:0.00}² × ratio {slowest.Ratio:0.00}.");
        }
        var bound = TorqueBound.Of(candidate.Machine(press));
        var breakdown = Math.Max(bound.WithoutResistance.NewtonMeters, bound.ByNameplate?.NewtonMeters ?? 0);
        return Invariant($"By hand: breakdown torque without stator resistance {breakdown:0.00} N·m × supply factor {bound.SupplyFactor:0.000} × overflux {bound.CountedOverflux:0.000}² × ratio {slowest.Ratio:0.00}.");
    }

    private string AvailableByHand(CandidateResult choice, DemandOutcome at)
    {
        if (at.Frequency is not { } frequency)
            return Invariant($"The old motor gives {at.Available.NewtonMeters:0.0} N·m for a short time on position {at.Belt.Name}, under the bound of {choice.Bound.NewtonMeters:0.0} N·m.");
        var machine = choice.Candidate.Machine(press);
        var (motorNm, limit, _) = TorqueStudy.ShortTimeAt(machine, new Drive(machine, Side.Capability), frequency.Hertz);
        var friction = press.Spindle.FrictionTorque.Capability.NewtonMeters;
        return Invariant($"On position {at.Belt.Name} at {frequency.Hertz:0.0} Hz the motor gives {motorNm:0.00} N·m for a short time ({limit}), hence {motorNm:0.00} × {at.Belt.Ratio:0.00} × {at.Belt.Efficiency.Capability:0.00} − {friction:0.00} = {at.Available.NewtonMeters:0.0} N·m at the spindle, under the bound of {choice.Bound.NewtonMeters:0.0} N·m.");
    }

    private IEnumerable<string> HazardPrice(CandidateResult choice)
    {
        if (run.Space.Candidates.FirstOrDefault(each => each.Kind == CandidateKind.AsFound) is { } found && !ReferenceEquals(found, choice.Candidate))
        {
            var before = run.ResultOf(found);
            yield return Invariant($"Its torque bound of {choice.Bound.NewtonMeters:0.0} N·m is {choice.Bound / before.Bound:0.0} times that of the machine as found, {before.Bound.NewtonMeters:0.0} N·m; what turns stores {choice.EnergyJ.Least:0} to {choice.EnergyJ.Most:0} J at the highest speed, against {before.EnergyJ.Least:0} to {before.EnergyJ.Most:0} J.");
        }
        var hand = new Overpowering.StatedHand("strong hand", press.Person.StrongPercentile, run.Parts.Builder.StrongHand);
        yield return Invariant($"The bound is {choice.Bound / hand.Torque:0.0} times the torque of a strong hand on the chuck, {hand.Torque.NewtonMeters:0.0} N·m. ") + CrossingWords(choice);
        yield return Invariant($"At the surface of the chuck the bound is {SurfaceForce.Of(choice.Bound, press.Spindle.ChuckDiameter).Newtons:0} N. Guard the chuck, clamp the work, wear no gloves or loose sleeves. Not exceeding a published figure does not show that contact is harmless.");
    }

    private static string CrossingWords(CandidateResult choice) => choice.Candidate.Kind != CandidateKind.Converted
        ? "At fixed speeds it stands there at every speed."
        : choice.Crossing is { Capability: null, Hazard: null }
            ? Invariant($"As modelled it is not passed below base frequency on the slowest position; the bound of {choice.Bound.NewtonMeters:0.0} N·m is, and boost or a vector mode changes the modelled figure alone.")
            : Invariant($"As modelled that is first passed at {Rpm(choice.Crossing.Hazard)} r/min on the high side, {Rpm(choice.Crossing.Capability)} on the low one, on the slowest position (bound {choice.Bound.NewtonMeters:0.0} N·m): nobody may read that as permission.");

    private static string Rpm(RotationalSpeed? speed) => speed is { } at ? Invariant($"{at.RevolutionsPerMinute:0}") : "no speed up to base frequency";

    private IEnumerable<OtherChoice> OthersOf(int choice)
    {
        OtherChoice Row(string what, Func<Candidate, bool> keeps, Func<int, bool> counts, double margin)
        {
            if (drawn.Choice(keeps, counts, margin) is not { } place)
                return new(what, "none of those tried is reliable", null, null, true);
            var same = place == choice;
            return new(what, same ? "the same choice" : run.Space.Candidates[place].Words, run.Space.Candidates[place], Torque.FromNewtonMeters(run.BoundNm(place)), !same);
        }

        var wanted = run.Wishes.TorqueMargin;
        yield return Row("the pulleys must stay as they are", each => each.Pulleys.Way == PulleyWay.AsTheyAre, _ => true, wanted);
        yield return Row("the pulleys are to be new", each => each.Pulleys.Way == PulleyWay.Regeared, _ => true, wanted);
        yield return Row("the motor described must be used", each => each.Motor is { IsDescribed: true }, _ => true, wanted);
        yield return Row("no boost may be set", DrawnContenders.WithoutBoost, _ => true, wanted);
        foreach (var margin in StricterMargins.Where(margin => margin > wanted))
            yield return Row(Invariant($"a torque margin of {margin:0.##} is wanted"), _ => true, _ => true, margin);
        if (TightestItem(run, unbeaten[0]) is { } item)
            yield return Row($"{run.Requirements[item].Name} is left out", _ => true, counted => counted != item, wanted);
    }

    private List<Finalist> FinalistsOf(CandidateResult choice)
    {
        List<Finalist> finalists = [new("recommended", choice)];
        void Add(string role, int? place)
        {
            if (place is { } at && !finalists.Any(each => ReferenceEquals(each.Result.Candidate, run.Space.Candidates[at])))
                finalists.Add(new(role, run.ResultAt(at)));
        }

        int? First(Func<Candidate, bool> keeps) => run.Space.Candidates.Index().Where(each => keeps(each.Item)).Select(each => (int?)each.Index).FirstOrDefault();
        Add("least bound that does all on the low side", run.PlaceOf(unbeaten[0].Candidate));
        var other = choice.Candidate.Pulleys.Way == PulleyWay.AsTheyAre ? PulleyWay.Regeared : PulleyWay.AsTheyAre;
        Add(
            other == PulleyWay.Regeared ? "least bound with new pulleys" : "least bound with the pulleys as they are",
            drawn.Choice(each => each.Pulleys.Way == other && each.Kind == CandidateKind.Converted, _ => true, run.Wishes.TorqueMargin));
        Add("as described in the machine file", First(each => each.IsDescribed));
        Add("as found", First(each => each.Kind == CandidateKind.AsFound));
        return finalists;
    }
}
