using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Studies;
using Spindlewright.Studies.Sizing;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Tables of the sizing study: what was required, what fell out, the choice and what would change it.</summary>
public static class SizingTables
{
    private const int UnbeatenShown = 10;

    /// <summary>All of them, in reading order; none where no work is described.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The tables.</returns>
    public static IEnumerable<Table> All(StudyResults results) => results.Sizing is { } study
        ? [Conflicts(study), Requirements(study), Finalists(study), Work(study), Otherwise(study), Survival(study), FellOut(study), Unbeaten(study), Beliefs(study)]
        : [];

    /// <summary>Requirements that no candidate meets together.</summary>
    /// <param name="study">The study.</param>
    /// <returns>No rows where some candidate meets all.</returns>
    public static Table Conflicts(SizingStudy study) => new(
        "sizing-conflicts", "What cannot be had together", [Name("requirements"), Name("why"), Name("given up")],
        [.. study.Conflicts.Select(each => Row(
            string.Join(" and ", each.Together.Select(requirement => requirement.Name)), each.Why ?? "each can be had without the others, not all of them",
            string.Join(", ", each.Together.Intersect(study.GivenUp).Select(requirement => requirement.Name)) is { Length: > 0 } given ? given : "none of these"))],
        footnotes: ["The choice is made for the nearest set that some candidate meets: as many requirements as can be had together."]);

