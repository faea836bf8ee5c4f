using System.Text.Json.Nodes;
using Spindlewright.Mains;
using Spindlewright.Studies.SupplyAndBill;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>The part of the results that the supply side gives.</summary>
internal static class SupplyNodes
{
    internal static JsonObject Of(SupplyStudy study) => new()
    {
        ["levels"] = List(study.Levels, level => new JsonObject
        {
            ["name"] = level.Name,
            ["supply_v"] = Number(level.Voltage.Volts),
            ["ceiling_line_v"] = Number(level.Ceiling.Volts),
            ["unloaded_ceiling_line_v"] = Number(level.UnloadedCeiling.Volts),
            ["input"] = Input(level.State),
        }),
        ["loads"] = List(study.Loads, load => new JsonObject
        {
            ["share_of_rated_torque"] = Number(load.Share),
            ["shaft_w"] = Number((double)load.Shaft.Watts),
            ["motor_input_w"] = Number((double)load.MotorInput.Watts),
            ["input"] = Input(load.State),
        }),
        ["fuse"] = new JsonObject
        {
            ["rated_a"] = Number(study.Fuse.Fuse?.Amperes),
            ["current_a"] = Number(study.Fuse.Current.Amperes),
            ["share"] = Number(study.Fuse.Share),
            ["words"] = study.Fuse.Words,
        },
        ["switching_on"] = On(study.SwitchingOn),
        ["slowing_down"] = List(study.SlowingDown, Down),
        ["day"] = Day(study.Day),
    };

    private static JsonObject Input(RectifierState state) => new()
    {
        ["current_a"] = Number(state.Current.Amperes),
        ["fundamental_a"] = Number(state.Fundamental.Amperes),
        ["peak_a"] = Number(state.Peak.Amperes),
        ["power_w"] = Number((double)state.Input.Watts),
        ["power_factor"] = Number(state.PowerFactor),
        ["displacement_factor"] = Number(state.DisplacementFactor),
        ["distortion"] = Number(state.Distortion),
        ["link_mean_v"] = Number(state.LinkMean.Volts),
        ["link_least_v"] = Number(state.LinkLeast.Volts),
        ["link_most_v"] = Number(state.LinkMost.Volts),
    };

    private static JsonObject On(SwitchingOn on) => new()
    {
        ["link_bare_a"] = Number(on.LinkBare.Amperes),
        ["link_limited_a"] = Number(on.LinkLimited?.Amperes),
        ["locked_rotor_a"] = Number(on.LockedRotor.Amperes),
        ["first_peak_least_a"] = Number(on.FirstPeak.Least),
        ["first_peak_most_a"] = Number(on.FirstPeak.Most),
        ["ramp_motor_a"] = Pair(on.RampMotor, current => current?.Amperes),
        ["ramp_input_a"] = Pair(on.RampInput, current => current?.Amperes),
    };

    private static JsonObject Down(SlowingDown down) => new()
    {
        ["frequency_hz"] = Number(down.Frequency.Hertz),
        ["energy_j"] = Pair(down.Energy, energy => energy.Joules),
        ["all_into_link_v"] = Pair(down.AllIntoLink, volts => volts.Volts),
        ["trip_v"] = Number(down.Trip.Volts),
        ["least_time_s"] = Pair(down.LeastTime, time => time.Seconds),
        ["set_time_s"] = Number(down.SetTime.Seconds),
    };

    private static JsonObject Day(DayEnergy day) => new()
    {
        ["with_inverter_wh"] = Number(day.WithInverter?.WattHours),
        ["standby_wh"] = Number(day.Standby.WattHours),
        ["direct_on_line_wh"] = Number(day.DirectOnLine?.WattHours),
        ["saving"] = Number(day.Saving),
        ["words"] = day.Words,
        ["tasks"] = List(day.Tasks, row => new JsonObject
        {
            ["name"] = row.Task.Name,
            ["with_inverter_wh"] = Number(row.WithInverter?.WattHours),
            ["direct_on_line_wh"] = Number(row.DirectOnLine?.WattHours),
            ["at_drill_wh"] = Number(row.AtDrill.WattHours),
        }),
    };
}
