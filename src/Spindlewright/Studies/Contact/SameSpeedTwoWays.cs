using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Before;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>One way to a spindle speed.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">The frequency that makes it, unloaded.</param>
/// <param name="Torque">At the spindle.</param>
/// <param name="ChuckForce">Steady force at the chuck body.</param>
/// <param name="Energy">Of everything that turns, hazard side.</param>
/// <param name="WoundOn">Wound on the chuck body in the longest reaction time.</param>
public sealed record WayToSpeed(
    BeltPosition Belt, Frequency Frequency, SideBySide<Torque> Torque, SideBySide<Force> ChuckForce, Energy Energy, Length WoundOn);

/// <summary>One spindle speed, by belt and by frequency.</summary>
/// <param name="Speed">Synchronous spindle speed.</param>
/// <param name="Ways">One a belt position that reaches it, highest ratio first.</param>
/// <param name="AsFound">Bound of the machine as found at its position nearest to the speed, within a tenth; null where it has none.</param>
public sealed record SpeedTwoWays(RotationalSpeed Speed, IReadOnlyList<WayToSpeed> Ways, BeltAsFound? AsFound);

/// <summary>The same spindle speed reached by belt and reached by frequency, and beside the machine as found.</summary>
/// <param name="Speeds">Slowest first; those that two positions or more reach.</param>
public sealed record SameSpeedTwoWays(IReadOnlyList<SpeedTwoWays> Speeds)
{
    private const double NearEnough = 0.1;
    private const double Apart = 1.2;
    private static readonly double[] UsualRpm = [80, 125, 200, 315, 500, 800, 1250, 2000];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <returns>Usual speeds and those of the owner's work and of the machine as found.</returns>
    public static SameSpeedTwoWays Of(DrillPress press, TorqueStudy torques)
    {
        var (drive, before) = (new Drive(press, Side.Hazard), BeforeStudy.Of(press));
        // Speeds of the machine as found come first, then those of the work, then usual ones; near ones stand for each other.
        List<double> chosen = [];
        foreach (var rpm in (before?.Belts.Select(belt => belt.Speed) ?? []).Concat(press.Work.Select(item => item.Speed)).Select(speed => speed.RevolutionsPerMinute).Concat(UsualRpm))
            if (chosen.TrueForAll(other => Math.Max(rpm, other) > Apart * Math.Min(rpm, other))) chosen.Add(Math.Round(rpm));
        var speeds = chosen.Order().Select(rpm => RotationalSpeed.FromRevolutionsPerMinute(rpm));
        return new([.. speeds.Select(speed => At(press, torques, drive, speed, before)).Where(each => each.Ways.Count > 1)]);
    }

    /// <summary>The lowest and the highest bound among the ways to a speed.</summary>
    /// <param name="speed">A row.</param>
    /// <returns>Highest over lowest bound, 1 or more.</returns>
    public static double BoundApart(SpeedTwoWays speed) => speed.Ways.Max(way => way.Torque.Bound) / speed.Ways.Min(way => way.Torque.Bound);

    private static SpeedTwoWays At(
        DrillPress press, TorqueStudy torques, Drive drive, RotationalSpeed speed, BeforeStudy? before)
    {
        var ways = torques.Spindle.Select(spindle => (spindle.Belt, Hertz: (speed * spindle.Belt.Ratio).RevolutionsPerMinute * press.Motor.Circuit.Hazard.Poles / 120))
            .Where(each => each.Hertz >= press.Inverter.LowestFrequency.Hertz && each.Hertz <= press.Inverter.HighestFrequency.Hertz)
            .OrderByDescending(each => each.Belt.Ratio).Select(each => Way(press, torques, drive, speed, each.Belt, each.Hertz));
        var near = before?.Belts.MinBy(belt => Math.Abs(belt.Speed / speed - 1));
        return new(speed, [.. ways], near is not null && Math.Abs(near.Speed / speed - 1) <= NearEnough ? near : null);
    }

    private static WayToSpeed Way(
        DrillPress press, TorqueStudy torques, Drive drive, RotationalSpeed speed, BeltPosition belt, double hertz)
    {
        var contact = press.ContactOrUsual;
        Torque Through(double motorNm) => UnitMath.Max(
            Torque.Zero, belt.SpindleTorque(Torque.FromNewtonMeters(motorNm), Side.Hazard) - press.Spindle.FrictionTorque.Hazard);
        var torque = new SideBySide<Torque>(
            torques.Bound.AtSpindle(belt), Through(drive.IdealBoostNm(hertz)), Through(drive.PullOutNm(hertz)),
            Through(TorqueStudy.AtCurrentLimitNm(press, drive, hertz)));
        return new(
            belt, Frequency.FromHertz(hertz), torque, torque.Map(each => SurfaceForce.Of(each, press.Spindle.ChuckDiameter)),
            RunDown.EnergyOf(contact.AtSpindle(belt.Ratio, Side.Hazard), speed),
            WrapIn.Of(press.Spindle.ChuckDiameter, speed, press.Person.LongestReaction, Duration.Zero, contact.Layer.Hazard).Length);
    }
}
