using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using Spindlewright.Studies.Frequencies;
using UnitsNet;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>Torque against frequency as nodes.</summary>
internal static class FrequencyNodes
{
    internal static JsonObject Of(FrequencyStudy study, Torque bound) => new()
    {
        ["bound_nm"] = Number(bound.NewtonMeters),
        ["curves"] = List(study.Curves, curve => new JsonObject
        {
            ["frequency_hz"] = Number(curve.Frequency.Hertz),
            ["points"] = List(curve.Points, at => new JsonObject
            {
                ["speed_rpm"] = Number(at.Speed.RevolutionsPerMinute),
                ["torque_nm"] = Pair(at.AsModelled, torque => torque.NewtonMeters),
                ["ideal_boost_nm"] = Number(at.IdealBoost.NewtonMeters),
            }),
        }),
        ["boost_law"] = List(study.BoostLaw, at => new JsonObject
        {
            ["frequency_hz"] = Number(at.Frequency.Hertz),
            ["set_line_v"] = Number(at.Set.Volts),
            ["needed_line_v"] = Pair(at.Needed, volts => volts.Volts),
        }),
        ["locked_rotor_largest"] = Point(study.LargestLockedRotor),
        ["locked_rotor_at_base"] = Point(study.LockedRotorAtBase),
        ["locked_rotor_at_lowest"] = Point(study.LockedRotorAtLowest),
        ["locked_rotor_at_lowest_without_drops"] = Point(study.LockedRotorAtLowestWithoutDrops),
        ["locked_rotor_at_twice_base_over_base"] = study.LockedRotorAtTwiceBase is { } ratio ? Pair(ratio, each => each) : null,
    };

    private static JsonObject Point(Sided<TorqueAt> point) => new()
    {
        ["frequency_hz"] = Pair(point, each => each.Frequency.Hertz),
        ["torque_nm"] = Pair(point, each => each.Torque.NewtonMeters),
    };
}
