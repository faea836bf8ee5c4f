using System.Text.Json.Nodes;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Studies.Work;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>The part of the results that the operations of the machine file give.</summary>
internal static class WorkNodes
{
    internal static JsonObject Item(WorkResult result) => new()
    {
        ["name"] = result.Item.Name,
        ["operation"] = result.Item.Kind.InWords(),
        ["material"] = result.Item.Material.Id,
        ["diameter_mm"] = Number(result.Item.Diameter.Millimeters),
        ["hole_mm"] = Number(result.Item.Operation.Hole?.Millimeters),
        ["depth_mm"] = Number(result.Item.Operation.Depth.Millimeters),
        ["feed_mm_per_rev"] = Number(result.Cut.Feed?.Millimeters),
        ["speed_rpm"] = Number(result.Speed.RevolutionsPerMinute),
        ["torque_nm"] = Number(result.Torque.NewtonMeters),
        ["thrust_n"] = Number(result.Thrust?.Newtons),
        ["power_w"] = Number((double)result.Power.Watts),
        ["methods"] = List(result.Cut.Load?.Methods ?? [], method => new JsonObject
        {
            ["method"] = method.Method,
            ["torque_nm"] = Number(method.Torque.NewtonMeters),
            ["thrust_n"] = Number(method.Thrust?.Newtons),
            ["provenance"] = method.Source.Provenance.InWords(),
            ["source"] = method.Source.Source,
        }),
        ["cutting_s"] = Number(result.Cut.Time?.Cutting.Seconds),
        ["handling_s"] = Number(result.Cut.Time?.Handling.Seconds),
        ["hand_feed"] = result.Feed is { } feed ? new JsonObject
        {
            ["thrust_n"] = Number(feed.Thrust.Newtons),
            ["feed_mm_per_rev"] = Number(feed.FeedPerRevolution?.Millimeters),
            ["torque_nm"] = Number(feed.Load?.Torque.NewtonMeters),
            ["least_thrust_n"] = Number(feed.LeastThrust.Newtons),
        } : null,
        ["at_arm_feed"] = result.AtArmFeed is { } fed ? new JsonObject
        {
            ["feed_mm_per_rev"] = Number(fed.Cut.Feed?.Millimeters),
            ["torque_nm"] = Number(fed.Torque.NewtonMeters),
            ["belt"] = fed.Best?.Belt.Name,
            ["frequency_hz"] = Number(fed.Best?.Frequency?.Hertz),
            ["available_nm"] = Number(fed.Best?.Available?.NewtonMeters),
            ["bound_nm"] = Number(fed.Best?.Bound.NewtonMeters),
            ["margin"] = Number(fed.Best?.Margin),
            ["words"] = fed.Words,
        } : null,
        ["words"] = result.Words,
        ["limits"] = Limits(result.Limits),
        ["belts"] = List(result.Belts, At),
    };

    private static JsonObject At(WorkAtBelt at) => new()
    {
        ["belt"] = at.Belt.Name,
        ["frequency_hz"] = Number(at.Frequency?.Hertz),
        ["available_nm"] = Number(at.Available?.NewtonMeters),
        ["continuous_nm"] = Number(at.Continuous?.NewtonMeters),
        ["stall_nm"] = Number(at.Stall?.NewtonMeters),
        ["bound_nm"] = Number(at.Bound.NewtonMeters),
        ["margin"] = Number(at.Margin),
        ["slip_margin"] = Number(at.SlipMargin),
        ["winding_degc"] = at.Winding is { } winding ? Pair(winding, hot => hot?.DegreesCelsius) : null,
        ["passes_class_limit"] = at.PassesClassLimit,
        ["limits"] = Limits(at.Limits),
        ["tap_overrun_mm"] = Number(at.TapStop?.Travel.Millimeters),
        ["tap_overrun_turns"] = Number(at.TapStop?.Revolutions),
        ["spin_step_rpm"] = Number(at.Spin?.StepOfTenthHertz.RevolutionsPerMinute),
        ["spin_slip_rpm"] = Number(at.Spin?.SlipLoss.RevolutionsPerMinute),
        ["words"] = at.Words,
    };

    private static JsonArray Limits(IEnumerable<WorkLimit> limits) => List(limits, limit => new JsonObject
    {
        ["name"] = limit.Name,
        // Nothing there at all is no number: null.
        ["use"] = double.IsFinite(limit.Use) ? Number(limit.Use) : null,
    });
}
