using System.Text.Json.Nodes;
using Spindlewright.Studies.Heat;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>The part of the results that heat gives.</summary>
internal static class HeatNodes
{
    internal static JsonObject Of(HeatStudy study, double boundNm) => new()
    {
        ["insulation_class"] = study.Data.InsulationClass,
        ["class_limit_degc"] = Number(study.Data.ClassLimit.DegreesCelsius),
        ["rated_loss_w"] = Pair(study.Body, body => (double)body.RatedLoss.Watts),
        ["running_time_constant_min"] = Pair(study.Body, body => body.RunningTimeConstant.Minutes),
        ["motor"] = List(study.Motor, at => new JsonObject
        {
            ["frequency_hz"] = Number(at.Frequency.Hertz),
            ["continuous_nm"] = Pair(at.Continuous, torque => torque.NewtonMeters),
            ["continuous_limit"] = at.Limit,
            ["at_class_limit_nm"] = Pair(at.AtClassLimit, torque => torque.NewtonMeters),
            ["derated_nm"] = Number(at.Derated.NewtonMeters),
            ["derated_spread_nm"] = Number(at.DeratedSpread.NewtonMeters),
            ["bound_nm"] = Number(boundNm),
        }),
        ["spindle"] = List(study.Spindle, spindle => new JsonObject
        {
            ["belt"] = spindle.Belt.Name,
            ["bound_nm"] = Number(spindle.Bound.NewtonMeters),
            ["points"] = List(spindle.Points, at => new JsonObject
            {
                ["frequency_hz"] = Number(at.Frequency.Hertz),
                ["synchronous_rpm"] = Number(at.SynchronousSpeed.RevolutionsPerMinute),
                ["continuous_nm"] = Number(at.Continuous.NewtonMeters),
                ["short_time_nm"] = Number(at.ShortTime.NewtonMeters),
            }),
        }),
        ["cases"] = List(study.Cases, state => Case(state, boundNm)),
        ["twice_base"] = TwiceBase(study.TwiceBase, boundNm),
        ["tasks"] = List(study.Tasks, row => new JsonObject
        {
            ["name"] = row.Task.Name,
            ["highest_degc"] = Pair(row.Highest, highest => highest?.DegreesCelsius),
            ["words"] = row.Words,
        }),
    };

    private static JsonObject TwiceBase(FastRunning fast, double boundNm) => new()
    {
        ["frequency_hz"] = Number(fast.Frequency.Hertz),
        ["period_s"] = Number(fast.Period.Seconds),
        ["kept"] = fast.Kept.InWords(),
        ["intermittent"] = fast.Intermittent.InWords(),
        ["words"] = fast.Words,
        ["loads"] = List(fast.Loads, load => new JsonObject
        {
            ["share_of_rated_power"] = Number(load.Share),
            ["case"] = Case(load.Case, boundNm),
            ["duty_share"] = load.DutyShare is { } duty ? Pair(duty, share => share) : null,
        }),
        ["limits"] = List(fast.Limits, limit => new JsonObject
        {
            ["name"] = limit.Name,
            ["torque_nm"] = Number(limit.Torque?.NewtonMeters),
            ["bound_nm"] = Number(boundNm),
            ["passed"] = limit.Passed,
            ["words"] = limit.Words,
        }),
    };

    private static JsonObject Case(HeatCase state, double boundNm) => new()
    {
        ["name"] = state.Name,
        ["frequency_hz"] = Number(state.Frequency.Hertz),
        ["load_nm"] = Number(state.Load?.NewtonMeters),
        ["bound_nm"] = Number(boundNm),
        ["stalls"] = state.Stalls,
        ["final_degc"] = Pair(state.Final, final => final?.DegreesCelsius),
        ["time_to_limit_s"] = Pair(state.TimeToLimit, time => time?.Seconds),
        ["winding_alone_s"] = state.WindingAlone is { } alone ? Pair(alone, time => time?.Seconds) : null,
    };
}
