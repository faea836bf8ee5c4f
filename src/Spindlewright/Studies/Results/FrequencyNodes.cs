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
        ["twice_base"] = new JsonObject
        {
            ["frequency_hz"] = Number(study.TwiceBase.Frequency.Hertz),
            ["locked_rotor_over_base"] = Pair(study.TwiceBase.LockedRotor, each => each),
            ["pull_out_over_base"] = Pair(study.TwiceBase.PullOut, each => each),
            ["stored_energy_over_base"] = Number(study.TwiceBase.StoredEnergy),
            ["within_settings"] = study.TwiceBase.WithinSettings,
        },
        ["rated_power_until_hz"] = new JsonObject
        {
            ["capability"] = Number(study.RatedPowerUntil.Capability?.Hertz),
            ["hazard"] = Number(study.RatedPowerUntil.Hazard?.Hertz),
        },
        ["boosts"] = List(study.Boosts, boost => new JsonObject
        {
            ["share_of_base_voltage"] = Number(boost.Share),
            ["bound_nm"] = Number(boost.Bound.NewtonMeters),
            ["locked_rotor_at_lowest_nm"] = Pair(boost.Points[0].LockedRotor, torque => torque.NewtonMeters),
            ["pull_out_at_lowest_nm"] = Pair(boost.Points[0].PullOut, torque => torque.NewtonMeters),
            ["no_load_current_a"] = Pair(boost.NoLoadCurrent, current => current.Amperes),
            ["no_load_flux"] = Pair(boost.NoLoadFlux, flux => flux),
        }),
        ["temperatures"] = List(study.Temperatures, at => new JsonObject
        {
            ["winding_degc"] = Number(at.Winding.DegreesCelsius),
            ["points"] = List(at.Points, point => new JsonObject
            {
                ["frequency_hz"] = Number(point.Frequency.Hertz),
                ["pull_out_nm"] = Pair(point.PullOut, torque => torque.NewtonMeters),
                ["locked_rotor_nm"] = Pair(point.LockedRotor, torque => torque.NewtonMeters),
            }),
        }),
    };

    private static JsonObject Point(Sided<TorqueAt> point) => new()
    {
        ["frequency_hz"] = Pair(point, each => each.Frequency.Hertz),
        ["torque_nm"] = Pair(point, each => each.Torque.NewtonMeters),
    };
}
