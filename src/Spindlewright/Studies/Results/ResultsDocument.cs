using System.Text.Json.Nodes;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Fitting;
using Spindlewright.Studies.Before;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Voltages;
using UnitsNet;
using static Spindlewright.Studies.Results.ResultNodes;

namespace Spindlewright.Studies.Results;

/// <summary>Turns study results into the tree that <c>results.json</c> holds.</summary>
/// <remarks>
/// The contract for tests, comparisons and other programs; its schema is <c>docs/results.schema.json</c>. Units stand in
/// the keys; a pair has the keys <c>capability</c> and <c>hazard</c>; a figure that could not be had is null.
/// </remarks>
public static class ResultsDocument
{
    /// <summary>Raised when a key changes meaning or goes, or a word that stands for a value does.</summary>
    public const string SchemaVersion = "1.1";

    /// <summary>Makes the tree.</summary>
    /// <param name="results">The results of all studies.</param>
    /// <returns>A tree for <see cref="StableJson"/>.</returns>
    public static JsonObject Of(StudyResults results) => new()
    {
        ["schema_version"] = SchemaVersion,
        ["seed"] = results.Seed,
        ["machine"] = Machine(results.Press),
        ["voltages"] = Voltages(results.Voltages),
        ["speeds"] = Speeds(results.Speeds),
        ["torques"] = Torques(results.Torques),
        ["frequencies"] = FrequencyNodes.Of(results.Frequencies, results.Torques.Bound.Motor),
        ["hands"] = Hands(results.Hands),
        ["contact"] = ContactNodes.Of(results.Contact, results.Press.Inverter.Curve.BaseFrequency),
        ["work"] = List(results.Work.Items, WorkNodes.Item),
        ["speed_chart"] = CuttingNodes.Chart(results.Chart),
        ["largest_drills"] = CuttingNodes.Largest(results.LargestDrills),
        ["hand_feed"] = CuttingNodes.Feeding(results.Feeding),
        ["belts"] = CuttingNodes.Belts(results.Ratios),
        ["cutting_speeds"] = CuttingNodes.Speeds(results.CuttingSpeeds),
        ["heat"] = HeatNodes.Of(results.Heat, results.Torques.Bound.Motor.NewtonMeters),
        ["supply"] = SupplyNodes.Of(results.Supply),
        ["uncertainty"] = UncertaintyNodes.Of(results.Uncertainty),
        ["changes"] = UncertaintyNodes.Of(results.Changes),
        ["sizing"] = SizingNodes.Of(results.Sizing),
        ["as_found"] = results.Before is { } before ? AsFound(before) : null,
        ["findings"] = List(results.Findings, finding => new JsonObject
        {
            ["title"] = finding.Title,
            ["text"] = finding.Text,
        }),
    };

    private static JsonObject Machine(DrillPress press) => new()
    {
        ["title"] = press.Title,
        ["warnings"] = List(press.Warnings, warning => JsonValue.Create(warning)),
        ["supply_v"] = new JsonObject
        {
            ["nominal"] = Number(press.Supply.Nominal.Volts),
            ["lowest"] = Number(press.Supply.Lowest.Volts),
            ["highest"] = Number(press.Supply.Highest.Volts),
        },
        ["supply_phases"] = press.Supply.Phases,
        ["phase_drop_v"] = Pair(press.Inverter.PhaseDrop, drop => drop.Volts),
        ["current_limit_a"] = Number(press.Inverter.LimitingCurrent.Amperes),
        ["motor"] = Motor(press.Motor),
        ["defaults"] = List(press.Defaults, Default),
    };

    private static JsonObject Motor(MachineMotor motor) => new()
    {
        ["connection"] = motor.Connection.ToString().ToLowerInvariant(),
        ["poles"] = motor.Circuit.Capability.Poles,
        ["rated_power_w"] = Number((double)motor.RatedPower.Watts),
        ["rated_speed_rpm"] = Number(motor.RatedSpeed.RevolutionsPerMinute),
        ["rated_torque_nm"] = Number(motor.RatedTorque.NewtonMeters),
        ["rated_current_a"] = Number(motor.RatedCurrent.Amperes),
        ["winding_cold_degc"] = Number(motor.Winding.Cold.DegreesCelsius),
        ["winding_hot_degc"] = Number(motor.Winding.Hot.DegreesCelsius),
        ["circuit"] = new JsonObject
        {
            ["capability"] = Circuit(motor.Circuit.Capability),
            ["hazard"] = Circuit(motor.Circuit.Hazard),
        },
        ["questions"] = List(motor.Questions, question => new JsonObject
        {
            ["asked"] = question.Asked,
            ["numbers"] = question.Numbers,
            ["check"] = question.Check,
        }),
        ["fit"] = motor.Fit is { } fit
            ? new JsonObject { ["capability"] = Fit(fit.Capability), ["hazard"] = Fit(fit.Hazard) }
            : null,
    };

