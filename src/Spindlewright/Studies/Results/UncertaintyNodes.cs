using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;
using Spindlewright.Machines;
using Spindlewright.Studies.Changes;
using Spindlewright.Studies.Uncertainty;
using UnitsNet;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>Intervals, chances and what moves them, as results.json holds them.</summary>
internal static class UncertaintyNodes
{
    internal static JsonObject Of(UncertaintyStudy study) => new()
    {
        ["samples"] = study.Plan.Count,
        ["inputs"] = List(study.Inputs, Input),
        ["locked_rotor_at_lowest_nm"] = Figure(study.LockedRotorAtLowest),
        ["pull_out_at_top_nm"] = Figure(study.PullOutAtBase),
        ["bound_nm"] = Number(study.Bound.NewtonMeters),
        ["belts"] = List(study.Belts, Belt),
        ["work"] = List(study.Work, each => new JsonObject
        {
            ["name"] = each.Name,
            ["belt"] = each.Belt.Name,
            ["bound_nm"] = Number(each.Bound.NewtonMeters),
            ["cutting_torque_nm"] = Figure(each.Needed),
            ["pull_out_over_cutting_torque"] = Figure(each.Margin),
            ["stalls"] = Share(each.Stalls),
            ["belt_slips"] = each.Slips is { } slips ? Share(slips) : null,
        }),
        ["convergence"] = List(study.Convergence, step => new JsonObject
        {
            ["samples"] = step.Count,
            ["median_rpm"] = Finite(step.Median),
            ["middle_rpm"] = Ends(step.Range),
        }),
    };

    internal static JsonObject Of(ChangesStudy study) => new()
    {
        ["samples"] = study.Samples,
        ["machines"] = List(study.Machines, each => new JsonObject
        {
            ["what"] = each.What,
            ["change"] = each.Change,
            ["belt"] = each.Belt.Name,
            ["bound_nm"] = Number(each.Bound.NewtonMeters),
            ["slowest_rpm"] = Number(each.Slowest.RevolutionsPerMinute),
            ["hands"] = Hands(each.Hands, each.Bound),
        }),
    };

    private static JsonArray Hands(IReadOnlyList<UncertainHand> hands, Torque bound) => List(hands, hand => new JsonObject
    {
        ["hand"] = hand.Hand.Name,
        ["hand_torque_nm"] = Number(hand.Hand.Torque.NewtonMeters),
        ["bound_nm"] = Number(bound.NewtonMeters),
        ["overpowering_speed"] = ResultsDocument.OverpoweringNode(hand.Answer),
        ["crossing_rpm"] = Figure(hand.Crossing),
    });

    private static JsonObject Input(VariedInput input) => new()
    {
        ["name"] = input.Name,
        ["meaning"] = input.Meaning,
        ["unit"] = input.Unit,
        ["distribution"] = input.Distribution.Words,
        ["provenance"] = input.Provenance.InWords(),
        ["source"] = input.Source,
        ["note"] = input.Note,
    };

    private static JsonObject Belt(UncertainBelt belt) => new()
    {
        ["belt"] = belt.Belt.Name,
        ["bound_nm"] = Number(belt.Bound.NewtonMeters),
        ["hands"] = Hands(belt.Hands, belt.Bound),
        ["chances"] = List(belt.Chances, at => new JsonObject
        {
            ["speed_rpm"] = Number(at.Speed.RevolutionsPerMinute),
            ["bound_nm"] = Number(belt.Bound.NewtonMeters),
            ["chance"] = Share(at.Chance),
            ["chance_both_hands"] = Share(at.BothHands),
        }),
        ["drivers"] = List(belt.Drivers, driver => new JsonObject
        {
            ["input"] = driver.Input.Name,
            ["rank_correlation"] = Number(driver.RankCorrelation),
            ["low_rpm"] = Finite(driver.Low),
            ["high_rpm"] = Finite(driver.High),
        }),
    };

    private static JsonObject Figure(SampledFigure figure) => new()
    {
        ["median"] = Finite(figure.Median),
        ["middle"] = Ends(figure.Middle),
        ["reached"] = Share(figure.Reached),
    };

    internal static JsonObject Share(SampledShare share) => new()
    {
        ["estimate"] = Number(share.Estimate),
        ["doubt"] = Ends(share.Doubt),
    };

    internal static JsonObject Ends(Interval interval) => new()
    {
        ["least"] = Finite(interval.Least),
        ["most"] = Finite(interval.Most),
    };

    /// <summary>What is never reached is null.</summary>
    private static JsonNode? Finite(double value) => Number(double.IsFinite(value) ? value : null);
}
