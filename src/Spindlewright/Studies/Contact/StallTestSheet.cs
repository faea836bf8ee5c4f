using Spindlewright.Belts;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Contact;

/// <summary>One row of the sheet: what the bound asks of arm and scale at one belt position.</summary>
/// <param name="Belt">The belt position; null for the motor shaft with the belt off.</param>
/// <param name="Bound">No-credit bound there.</param>
/// <param name="ModelledAtLowest">Locked-rotor torque as modelled at the lowest frequency, hazard side.</param>
/// <param name="ExpectedForce">Of the bound at the end of the arm; null where no arm is given.</param>
/// <param name="LeastArm">Least length of arm at which scale and arm bear the bound; null where one of them is not given.</param>
/// <param name="Refusal">Why the test is refused; empty where it is not.</param>
public sealed record StallTestRow(
    BeltPosition? Belt, Torque Bound, Torque ModelledAtLowest, Force? ExpectedForce, Length? LeastArm, string Refusal);

/// <summary>The sheet for measuring torque: readings without a powered stall first, the arm last. Never with a hand.</summary>
/// <param name="Steps">In order.</param>
/// <param name="Rows">Motor shaft first, then the belt positions in the machine's order.</param>
public sealed record StallTestSheet(IReadOnlyList<string> Steps, IReadOnlyList<StallTestRow> Rows)
{
    /// <summary>Longest time of a powered stall.</summary>
    public static Duration Longest { get; } = Duration.FromSeconds(3);

    private static readonly string[] Procedure =
    [
        "Isolated: resistance between the motor's terminals, cold.",
        "Running unloaded: current at several frequencies.",
        "Running unloaded: time from the stop command to standstill, from several speeds.",
        "Drilling: speed under a cutting load.",
        "Only if these do not answer it, and not alone: belt off, an arm on the motor shaft that rests against the scale before power is applied.",
        "At the spindle last: a short bar resting against the column through the scale before power is applied, no free travel either way, a second stop behind it.",
        "Reverse disabled, one belt position, lowest frequency first, no boost, power for three seconds at most, guard in place, nobody in the plane of the bar.",
        "The arm bears the force of the bound, not that of the model. Never with a hand.",
    ];

    /// <summary>Makes the sheet.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <returns>The sheet, with rows refused where arm or scale is missing or too small for the bound.</returns>
    public static StallTestSheet Of(DrillPress press, TorqueStudy torques)
    {
        var test = press.ContactOrUsual.StallTest;
        return new(
            Procedure,
            [
                Row(test, null, torques.Bound.Motor, torques.Motor[0].LockedRotor.Hazard),
                .. torques.Spindle.Select(spindle => Row(test, spindle.Belt, spindle.Bound, spindle.Points[0].LockedRotor.Hazard)),
            ]);
    }

    private static StallTestRow Row(StallTest test, BeltPosition? belt, Torque bound, Torque modelled)
    {
        var force = test.Arm is { } arm ? Holding.AtPin(bound, arm) : (Force?)null;
        var least = test is { Scale: { } scale, ArmBears: { } bears } ? Holding.PinDistance(bound, UnitMath.Min(scale, bears)) : (Length?)null;
        return new(belt, bound, modelled, force, least, Refuse(test, force));
    }

    private static string Refuse(StallTest test, Force? force)
    {
        if (force is not { } needed) return "refused: the length of the arm is not given";
        if (test.Scale is not { } scale) return "refused: the range of the scale is not given";
        if (test.ArmBears is not { } bears) return "refused: what the arm bears is not given";
        if (needed > scale) return Invariant($"refused: the bound puts {needed.Newtons:0} N on a scale of {scale.Newtons:0} N");
        if (needed > bears) return Invariant($"refused: the bound puts {needed.Newtons:0} N on an arm that bears {bears.Newtons:0} N");
        return "";
    }
}
