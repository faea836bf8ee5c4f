using System.Text.Json.Nodes;
using Spindlewright.Belts;
using Spindlewright.Cutting.Operations;
using Spindlewright.Studies.Feeding;
using Spindlewright.Studies.Ratios;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Work;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>The part of the results that speeds, feeds and belts give.</summary>
internal static class CuttingNodes
{
    internal static JsonObject Chart(SpeedChart chart) => new()
    {
        ["lines"] = List(chart.Lines, line => new JsonObject
        {
            ["belt"] = line.Belt.Name,
            ["stated_torque_nm"] = Number(line.StatedTorque.NewtonMeters),
            ["bound_nm"] = Number(line.Bound.NewtonMeters),
            ["points"] = List(line.Points, at => new JsonObject
            {
                ["frequency_hz"] = Number(at.Frequency.Hertz),
                ["unloaded_rpm"] = Number(at.Unloaded.RevolutionsPerMinute),
                ["loaded_rpm"] = Number(at.Loaded?.RevolutionsPerMinute),
            }),
        }),
        ["overlaps"] = List(chart.Overlaps, overlap => new JsonObject
        {
            ["slower"] = overlap.Slower,
            ["faster"] = overlap.Faster,
            ["from_rpm"] = Number(overlap.From.RevolutionsPerMinute),
            ["to_rpm"] = Number(overlap.To.RevolutionsPerMinute),
        }),
        ["choices"] = List(chart.Choices, choices => new JsonObject
        {
            ["speed_rpm"] = Number(choices.Speed.RevolutionsPerMinute),
            ["most_continuous"] = choices.MostContinuous?.Belt.Name,
            ["least_bound"] = choices.LeastBound?.Belt.Name,
            ["positions"] = List(choices.Choices, choice => new JsonObject
            {
                ["belt"] = choice.Belt.Name,
                ["frequency_hz"] = Number(choice.Frequency.Hertz),
                ["continuous_nm"] = Number(choice.Continuous.NewtonMeters),
                ["short_time_nm"] = Number(choice.ShortTime.NewtonMeters),
                ["bound_nm"] = Number(choice.Bound.NewtonMeters),
            }),
        }),
    };

    internal static JsonArray Largest(LargestDrillStudy study) => List(study.Materials, row => new JsonObject
    {
        ["material"] = row.Material.Id,
        ["by_arm_mm"] = Number(row.ByArm?.Millimeters),
        ["by_arm_with_pilot_mm"] = Number(row.ByArmWithPilot?.Millimeters),
        ["belts"] = List(row.Belts, at => new JsonObject
        {
            ["belt"] = at.Belt.Name,
            ["continuous_mm"] = Number(at.Continuous?.Diameter.Millimeters),
            ["short_time_mm"] = Number(at.ShortTime?.Diameter.Millimeters),
            ["bound_nm"] = Number(at.Bound.NewtonMeters),
        }),
    });

    internal static JsonObject Feeding(HandFeedStudy study) => new()
    {
        ["thrust_n"] = Number(study.Thrust.Newtons),
        ["rows"] = List(study.Rows, row => new JsonObject
        {
            ["material"] = row.Material.Id,
            ["diameter_mm"] = Number(row.Diameter.Millimeters),
            ["pilot_mm"] = Number(row.Pilot.Millimeters),
            ["handbook_feed_mm_per_rev"] = Number(row.HandbookFeed.Millimeters),
            ["feed_mm_per_rev"] = Number(row.Solid.FeedPerRevolution?.Millimeters),
            ["feed_with_pilot_mm_per_rev"] = Number(row.Piloted.FeedPerRevolution?.Millimeters),
            ["needs_pilot"] = row.NeedsPilot,
            ["gives_out"] = row.GivesOut,
            ["bound_nm"] = Number(row.Bound?.NewtonMeters),
        }),
    };

    internal static JsonObject Belts(RatioStudy study) => new()
    {
        ["positions"] = List(study.Belts, row => new JsonObject
        {
            ["belt"] = row.Belt.Name,
            ["slip_least_nm"] = Number(row.Slip?.Least.NewtonMeters),
            ["slip_most_nm"] = Number(row.Slip?.Most.NewtonMeters),
            ["short_time_nm"] = Number(row.ShortTime.NewtonMeters),
            ["bound_nm"] = Number(row.Bound.NewtonMeters),
            ["slip_over_short_time"] = Number(row.SlipOverShortTime),
            ["creep_most_rpm"] = Number(row.Creep.Most.RevolutionsPerMinute),
            ["pairs"] = List(row.Slip?.Layouts ?? [], Layout),
        }),
        ["force_for_short_time_n"] = Number(study.ForceForShortTime?.Newtons),
        ["design"] = study.Design is { } design ? new JsonObject
        {
            ["covers"] = design.Covers,
            ["words"] = design.Words,
            ["positions"] = List(design.Choices, choice => new JsonObject
            {
                ["exact_ratio"] = Number(choice.Exact),
                ["motor_pulley_mm"] = Number(choice.Pair.Driving.Millimeters),
                ["spindle_pulley_mm"] = Number(choice.Pair.Driven.Millimeters),
                ["motor_pulley_to_turn_mm"] = Number(choice.ToTurn?.Millimeters),
                ["spindle_pulley_exists"] = choice.DrivenExists,
                ["slowest_rpm"] = Number(choice.Slowest.RevolutionsPerMinute),
                ["fastest_rpm"] = Number(choice.Fastest.RevolutionsPerMinute),
            }),
        } : null,
    };

    private static JsonObject Layout(BeltLayout layout) => new()
    {
        ["driving_mm"] = Number(layout.Pair.Driving.Millimeters),
        ["driven_mm"] = Number(layout.Pair.Driven.Millimeters),
        ["centre_mm"] = Number(layout.CentreDistance.Millimeters),
        ["length_mm"] = Number(layout.DatumLength.Millimeters),
        ["wrap_of_smaller_deg"] = Number(layout.WrapOfSmaller.Degrees),
        ["span_mm"] = Number(layout.Span.Millimeters),
    };

    internal static JsonObject Speeds(CuttingSpeedStudy study) => new()
    {
        ["slowest_rpm"] = Number(study.Slowest.RevolutionsPerMinute),
        ["slowest_fixed_rpm"] = Number(study.SlowestFixed.RevolutionsPerMinute),
        ["slowest_fixed_is_of_this_machine"] = study.SlowestFixedIsOwn,
        ["materials"] = List(study.Materials, row => new JsonObject
        {
            ["material"] = row.Material.Id,
            ["too_fast_from_mm"] = Number(row.TooFastFrom.Millimeters),
            ["too_fast_from_fixed_mm"] = Number(row.TooFastFromFixed.Millimeters),
            ["experience_m_per_min"] = Number(row.Experience?.Middle.MetersPerMinutes),
            ["experience_over_handbook"] = Number(row.Experience?.OverHandbook),
            ["operations"] = List(row.Operations, each => new JsonObject
            {
                ["operation"] = each.Kind.InWords(),
                ["slowest_m_per_min"] = Number(each.Speeds.Slowest.MetersPerMinutes),
                ["fastest_m_per_min"] = Number(each.Speeds.Fastest.MetersPerMinutes),
            }),
        }),
    };
}