    private static JsonObject Circuit(EquivalentCircuit circuit) => new()
    {
        ["r1_ohm"] = Number(circuit.R1.Ohms),
        ["x1_ohm"] = Number(circuit.X1.Ohms),
        ["r2_ohm"] = Number(circuit.R2.Ohms),
        ["x2_ohm"] = Number(circuit.X2.Ohms),
        ["xm_ohm"] = Number(circuit.Xm.Ohms),
        ["cage_rise"] = Number(circuit.Cage.Rise),
        ["cage_leakage_fall"] = Number(circuit.Cage.LeakageFall),
        ["rfe_ohm"] = Number(circuit.CoreLossResistance?.Ohms),
        ["saturation"] = Number(circuit.Saturation),
        ["line_v"] = Number(circuit.RatedLineVoltage.Volts),
        ["frequency_hz"] = Number(circuit.RatedFrequency.Hertz),
        ["resistances_at_degc"] = Number(circuit.ResistancesAt.DegreesCelsius),
    };

    private static JsonObject Fit(NameplateFit fit) => new()
    {
        ["verdict"] = fit.Verdict,
        ["targets"] = List(fit.Targets, target => new JsonObject
        {
            ["quantity"] = target.Quantity,
            ["unit"] = target.Unit,
            ["wanted"] = Number(target.Wanted),
            ["reached"] = Number(target.Reached),
            ["residual"] = Number(target.Residual),
            ["fitted"] = target.Fitted,
            ["assumed"] = target.Assumed,
        }),
    };

    private static JsonObject Default(AppliedDefault each) => new()
    {
        ["key"] = each.Key,
        ["meaning"] = each.Meaning,
        ["capability"] = each.Capability,
        ["hazard"] = each.Hazard,
        ["provenance"] = each.Provenance.InWords(),
        ["source"] = each.Source,
        ["reason"] = each.Reason,
    };

    private static JsonObject Voltages(VoltageStudy study) => new()
    {
        ["ceiling_line_v"] = Pair(study.Ceiling, volts => volts.Volts),
        ["nominal_ceiling_line_v"] = Number(study.NominalCeiling.Volts),
        ["real_base_frequency_hz"] = Number(study.RealBaseFrequency.Hertz),
        ["points"] = List(study.Points, at => new JsonObject
        {
            ["frequency_hz"] = Number(at.Frequency.Hertz),
            ["set_line_v"] = Number(at.Set.Volts),
            ["rated_flux_line_v"] = Number(at.RatedFlux.Volts),
            ["at_motor_standstill_line_v"] = Pair(at.AtMotor, volts => volts.Volts),
        }),
    };

    private static JsonObject Speeds(SpeedStudy study) => new()
    {
        ["slowest_rpm"] = Number(study.Slowest.RevolutionsPerMinute),
        ["fastest_rpm"] = Number(study.Fastest.RevolutionsPerMinute),
        ["belts"] = List(study.Belts, belt => new JsonObject
        {
            ["name"] = belt.Belt.Name,
            ["ratio"] = Number(belt.Belt.Ratio),
            ["lowest"] = SpeedNode(belt.AtLowest),
            ["base"] = SpeedNode(belt.AtBase),
            ["highest"] = SpeedNode(belt.AtHighest),
            ["highest_permitted_hz"] = Number(belt.Permitted.Frequency?.Hertz),
            ["passes_spindle_limit"] = belt.PassesSpindleLimit,
        }),
        ["gaps"] = List(study.Gaps, gap => new JsonObject
        {
            ["from_rpm"] = Number(gap.From.RevolutionsPerMinute),
            ["to_rpm"] = Number(gap.To.RevolutionsPerMinute),
        }),
    };

    private static JsonObject SpeedNode(SpeedAt speed) => new()
    {
        ["frequency_hz"] = Number(speed.Frequency.Hertz),
        ["synchronous_rpm"] = Number(speed.Synchronous.RevolutionsPerMinute),
        ["at_rated_torque_rpm"] = Number(speed.Loaded?.RevolutionsPerMinute),
    };

