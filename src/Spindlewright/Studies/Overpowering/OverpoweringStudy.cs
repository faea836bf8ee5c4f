using MathNet.Numerics.RootFinding;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Overpowering;

/// <summary>A hand to compare with.</summary>
/// <param name="Name">"weak hand" or "strong hand".</param>
/// <param name="Percentile">Percentile of the sample.</param>
/// <param name="Torque">What it can put on the chuck body.</param>
public sealed record StatedHand(string Name, double Percentile, Torque Torque);

/// <summary>One hand against one belt position.</summary>
/// <param name="Hand">The hand.</param>
/// <param name="Answer">From the larger torques (hazard side); conditions applied.</param>
/// <param name="Crossing">
/// Where the modelled torque of each side first passes the hand's, conditions left out; null where it does not below
/// base frequency. An intermediate, not an answer.
/// </param>
/// <param name="BoundOverHand">No-credit bound at the spindle over the hand's torque.</param>
public sealed record HandAgainstBelt(
    StatedHand Hand, OverpoweringSpeed Answer, Sided<RotationalSpeed?> Crossing, double BoundOverHand);

/// <summary>What hands at the chuck meet at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="BoundForce">Tangential force of the bound at the chuck body.</param>
/// <param name="LargestModelledForce">Tangential force of the largest modelled torque at the chuck body, hazard side.</param>
/// <param name="LargestIdealBoostForce">Tangential force of the largest ideal-boost torque at the chuck body, hazard side.</param>
/// <param name="Hands">Weak hand first, strong hand beside it.</param>
public sealed record BeltAgainstHands(
    BeltPosition Belt, Torque Bound, Force BoundForce, Force LargestModelledForce, Force LargestIdealBoostForce,
    IReadOnlyList<HandAgainstBelt> Hands);

