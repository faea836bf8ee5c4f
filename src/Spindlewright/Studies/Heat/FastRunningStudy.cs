using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Heat;

/// <summary>
/// A belief of the trade (common practice, no source): a small motor kept at twice base frequency overheats, while the
/// intermittent work of a bench drill leaves it cool. Computed, whatever comes out.
/// </summary>
internal static class FastRunningStudy
{
    private static readonly double[] Shares = [0, 0.25, 0.5, 0.75, 1, 1.25];

    /// <summary>Period of the intermittent work; own choice, a hole every three minutes.</summary>
    private static readonly Duration Period = Duration.FromMinutes(3);

    /// <summary>Share of the period under load that counts as the intermittent work of a bench drill; own choice.</summary>
    private const double DrillingShare = 0.4;

    internal static FastRunning Of(DrillPress press, Sided<HeatedMotor> motors, Torque bound, Handbook handbook)
    {
        var hertz = 2 * press.Inverter.Curve.BaseFrequency.Hertz;
        var ratedPowerNm = press.Motor.RatedTorque.NewtonMeters
            * press.Motor.RatedSpeed.RevolutionsPerMinute * press.Motor.Circuit.Capability.Poles / (120 * hertz);
        var loads = Shares.Select(share => Load(motors, hertz, share, share * ratedPowerNm)).ToList();
        var heat = motors.Map(motor => motor.Continuous(hertz, motor.Limit).TorqueNm);
        var (shortNm, shortLimit, _) = TorqueStudy.ShortTimeAt(press, motors.Capability.Drive, hertz);
        var pullOut = motors.Map(motor => motor.Drive.PullOutNm(hertz));
        var limits = Limits(press, handbook, hertz, heat, (shortNm, shortLimit), pullOut);
        var kept = shortNm <= 0 || heat.Capability >= shortNm ? Belief.NotBorneOut
            : heat.Hazard < shortNm ? Belief.BorneOut : Belief.InPart;
        var duty = shortNm > 0 ? Load(motors, hertz, shortNm / ratedPowerNm, shortNm).DutyShare : null;
        var intermittent = duty is null ? Belief.InPart
            : duty.Capability >= DrillingShare ? Belief.BorneOut : duty.Hazard >= DrillingShare ? Belief.InPart : Belief.NotBorneOut;
        return new(
            Frequency.FromHertz(hertz), Period, loads, limits, kept, intermittent,
            Words(press, motors, bound, hertz, loads, heat, shortNm, pullOut, limits, duty, (kept, intermittent)));
    }

    private static FastLoad Load(Sided<HeatedMotor> motors, double hertz, double share, double torqueNm)
    {
        var name = share == 0 ? "unloaded" : Invariant($"{100 * share:0} % of rated power");
        var state = HeatCases.Running(name, motors, hertz, torqueNm);
        return new(share, state, state.Stalls
            ? null
            : motors.Map(motor => motor.DutyShare(motor.Stage(hertz, torqueNm, Period)!, Period)));
    }

    private static List<FastLimit> Limits(
        DrillPress press, Handbook handbook, double hertz, Sided<double> heat, (double TorqueNm, string Limit) shortTime,
        Sided<double> pullOut)
    {
        Torque Nm(double newtonMeters) => Torque.FromNewtonMeters(newtonMeters);
        var torques = new List<FastLimit>
        {
            new("heat, class limit", Nm(heat.Capability), Invariant($"{heat.Capability:0.00} N·m on the hot side, {heat.Hazard:0.00} N·m on the cool side, for ever"), false),
            new("short-time torque", Nm(shortTime.TorqueNm), Invariant($"{shortTime.TorqueNm:0.00} N·m, set by: {shortTime.Limit}"), false),
            new("pull-out torque", Nm(pullOut.Capability), Invariant($"{pullOut.Capability:0.00} to {pullOut.Hazard:0.00} N·m; beyond it the motor stalls"), false),
        };
        return [.. Speeds(press, handbook, hertz).OrderByDescending(limit => limit.Passed), .. torques.OrderBy(limit => limit.Torque)];
    }

