using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using Spindlewright.Studies.Sizing;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>Which motor, which pulleys, as results.json holds it.</summary>
internal static class SizingNodes
{
    internal static JsonObject? Of(SizingStudy? study) => study is null ? null : new()
    {
        ["candidates"] = study.Space.Candidates.Count,
        ["meeting"] = study.Meeting,
        ["refused"] = List(study.Space.Refused, words => JsonValue.Create(words)),
        ["requirements"] = List(study.Requirements, each => JsonValue.Create(each.Words)),
        ["given_up"] = List(study.GivenUp, each => JsonValue.Create(each.Words)),
        ["conflicts"] = List(study.Conflicts, each => new JsonObject
        {
            ["together"] = List(each.Together, requirement => JsonValue.Create(requirement.Name)), ["why"] = each.Why,
        }),
        ["fell_out"] = List(study.FellOut, each => new JsonObject { ["why"] = each.Why, ["count"] = each.Count }),
        ["rule"] = ChoiceRule.Words,
        ["unbeaten"] = List(study.Unbeaten, Measures),
        ["choice"] = List(study.Recommendation.Reasons, words => JsonValue.Create(words)),
        ["hazard_price"] = List(study.Recommendation.HazardPrice, words => JsonValue.Create(words)),
        ["finalists"] = List(study.Recommendation.Finalists, each => new JsonObject
        {
            ["role"] = each.Role, ["measures"] = Measures(each.Result), ["work"] = List(each.Result.Work, Work), ["drills"] = List(each.Result.Drills, Drill),
        }),
        ["otherwise"] = List(study.Recommendation.Others, each => new JsonObject
        {
            ["if"] = each.If, ["then"] = each.Then, ["bound_nm"] = Number(each.Bound?.NewtonMeters), ["changes"] = each.Changes,
        }),
        ["survival"] = Survival(study.Survival),
        ["beliefs"] = List(study.Facts, each => new JsonObject
        {
            ["said"] = each.Said, ["verdict"] = each.Verdict.InWords(), ["words"] = each.Words,
            ["lines"] = List(each.Lines, line => new JsonObject
            {
                ["words"] = line.Words, ["figures"] = List(line.Figures, figure => new JsonObject { ["what"] = figure.What, ["figure"] = figure.Figure }),
            }),
        }),
    };

    private static JsonObject Measures(CandidateResult result) => new()
    {
        ["number"] = result.Candidate.Number,
        ["words"] = result.Candidate.Words,
        ["torque_margin"] = Ends(result.Margin),
        ["speeds_served"] = Ends(result.Coverage.Share),
        ["gaps_rpm"] = List(result.Coverage.Gaps, gap => Ends(new Interval(gap.From.RevolutionsPerMinute, gap.To.RevolutionsPerMinute))),
        ["winding_c"] = result.Winding is var (cool, hot) ? Ends(new Interval(cool.DegreesCelsius, hot.DegreesCelsius)) : null,
        ["input_a"] = Ends(result.InputA),
        ["energy_j"] = Ends(result.EnergyJ),
        ["bound_nm"] = Number(result.Bound.NewtonMeters),
        ["crossing_rpm"] = Pair(result.Crossing, speed => speed?.RevolutionsPerMinute),
        ["mass_kg"] = Ends(result.MassKg),
        ["frame_mm"] = Number(result.Candidate.Motor?.Build?.Frame.Millimeters),
        ["shaft_mm"] = Number(result.Candidate.Motor?.Build?.Shaft.Millimeters),
        ["price"] = Number(result.Candidate.Price),
        ["misses"] = List(result.Unmet, each => JsonValue.Create(each.Name)),
    };

    private static JsonObject Work(DemandOutcome at) => new()
    {
        ["name"] = at.Demand.Item.Name,
        ["piloted"] = at.Demand.Piloted,
        ["needed_nm"] = Number(at.Demand.Torque.NewtonMeters),
        ["wanted_rpm"] = Number(at.Demand.Wanted.RevolutionsPerMinute),
        ["belt"] = at.Belt.Name,
        ["frequency_hz"] = Number(at.Frequency?.Hertz),
        ["speed_rpm"] = Number(at.Speed.RevolutionsPerMinute),
        ["short_time_nm"] = Number(at.Available.NewtonMeters),
        ["margin"] = Ends(at.Margin),
        ["winding_c"] = at.Winding is var (cool, hot) ? Ends(new Interval(cool.DegreesCelsius, hot.DegreesCelsius)) : null,
        ["outcome"] = at.Why.InWords(),
    };

    private static JsonObject Drill(LargestDrillOf drill) => new()
    {
        ["material"] = drill.Material.Id, ["piloted"] = drill.Piloted, ["low_mm"] = Number(drill.Low?.Millimeters),
        ["high_mm"] = Number(drill.High?.Millimeters), ["pushed_mm"] = Number(drill.Pushed?.Millimeters),
    };

    private static JsonObject Survival(SizingSurvival survival) => new()
    {
        ["samples"] = survival.Plan.Count,
        ["contenders"] = survival.Contenders,
        ["does_all"] = UncertaintyNodes.Share(survival.DoesAll),
        ["is_least"] = UncertaintyNodes.Share(survival.IsLeast),
        ["less_would_do"] = UncertaintyNodes.Share(survival.LessWouldDo),
        ["stays"] = Number(survival.Stays),
        ["known_better"] = List(survival.Redraws.Concat(survival.Halves), each => new JsonObject
        {
            ["known"] = each.Known, ["choice"] = each.Candidate?.Words, ["stays"] = each.Stays,
        }),
        ["least"] = List(survival.Choices, each => new JsonObject
        {
            ["words"] = each.Candidate.Words, ["share"] = UncertaintyNodes.Share(each.Share), ["bound_nm"] = Number(each.Bound.NewtonMeters),
        }),
    };

    private static JsonObject? Ends(Interval? ends) => ends is { } given ? UncertaintyNodes.Ends(given) : null;
}