    private static JsonObject Torques(TorqueStudy study) => new()
    {
        ["bound"] = new JsonObject
        {
            ["without_resistance_nm"] = Number(study.Bound.WithoutResistance.NewtonMeters),
            ["by_nameplate_nm"] = Number(study.Bound.ByNameplate?.NewtonMeters),
            ["supply_factor"] = Number(study.Bound.SupplyFactor),
            ["set_overflux"] = Number(study.Bound.SetOverflux),
            ["counted_overflux"] = Number(study.Bound.CountedOverflux),
            ["motor_nm"] = Number(study.Bound.Motor.NewtonMeters),
        },
        ["motor"] = List(study.Motor, at => new JsonObject
        {
            ["frequency_hz"] = Number(at.Frequency.Hertz),
            ["pull_out_nm"] = Pair(at.PullOut, Nm),
            ["locked_rotor_nm"] = Pair(at.LockedRotor, Nm),
            ["ideal_boost_nm"] = Pair(at.IdealBoost, Nm),
            ["ideal_boost_locked_rotor_nm"] = Pair(at.IdealBoostLockedRotor, Nm),
            ["bound_nm"] = Number(study.Bound.Motor.NewtonMeters),
            ["short_time_nm"] = Number(at.ShortTime.NewtonMeters),
            ["short_time_limit"] = at.ShortTimeLimit,
            ["short_time_speed_rpm"] = Number(at.ShortTimeSpeed?.RevolutionsPerMinute),
        }),
        ["spindle"] = List(study.Spindle, spindle => new JsonObject
        {
            ["belt"] = spindle.Belt.Name,
            ["bound_nm"] = Number(spindle.Bound.NewtonMeters),
            ["points"] = List(spindle.Points, at => new JsonObject
            {
                ["frequency_hz"] = Number(at.Frequency.Hertz),
                ["synchronous_rpm"] = Number(at.SynchronousSpeed.RevolutionsPerMinute),
                ["pull_out_nm"] = Pair(at.PullOut, Nm),
                ["locked_rotor_nm"] = Pair(at.LockedRotor, Nm),
                ["ideal_boost_nm"] = Pair(at.IdealBoost, Nm),
                ["bound_nm"] = Number(spindle.Bound.NewtonMeters),
                ["short_time_nm"] = Number(at.ShortTime.NewtonMeters),
                ["short_time_power_w"] = Number((double?)at.ShortTimePower?.Watts),
            }),
        }),
    };

    private static JsonObject Hands(OverpoweringStudy study) => new()
    {
        ["chuck_diameter_mm"] = Number(study.ChuckDiameter.Millimeters),
        ["longest_reaction_s"] = Number(study.LongestReaction.Seconds),
        ["sample"] = study.Strength.Sample,
        ["source"] = study.Strength.Source,
        ["provenance"] = study.Strength.Provenance.InWords(),
        ["belts"] = List(study.Belts, row => new JsonObject
        {
            ["belt"] = row.Belt.Name,
            ["bound_nm"] = Number(row.Bound.NewtonMeters),
            ["bound_force_n"] = Number(row.BoundForce.Newtons),
            ["largest_modelled_force_n"] = Number(row.LargestModelledForce.Newtons),
            ["largest_ideal_boost_force_n"] = Number(row.LargestIdealBoostForce.Newtons),
            ["hands"] = List(row.Hands, hand => new JsonObject
            {
                ["hand"] = hand.Hand.Name,
                ["percentile"] = Number(hand.Hand.Percentile),
                ["hand_torque_nm"] = Number(hand.Hand.Torque.NewtonMeters),
                ["overpowering_speed"] = OverpoweringNode(hand.Answer),
                ["crossing_rpm"] = Pair(hand.Crossing, speed => speed?.RevolutionsPerMinute),
                ["bound_over_hand"] = Number(hand.BoundOverHand),
            }),
        }),
    };

    internal static JsonObject OverpoweringNode(OverpoweringSpeed answer) => new()
    {
        ["kind"] = answer switch
        {
            OverpoweringSpeed.NoSpeed => "none",
            OverpoweringSpeed.AlreadyAtStandstill => "already at standstill",
            OverpoweringSpeed.At => "at",
            _ => "intervals",
        },
        ["words"] = answer.Words,
        ["speeds_rpm"] = answer switch
        {
            OverpoweringSpeed.At at => new JsonArray(Interval(at.Speed, at.Speed)),
            OverpoweringSpeed.AlreadyAtStandstill lowest => new JsonArray(Interval(lowest.Lowest, lowest.Lowest)),
            OverpoweringSpeed.Within within => List(within.Speeds, each => Interval(each.Least, each.Most)),
            _ => new JsonArray(),
        },
    };

    private static JsonObject Interval(RotationalSpeed least, RotationalSpeed most) => new()
    {
        ["least"] = Number(least.RevolutionsPerMinute),
        ["most"] = Number(most.RevolutionsPerMinute),
    };

    private static JsonObject AsFound(BeforeStudy study) => new()
    {
        ["description"] = study.Description,
        ["belts"] = List(study.Belts, belt => new JsonObject
        {
            ["name"] = belt.Belt.Name,
            ["ratio"] = Number(belt.Belt.Ratio),
            ["speed_rpm"] = Number(belt.Speed.RevolutionsPerMinute),
            ["rated_torque_nm"] = Number(belt.RatedTorque.NewtonMeters),
            ["bound_nm"] = Number(belt.Bound.NewtonMeters),
        }),
    };

    private static double? Nm(Torque torque) => torque.NewtonMeters;
}