/// <summary>Hand torque against spindle torque over every belt position.</summary>
/// <param name="Belts">One row a belt position.</param>
/// <param name="ChuckDiameter">Diameter held.</param>
/// <param name="Strength">The sample behind the hands.</param>
/// <param name="LongestReaction">Longest reaction time considered.</param>
/// <remarks>
/// The torque compared is the largest over 0 &lt; s ≤ 1, since holding is not stopping. An answer is given only for
/// frequencies up to base, only where locked-rotor torque has risen all the way from the lowest frequency (the larger of
/// cold and hot can dip and rise again, and so can a double cage), and only where the spindle turns less than once in the
/// longest reaction time; else the words are "no speed of this belt position".
/// </remarks>
public sealed record OverpoweringStudy(
    IReadOnlyList<BeltAgainstHands> Belts, Length ChuckDiameter, HandStrength Strength, Duration LongestReaction)
{
    /// <summary>Cells between the lowest frequency and the top in which a crossing is looked for.</summary>
    internal const int Steps = 256;

    /// <summary>Even steps from the lowest frequency to the top at which locked-rotor torque is watched for a fall.</summary>
    internal const int RiseSteps = 32;

    /// <summary>Just below a frequency, as a share of it: whether locked-rotor torque falls at the crossing itself.</summary>
    internal const double JustBelow = 1 - 1e-6;

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="strength">The hands of a sample.</param>
    /// <returns>What hands at the chuck meet.</returns>
    public static OverpoweringStudy Of(DrillPress press, TorqueStudy torques, HandStrength strength)
    {
        var diameter = press.Spindle.ChuckDiameter;
        var person = press.Person;
        StatedHand Hand(string name, double percentile) => new(name, percentile, strength.At(percentile, diameter));
        StatedHand[] hands = [Hand("weak hand", person.WeakPercentile), Hand("strong hand", person.StrongPercentile)];
        var drives = new Sided<Drive>(new Drive(press, Side.Capability), new Drive(press, Side.Hazard));
        return new(
            [.. torques.Spindle.Select(spindle => AtBelt(press, spindle, hands, drives))], diameter, strength,
            person.LongestReaction);
    }

    private static BeltAgainstHands AtBelt(
        DrillPress press, SpindleTorques spindle, StatedHand[] hands, Sided<Drive> drives)
    {
        var diameter = press.Spindle.ChuckDiameter;
        var belt = spindle.Belt;
        return new(
            belt, spindle.Bound, SurfaceForce.Of(spindle.Bound, diameter),
            SurfaceForce.Of(spindle.Points.Max(at => at.PullOut.Hazard), diameter),
            SurfaceForce.Of(spindle.Points.Max(at => at.IdealBoost.Hazard), diameter),
            [.. hands.Select(hand => Against(press, belt, spindle.Bound, hand, drives))]);
    }

    private static HandAgainstBelt Against(
        DrillPress press, BeltPosition belt, Torque bound, StatedHand hand, Sided<Drive> drives)
    {
        var crossing = new Sided<double?>(
            CrossingHz(press, belt, hand.Torque, drives.Capability), CrossingHz(press, belt, hand.Torque, drives.Hazard));
        RotationalSpeed? Spindle(double? hertz) => hertz is { } at ? SpeedAt(press, belt, at) : null;
        return new(
            hand, Answer(press, belt, crossing.Hazard, drives.Hazard),
            new(Spindle(crossing.Capability), Spindle(crossing.Hazard)), bound / hand.Torque);
    }

    private static OverpoweringSpeed Answer(DrillPress press, BeltPosition belt, double? crossingHz, Drive drive)
    {
        var speed = crossingHz is { } hertz ? SpeedAt(press, belt, hertz) : default;
        return OverpoweringAnswer.Speed(OutcomeOf(press, crossingHz, speed, drive), speed, press.Person.LongestReaction);
    }

    private static OverpoweringOutcome OutcomeOf(DrillPress press, double? crossingHz, RotationalSpeed speed, Drive drive)
    {
        if (crossingHz is not { } hertz) return OverpoweringOutcome.NeverPassed;
        if (hertz <= press.Inverter.LowestFrequency.Hertz) return OverpoweringOutcome.AlreadyAtStandstill;
        if (LockedRotorFallsBefore(press, hertz, drive)) return OverpoweringOutcome.LockedRotorFallsBefore;
        return speed >= press.Person.OneTurnSpeed ? OverpoweringOutcome.PastOneTurn : OverpoweringOutcome.At;
    }

    /// <summary>The lowest frequency, up to base, at which the spindle's largest torque passes the hand's.</summary>
    private static double? CrossingHz(DrillPress press, BeltPosition belt, Torque hand, Drive drive)
    {
        var friction = press.Spindle.FrictionTorque.On(drive.Side).NewtonMeters;
        var gain = belt.Ratio * belt.Efficiency.On(drive.Side);
        double Excess(double hertz) => drive.PullOutNm(hertz) * gain - friction - hand.NewtonMeters;
        var (lowest, top) = (press.Inverter.LowestFrequency.Hertz, TopHz(press.Inverter));
        if (Excess(lowest) >= 0) return lowest;
        var from = lowest;
        foreach (var to in EndsHz(press.Inverter, drive.CeilingMetHz))
        {
            if (Excess(to) >= 0) return to > from ? Brent.FindRoot(Excess, from, to, 1e-10, 100) : from;
            from = to;
        }
        return null;
    }

    /// <summary>Ends of the cells in which a crossing is looked for, rising.</summary>
    private static IEnumerable<double> EndsHz(Inverter inverter, double ceilingMetHz)
    {
        var (lowest, top) = (inverter.LowestFrequency.Hertz, TopHz(inverter));
        return Enumerable.Range(1, Steps).Select(step => lowest + (top - lowest) * step / Steps)
            // Where the voltage stops rising torque has a sharp peak, which no even step need meet.
            .Concat(BendsHz(inverter)).Concat(ceilingMetHz > lowest && ceilingMetHz < top ? [ceilingMetHz] : []).Order();
    }

    /// <summary>Whether locked-rotor torque falls anywhere on the way to a frequency, or there.</summary>
    private static bool LockedRotorFallsBefore(DrillPress press, double hertz, Drive drive)
    {
        double[] rise = [.. WatchedHz(press.Inverter).TakeWhile(at => at <= hertz).Append(hertz).Select(drive.LockedRotorNm)];
        return rise.Zip(rise.Skip(1)).Any(step => step.Second < step.First)
            || drive.LockedRotorNm(hertz) < drive.LockedRotorNm(hertz * JustBelow);
    }

    /// <summary>Frequencies at which locked-rotor torque is watched, rising: even steps, and the law's bends, between which it may be level.</summary>
    internal static double[] WatchedHz(Inverter inverter)
    {
        var (lowest, top) = (inverter.LowestFrequency.Hertz, TopHz(inverter));
        return
        [
            .. Enumerable.Range(0, RiseSteps + 1).Select(step => lowest + (top - lowest) * step / RiseSteps)
                .Concat(BendsHz(inverter)).Order(),
        ];
    }

    /// <summary>The law's bends between the lowest frequency and the top, rising.</summary>
    internal static IEnumerable<double> BendsHz(Inverter inverter) =>
        inverter.Curve.BendsHz.Where(hertz => hertz > inverter.LowestFrequency.Hertz && hertz < TopHz(inverter));

    /// <summary>The highest frequency for which an answer is given: base frequency, or the highest of the settings.</summary>
    internal static double TopHz(Inverter inverter) =>
        Math.Min(inverter.Curve.BaseFrequency.Hertz, inverter.HighestFrequency.Hertz);

    private static RotationalSpeed SpeedAt(DrillPress press, BeltPosition belt, double hertz) =>
        belt.SpindleSpeed(press.Motor.Circuit.Hazard.SynchronousSpeedAt(Frequency.FromHertz(hertz)));
}