    /// <summary>Everything that was required.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Requirements(SizingStudy study) => new(
        "sizing-requirements", "What the machine must do and must not exceed", [Name("requirement"), Name("counts")],
        [.. study.Requirements.Select(each => Row(each.Words, study.GivenUp.Contains(each) ? "given up" : "yes"))],
        footnotes:
        [
            Invariant($"Torque at the feed that the arm keeps up. An operation may turn {100 * (1 - study.Wishes.SlowestShare):0} % slower than wanted and 5 % faster; short-time torque is to be {study.Wishes.TorqueMargin:0.##} times what is needed or more, and the winding is to stay within its class over the holes in a row."),
        ]);

    /// <summary>The choice and those beside it, one a column.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Finalists(SizingStudy study)
    {
        var finalists = study.Recommendation.Finalists;
        ImmutableArray<Cell> Line(string what, Func<CandidateResult, string> words) => Row([what, .. finalists.Select(each => (Cell)words(each.Result))]);
        string Drill(CandidateResult result, int place) => result.Drills[place] is var drill && drill.Low is null && drill.High is null
            ? "none" : Invariant($"{(Mm(drill.Low) == Mm(drill.High) ? Mm(drill.Low) : $"{Mm(drill.Low)} to {Mm(drill.High)}")}{(drill.LimitedByPush ? ", all that can be pushed" : Invariant($" of {Mm(drill.Pushed)}"))}");
        return new(
            "sizing-finalists", "Side by side", [Name("measure, low to high side"), .. finalists.Select(each => Name(each.Role))],
            [
                Line("motor", each => each.Candidate.Motor?.Name ?? "the old motor"),
                Line("pulleys", each => each.Candidate.Pulleys.Words),
                Line("frequency limits", each => each.Candidate.Limits?.Words ?? "fixed speeds"),
                Line("V/f law", each => each.Candidate.Law?.Words ?? "none"),
                Line("torque bound, slowest position, N·m", each => Invariant($"{each.Bound.NewtonMeters:0.0}")),
                Line("worst torque margin", each => Ends(each.Margin, "0.00")),
                Line("tightest operation", each => each.Tightest?.Demand.Item.Name ?? "none needs torque"),
                Line("misses on the low side", each => each.Unmet.Count == 0 ? "nothing" : string.Join(", ", each.Unmet.Select(missed => missed.Name))),
                Line("speeds of the work served, %", each => Ends(new Interval(100 * each.Coverage.Share.Least, 100 * each.Coverage.Share.Most), "0")),
                Line("gaps, r/min", each => each.Coverage.Gaps.Count == 0 ? "none" : string.Join(", ", each.Coverage.Gaps.Select(gap => Invariant($"{gap.From.RevolutionsPerMinute:0} to {gap.To.RevolutionsPerMinute:0}")))),
                Line("hottest winding, °C", each => each.Winding is var (cool, hot) ? Invariant($"{cool.DegreesCelsius:0} to {hot.DegreesCelsius:0}") : "not determined"),
                Line("supply current, A", each => Ends(each.InputA, "0.0")),
                Line("stored energy, J", each => Ends(each.EnergyJ, "0")),
                Line("strong hand passed, r/min (bound above)", Crossed),
                Line("mass of the motor, kg", each => Ends(each.MassKg, "0.#")),
                Line("frame and shaft, mm", each => each.Candidate.Motor?.Build is { } build ? Invariant($"{build.Frame.Millimeters:0}, {build.Shaft.Millimeters:0}") : "not determined"),
                Line(study.Wishes.Currency is { } currency ? $"price, {currency}" : "price", each => each.Candidate.Price is { } price ? Invariant($"{price:0.##}") : "not given"),
                .. finalists[0].Result.Drills.Select((drill, place) => Line(
                    $"largest drill, {drill.Material.Name}, {(drill.Piloted ? "piloted" : "into the full")}, mm", each => Drill(each, place))),
            ],
            caption: UncertaintyMarks.Caution,
            footnotes:
            [
                "Low side: lowest supply, drops in, the least torque that a standard lets a motor give, warm air. High side: the reverse. A bound has no interval, since nothing uncertain is credited in it.",
                "Strong hand passed: where the modelled torque of the slowest position first passes it, high to low side, conditions left out; an intermediate and no permission.",
                "Frame, shaft, mass and inertia are usual ones for power and poles (from memory) where no row of yours gives them. Supply current at rated motor power, nominal to lowest supply.",
            ],
            sources: [StudyMarks.OwnModel]);
    }

    /// <summary>The operations on the choice.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Work(SizingStudy study)
    {
        var choice = study.Recommendation.Choice;
        return new(
            "sizing-work", "The work on the machine recommended",
            [
                Name("operation"), new("needed", "N·m", Format: OneDecimal), new("wanted speed", "r/min", Format: Whole), Name("belt position"),
                new("frequency", "Hz", Format: OneDecimal), new("short-time, low side", "N·m", Format: OneDecimal), new("bound", "N·m", Format: OneDecimal),
                Name("margin"), Name("winding, °C"), Name("on the low side"),
            ],
            [.. choice.Work.Select(at => Row(
                at.Demand.Item.Name + (at.Demand.Piloted ? ", piloted" : ""), at.Demand.Torque.NewtonMeters, at.Demand.Wanted.RevolutionsPerMinute, at.Belt.Name,
                at.Frequency?.Hertz is { } hertz ? hertz : "fixed", at.Available.NewtonMeters, (choice.Bound * (at.Belt.Ratio / choice.Candidate.Pulleys.Slowest.Ratio)).NewtonMeters,
                Ends(at.Margin, "0.00"), at.Winding is var (cool, hot) ? Invariant($"{cool.DegreesCelsius:0} to {hot.DegreesCelsius:0}") : "not determined", at.Why.InWords()))],
            footnotes: ["Piloted: the arm does not push the drill into the full, so that a pilot hole as wide as the chisel edge and a half more comes first."],
            sources: [StudyMarks.OwnModel]);
    }

    /// <summary>What the choice would be if something were otherwise.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Otherwise(SizingStudy study) => new(
        "sizing-otherwise", "What would change it", [Name("if"), Name("then"), new("bound", "N·m", Format: OneDecimal)],
        [.. study.Recommendation.Others.Select(each => Row(each.If, each.Then, each.Bound is { } bound ? bound.NewtonMeters : "none"))]);

    /// <summary>Whether the choice survives what is uncertain.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Survival(SizingStudy study)
    {
        var survival = study.Survival;
        var asked = survival.Redraws.Concat(survival.Halves).ToList();
        return new(
            "sizing-survival", "Does the choice survive what is uncertain?", [Name("question"), Name("answer")],
            [
                Row("in how many drawn worlds does it do all the work?", Percent(survival.DoesAll)),
                Row("in how many does nothing with a smaller bound?", Percent(survival.IsLeast)),
                Row("in how many would one with a smaller bound do as well?", Percent(survival.LessWouldDo)),
                Row("how often does the rule give it again?", Invariant($"{asked.Count(each => each.Stays)} of {asked.Count}: from each tenth of the draws alone, and with each figure known to lie in one half")),
                .. asked.Where(each => !each.Stays).Select(each => Row($"another: {each.Known}", each.Candidate?.Words ?? "none is reliable")),
            ],
            footnotes:
            [
                Invariant($"{survival.Plan.Count} worlds (Latin hypercube, seed {survival.Plan.Seed}); {survival.Contenders} candidates tried in each. Supply, drops, motor, belts, friction and cutting torque are drawn, the same for every candidate; heat is judged on the hot side."),
                "With a world known beforehand something smaller would often do: the difference is the price of not knowing.",
            ]);
    }

    /// <summary>Why the others fell out.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table FellOut(SizingStudy study) => new(
        "sizing-fell-out", "Why the others fell out", [Name("reason"), new("candidates", Format: Whole)],
        [.. study.FellOut.Select(each => Row(each.Why, (double)each.Count))],
        footnotes: [Invariant($"{study.Space.Candidates.Count} candidates, counted at the first requirement that each misses on the low side; {study.Unbeaten.Count} are left."), .. study.Space.Refused]);

    /// <summary>The first of the Pareto set of those that do all the work on the low side.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Unbeaten(SizingStudy study) => new(
        "sizing-unbeaten", "What nothing beats in every respect",
        [
            Name("candidate"), new("bound", "N·m", Format: OneDecimal), new("worst margin", Format: TwoDecimals), new("speeds served", "%", Format: Whole),
            new("winding", "°C", Format: Whole), new("supply", "A", Format: OneDecimal), new("energy", "J", Format: Whole), new("mass", "kg", Format: Whole),
        ],
        [.. study.Unbeaten.Take(UnbeatenShown).Select(each => Row(
            each.Candidate.Words, each.Bound.NewtonMeters, each.Margin is { } margin ? margin.Least : "none needed", 100 * each.Coverage.Share.Least,
            each.Winding is var (_, hot) ? hot.DegreesCelsius : "not determined", each.InputA is { } input ? input.Most : "not determined",
            each.EnergyJ.Most, each.MassKg is { } mass ? mass.Most : "not determined"))],
        footnotes: [Invariant($"The first {Math.Min(UnbeatenShown, study.Unbeaten.Count)} of {study.Unbeaten.Count}, by their bound; each figure at its worse side. Compared: {string.Join(", ", study.Measures.Select(measure => measure.Name))}.")],
        sources: [StudyMarks.OwnModel]);

    /// <summary>Beliefs of the trade, with the numbers that bear them out or do not.</summary>
    /// <param name="study">The study.</param>
    /// <returns>The table.</returns>
    public static Table Beliefs(SizingStudy study) => new(
        "sizing-beliefs", "Beliefs of the trade, tried on this machine", [Name("tried"), Name("numbers")],
        [
            .. study.Facts.SelectMany(fact => new[] { Row(fact.Said, $"{fact.Verdict.InWords().WithCapital()}. {fact.Words}") }
                .Concat(fact.Lines.Select(line => Row(line.Words, string.Join("; ", line.Figures.Select(figure => $"{figure.What} {figure.Figure}")))))),
        ],
        footnotes: ["Common practice, no source. A verdict holds for this machine alone."],
        sources: [StudyMarks.OwnModel],
        emphasis: [.. Heads(study)]);

    private static IEnumerable<int> Heads(SizingStudy study)
    {
        var at = 0;
        foreach (var fact in study.Facts)
        {
            yield return at;
            at += 1 + fact.Lines.Count;
        }
    }

    private static string Crossed(CandidateResult each)
    {
        if (each.Candidate.Kind != CandidateKind.Converted) return "at every speed that it has";
        string Rpm(UnitsNet.RotationalSpeed? speed) => speed is { } at ? Invariant($"{at.RevolutionsPerMinute:0}") : "none up to base";
        return $"{Rpm(each.Crossing.Hazard)} to {Rpm(each.Crossing.Capability)}";
    }

    private static string Percent(SampledShare share) => Invariant($"{100 * share.Estimate:0} of 100 ({100 * share.Doubt.Least:0} to {100 * share.Doubt.Most:0})");

    private static string Mm(UnitsNet.Length? length) => length is { } given ? Invariant($"{given.Millimeters:0.#}") : "none";

    private static string Ends(Interval? ends, string format) => ends is not { } given ? "not determined"
        : given.Least.ToString(format, System.Globalization.CultureInfo.InvariantCulture) is var least
            && given.Most.ToString(format, System.Globalization.CultureInfo.InvariantCulture) is var most && least == most ? least : $"{least} to {most}";
}
