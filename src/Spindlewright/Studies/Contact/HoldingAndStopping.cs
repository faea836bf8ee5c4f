using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>What holds the work at one belt position against its bound, whatever the tool.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="At">Force on a stop pin and clamping force by friction alone, at several distances from the axis.</param>
public sealed record HoldingAtBelt(BeltPosition Belt, Torque Bound, IReadOnlyList<(Length Distance, Force Pin, Force Clamps)> At);

/// <summary>A stop within the wanted turns, from the highest speed of a belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Speed">Highest spindle speed.</param>
/// <param name="Energy">Of everything that turns, hazard side.</param>
/// <param name="Time">Time for the wanted turns.</param>
/// <param name="MotorTorque">Braking torque at the motor shaft.</param>
/// <param name="MotorBound">No-credit bound at the motor shaft: a braking torque above it cannot be had.</param>
/// <param name="OverRated">That over the motor's rated torque.</param>
/// <param name="Power">At the beginning of the stop.</param>
/// <param name="MostResistance">Largest braking resistor that takes it.</param>
public sealed record StopAtBelt(
    BeltPosition Belt, RotationalSpeed Speed, Energy Energy, Duration Time, Torque MotorTorque, Torque MotorBound, double OverRated,
    Power Power, ElectricResistance MostResistance);

/// <summary>What is wound on at the highest speed of a belt position with one reaction.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Reaction">"fast", "slow", "foot", "startled" or "stop not reached".</param>
/// <param name="Time">Reaction time; null for "stop not reached".</param>
/// <param name="StopKnown">True where the stop that follows is counted in; false where no stop time is given and it is left out.</param>
/// <param name="Wound">What is wound on if there is so much; for "stop not reached" in the first second, without an end.</param>
public sealed record WoundAtBelt(BeltPosition Belt, string Reaction, Duration? Time, bool StopKnown, WoundOn Wound)
{
    /// <summary>A sleeve from wrist to shoulder of a large man: own choice.</summary>
    public static Length Sleeve { get; } = Length.FromMillimeters(600);

    /// <summary>Time in which a whole sleeve is on at full speed, hazard side.</summary>
    public required Duration SleeveTime { get; init; }
}

/// <summary>Numbers to design by: holding the work, guard, stop, frequency limits, what is wound on before any stop.</summary>
/// <param name="Holding">One a belt position.</param>
/// <param name="GuardDiameter">Least inner diameter of a chuck guard: chuck and 25 mm of room all round, so that no finger is crushed.</param>
/// <param name="GuardLength">Least length; null where the length of chuck and drill is not given.</param>
/// <param name="Stops">One a belt position.</param>
/// <param name="Permitted">For each belt position what always turns, then each cutter or mounted work that is fitted at times.</param>
/// <param name="Wound">Five a belt position.</param>
public sealed record HoldingAndStopping(
    IReadOnlyList<HoldingAtBelt> Holding, Length GuardDiameter, Length? GuardLength, IReadOnlyList<StopAtBelt> Stops,
    IReadOnlyList<PermittedFrequency> Permitted, IReadOnlyList<WoundAtBelt> Wound)
{
    // ISO 13854, least gap that does not crush a finger: from memory.
    private static readonly Length FingerGap = Length.FromMillimeters(25);
    private static readonly double[] DistancesMm = [100, 200];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="handbook">Tables: reaction times.</param>
    /// <returns>The numbers.</returns>
    public static HoldingAndStopping Of(DrillPress press, TorqueStudy torques, Handbook handbook)
    {
        var contact = press.ContactOrUsual;
        return new(
            [.. torques.Spindle.Select(spindle => HoldingOf(contact, spindle))], press.Spindle.ChuckDiameter + 2 * FingerGap,
            contact.ChuckLength, [.. press.Belts.Select(belt => Stop(press, contact, belt, torques.Bound.Motor))],
            [.. press.Belts.SelectMany(belt => PermittedFrequency.AllOf(press, belt))],
            [.. press.Belts.SelectMany(belt => WoundOnAt(press, contact, belt, handbook))]);
    }

    private static HoldingAtBelt HoldingOf(ContactInputs contact, SpindleTorques spindle) => new(
        spindle.Belt, spindle.Bound,
        [
            .. DistancesMm.Append(contact.ClampDistance?.Millimeters ?? DistancesMm[0]).Distinct().Order().Select(mm => Length.FromMillimeters(mm)).Select(far => (
                far, Spindlewright.Hazards.Holding.AtPin(spindle.Bound, far), Spindlewright.Hazards.Holding.ByFriction(spindle.Bound, far, contact.ClampFriction.Hazard))),
        ]);

    private static RotationalSpeed Fastest(DrillPress press, BeltPosition belt) =>
        belt.SpindleSpeed(press.Motor.Circuit.Hazard.SynchronousSpeedAt(press.Inverter.HighestFrequency));

    private static StopAtBelt Stop(DrillPress press, ContactInputs contact, BeltPosition belt, Torque motorBound)
    {
        var (inertia, speed) = (contact.AtSpindle(belt.Ratio, Side.Hazard), Fastest(press, belt));
        var time = RunDown.TimeForTurns(speed, contact.WantedTurns);
        var (torque, power) = (RunDown.BrakingTorque(inertia, speed, time) / belt.Ratio, RunDown.BrakingPower(inertia, speed, time));
        // The lower the link stands while braking, the smaller the resistor must be: its crest at nominal supply.
        var link = press.Supply.Nominal * Inverters.DcLink.PeakOverRms(press.Inverter.Link.Doubler);
        return new(
            belt, speed, RunDown.EnergyOf(inertia, speed), time, torque, motorBound, torque / press.Motor.RatedTorque, power,
            RunDown.MostResistance(link, power));
    }

    private static IEnumerable<WoundAtBelt> WoundOnAt(DrillPress press, ContactInputs contact, BeltPosition belt, Handbook handbook)
    {
        // The foot's time is own choice; the others are the handbook's, and the owner's longest.
        (string Name, double Seconds)[] reactions =
        [
            ("fast", handbook.Hand["reaction-simple"].Mean!.Value), ("slow", handbook.Hand["reaction-60"].Percentile95!.Value),
            ("foot", 0.75), ("startled", press.Person.LongestReaction.Seconds),
        ];
        var (speed, stop) = (Fastest(press, belt), contact.StopTime ?? Duration.Zero);
        var sleeve = WrapIn.TimeFor(WoundAtBelt.Sleeve, press.Spindle.ChuckDiameter, speed, contact.Layer.Hazard);
        WoundOn After(Duration reaction, Duration ramp) =>
            WrapIn.Of(press.Spindle.ChuckDiameter, speed, reaction, ramp, contact.Layer.Hazard);
        foreach (var (name, seconds) in reactions)
            yield return new(belt, name, Duration.FromSeconds(seconds), contact.StopTime is not null, After(Duration.FromSeconds(seconds), stop)) { SleeveTime = sleeve };
        yield return new(belt, "stop not reached", null, false, After(Duration.FromSeconds(1), Duration.Zero)) { SleeveTime = sleeve };
    }
}
