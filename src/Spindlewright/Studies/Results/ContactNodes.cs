using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using Spindlewright.Studies.Contact;
using UnitsNet;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>The part of the results that says what a hand, a sleeve or loose work would meet.</summary>
internal static class ContactNodes
{
    internal static JsonObject Of(ContactStudy study, Frequency baseFrequency) => new()
    {
        ["not_determined"] = List(study.Mechanisms.NotDetermined, each => new JsonObject { ["mechanism"] = each.Mechanism, ["missing"] = each.Missing }),
        ["mechanisms"] = List(study.Mechanisms.Mechanisms, Mechanism),
        ["forces"] = List(study.Forces.Belts, belt => Forces(belt, baseFrequency)),
        ["same_speed"] = List(study.TwoWays.Speeds, Speed),
        ["design"] = Design(study.Design),
        ["tools"] = List(study.Tools, tool => new JsonObject
        {
            ["item"] = tool.Item.Name, ["diameter_mm"] = Number(tool.Item.Diameter.Millimeters), ["cutting_nm"] = Number(tool.Cutting.NewtonMeters),
            ["belt"] = tool.Belt.Name, ["bound_nm"] = Number(tool.Bound.NewtonMeters), ["distance_mm"] = Number(tool.Distance.Millimeters),
            ["pin_n"] = Number(tool.Pin.Newtons), ["clamps_n"] = Number(tool.Clamps.Newtons),
            ["least_pin_distance_mm"] = Number(tool.PinDistance.Millimeters),
        }),
        ["controls"] = List(study.Controls, each => new JsonObject
        {
            ["key"] = each.Key, ["asked"] = each.Asked, ["answer"] = each.Words, ["reason"] = each.Reason, ["standard"] = each.Standard,
            ["sources"] = List(each.AskedBy, citation => JsonValue.Create(citation.Source)),
        }),
        ["stall_test"] = new JsonObject
        {
            ["steps"] = List(study.StallTest.Steps, step => JsonValue.Create(step)),
            ["rows"] = List(study.StallTest.Rows, row => new JsonObject
            {
                ["belt"] = row.Belt?.Name, ["bound_nm"] = Number(row.Bound.NewtonMeters),
                ["modelled_at_lowest_nm"] = Number(row.ModelledAtLowest.NewtonMeters),
                ["expected_force_n"] = Number(row.ExpectedForce?.Newtons), ["least_arm_mm"] = Number(row.LeastArm?.Millimeters), ["refusal"] = row.Refusal,
            }),
        },
        ["gaps"] = List(ContactStudy.Gaps, gap => JsonValue.Create(gap)),
    };

    private static JsonObject Mechanism(Mechanism mechanism) => new()
    {
        ["name"] = mechanism.Name,
        ["determined"] = !mechanism.IsNotDetermined,
        ["largest_ratio"] = Number(mechanism.Largest?.Ratio),
        ["largest_figure"] = mechanism.Largest?.Published.Key,
        ["comparisons"] = List(mechanism.Comparisons, each => new JsonObject
        {
            ["computed"] = each.Computed, ["value"] = Number(each.Value), ["value_modelled"] = Number(each.AsModelled),
            ["unit"] = each.Published.Unit, ["figure"] = each.Published.Figure, ["figure_value"] = Number(each.Figure),
            ["measures"] = each.Published.Measures, ["sample"] = each.Published.Sample, ["source"] = each.Published.Citation.Source,
            ["provenance"] = each.Published.Citation.Provenance.InWords(), ["ratio"] = Number(each.Ratio),
            ["first_exceeded_rpm"] = Number(each.FirstExceeded?.RevolutionsPerMinute), ["modelled_first_exceeded_rpm"] = Number(each.ModelledFirstExceeded?.RevolutionsPerMinute), ["dominates"] = each.Dominates,
        }),
        ["measures"] = List(mechanism.Measures, measure => new JsonObject { ["words"] = measure.Words, ["tag"] = measure.Tag }),
    };