    private static IEnumerable<FastLimit> Speeds(DrillPress press, Handbook handbook, double hertz)
    {
        var circuit = press.Motor.Circuit.Capability;
        var rpm = circuit.SynchronousSpeedAt(Frequency.FromHertz(hertz)).RevolutionsPerMinute;
        if (handbook.MotorFacts.TryFind(Invariant($"greatest-speed-{circuit.Poles}-pole"), out var fact))
        {
            var most = fact.Required().Value;
            yield return new("speed of the motor", null, Invariant($"{rpm:0} r/min against {most:0} r/min for frames up to 112 ({fact.Citation.Provenance.InWords()}); ask the maker of the bearings"), rpm > most);
        }
        if (press.Spindle.HighestSpeed is not { } highest) yield break;
        var past = press.Belts.Where(belt => rpm / belt.Ratio > highest.RevolutionsPerMinute).Select(belt => belt.Name).ToList();
        yield return new(
            "speed of the spindle", null, past.Count == 0
                ? Invariant($"no belt position passes {highest.RevolutionsPerMinute:0} r/min")
                : Invariant($"belt position {string.Join(", ", past)} passes {highest.RevolutionsPerMinute:0} r/min"), past.Count > 0);
    }

    private static string Words(
        DrillPress press, Sided<HeatedMotor> motors, Torque bound, double hertz, List<FastLoad> loads, Sided<double> heat,
        double shortNm, Sided<double> pullOut, List<FastLimit> limits, Sided<double>? duty, (Belief Kept, Belief Intermittent) belief)
    {
        var limit = motors.Capability.Limit.DegreesCelsius;
        string Degrees(Temperature? final) => final is { } settled ? Invariant($"{settled.DegreesCelsius:0} °C") : "no steady temperature";
        var unloaded = loads[0].Case.Final;
        var reach = press.Inverter.HighestFrequency.Hertz < hertz
            ? Invariant($" (the settings stop at {press.Inverter.HighestFrequency.Hertz:0.#} Hz)") : "";
        var kept = belief.Kept switch
        {
            Belief.NotBorneOut => "The first half of the belief is not borne out for loads that leave a margin to stalling: up to its short-time torque the motor may be kept there for ever." + NearPullOut(heat.Capability, pullOut.Capability),
            Belief.BorneOut => "The first half of the belief is borne out for loads between these figures: kept there under such a load it passes the limit.",
            _ => "The first half of the belief is borne out on the hot side only.",
        };
        var intermittent = duty is null
            ? "Intermittent work was not computed: the motor has no torque to give there."
            : Invariant($"With a period of {Period.Minutes:0} min the short-time torque may be on for {100 * duty.Capability:0} % (hot side) to {100 * duty.Hazard:0} % (cool side) of the time, so the second half, that intermittent drilling ({100 * DrillingShare:0} % of the time) leaves it below its limit, is {Verdict(belief.Intermittent)}.");
        return Invariant(
            $"At {hertz:0.#} Hz{reach} the unloaded winding settles at {Degrees(unloaded.Hazard)} to {Degrees(unloaded.Capability)}; the class limit is {limit:0} °C. Heat allows {heat.Capability:0.00} N·m (hot side) to {heat.Hazard:0.00} N·m (cool side) for ever; the motor can give {shortNm:0.00} N·m for a short time (bound {bound.NewtonMeters:0.0} N·m). {kept} {intermittent} What is met first: {limits[0].Name}, {limits[0].Words}.");
    }

    private static string NearPullOut(double heatNm, double pullOutNm) => heatNm >= pullOutNm
        ? " Even at pull-out it would not pass its limit."
        : Invariant($" Only between {heatNm:0.00} N·m and its pull-out torque of {pullOutNm:0.00} N·m (hot side), where a little more stalls it, would it become too hot.");

    private static string Verdict(Belief belief) => belief == Belief.InPart ? "borne out on the cool side only" : belief.InWords();
}