    private static JsonObject Forces(ForcesAtBelt belt, Frequency baseFrequency) => new()
    {
        ["belt"] = belt.Belt.Name,
        ["bound_nm"] = Number(belt.Bound.NewtonMeters),
        ["measured_slip_nm"] = Number(belt.Belt.MeasuredSlip?.NewtonMeters),
        ["inertia_kgm2"] = Number(belt.Inertia.KilogramSquareMeters),
        ["ends"] = List(belt.Ends(baseFrequency), point => new JsonObject
        {
            ["frequency_hz"] = Number(point.Frequency.Hertz), ["speed_rpm"] = Number(point.Speed.RevolutionsPerMinute),
            ["torque_nm"] = Four(point.Torque, torque => torque.NewtonMeters), ["energy_j"] = Number(point.Energy.Joules),
            ["surfaces"] = List(point.Surfaces, at => new JsonObject
            {
                ["surface"] = at.Surface.Name, ["diameter_mm"] = Number(at.Surface.Diameter.Millimeters),
                ["steady_n"] = Newtons(at.Steady), ["from_rest_n"] = Newtons(at.FromRest),
                ["free_hand_n"] = Newtons(at.FreeHand), ["held_fast_n"] = Newtons(at.HeldFast),
            }),
        }),
    };

    private static JsonObject Speed(SpeedTwoWays speed) => new()
    {
        ["speed_rpm"] = Number(speed.Speed.RevolutionsPerMinute),
        ["as_found_bound_nm"] = Number(speed.AsFound?.Bound.NewtonMeters),
        ["ways"] = List(speed.Ways, way => new JsonObject
        {
            ["belt"] = way.Belt.Name, ["frequency_hz"] = Number(way.Frequency.Hertz),
            ["torque_nm"] = Four(way.Torque, torque => torque.NewtonMeters), ["chuck_force_n"] = Newtons(way.ChuckForce),
            ["energy_j"] = Number(way.Energy.Joules), ["wound_on_m"] = Number(way.WoundOn.Meters),
        }),
    };

    private static JsonObject Design(HoldingAndStopping design) => new()
    {
        ["guard_diameter_mm"] = Number(design.GuardDiameter.Millimeters),
        ["guard_length_mm"] = Number(design.GuardLength?.Millimeters),
        ["holding"] = List(design.Holding, row => new JsonObject
        {
            ["belt"] = row.Belt.Name, ["bound_nm"] = Number(row.Bound.NewtonMeters),
            ["at"] = List(row.At, at => new JsonObject
            {
                ["distance_mm"] = Number(at.Distance.Millimeters), ["pin_n"] = Number(at.Pin.Newtons), ["clamps_n"] = Number(at.Clamps.Newtons),
            }),
        }),
        ["stops"] = List(design.Stops, row => new JsonObject
        {
            ["belt"] = row.Belt.Name, ["speed_rpm"] = Number(row.Speed.RevolutionsPerMinute), ["energy_j"] = Number(row.Energy.Joules),
            ["time_s"] = Number(row.Time.Seconds), ["braking_at_motor_nm"] = Number(row.MotorTorque.NewtonMeters), ["bound_at_motor_nm"] = Number(row.MotorBound.NewtonMeters),
            ["over_rated"] = Number(row.OverRated), ["power_w"] = Number((double)row.Power.Watts), ["resistor_at_most_ohm"] = Number(row.MostResistance.Ohms),
        }),
        ["permitted"] = List(design.Permitted, row => new JsonObject
        {
            ["belt"] = row.Belt.Name, ["fitted"] = row.Fitted, ["frequency_hz"] = Number(row.Frequency?.Hertz), ["set_by"] = row.SetBy, ["passed"] = row.Passed,
        }),
        ["wound_on"] = List(design.Wound, row => new JsonObject
        {
            ["belt"] = row.Belt.Name, ["reaction"] = row.Reaction, ["time_s"] = Number(row.Time?.Seconds), ["stop_counted"] = row.StopKnown, ["turns"] = Number(row.Wound.Turns),
            ["length_m"] = Number(row.Wound.Length.Meters), ["roll_mm"] = Number(row.Wound.RollDiameter.Millimeters), ["sleeve_time_s"] = Number(row.SleeveTime.Seconds),
        }),
    };

    private static JsonObject Newtons(SideBySide<Force> forces) => Four(forces, force => force.Newtons);

    private static JsonObject Four<T>(SideBySide<T> four, Func<T, double> value) => new()
    {
        ["bound"] = Number(value(four.Bound)),
        ["ideal_boost"] = Number(value(four.IdealBoost)),
        ["modelled"] = Number(value(four.AsModelled)),
        ["current_limited_not_credited"] = Number(value(four.CurrentLimited)),
    };
}
