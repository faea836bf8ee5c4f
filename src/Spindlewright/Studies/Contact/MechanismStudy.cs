using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Studies.Contact;

/// <summary>The mechanisms in the order that accidents have them, each against published figures. There is no overall score.</summary>
/// <param name="Mechanisms">All seven, in order.</param>
public sealed record MechanismStudy(IReadOnlyList<Mechanism> Mechanisms)
{
    // From the elbow to the knuckles of a large man, own choice: the longer, the larger the moment.
    private static readonly Length Forearm = Length.FromMillimeters(300);

    private static readonly Measure Guard = new("guard the chuck", MeasureKind.PreventsContact);
    private static readonly Measure Clothing = new("no gloves, loose sleeves, rings, neckwear or loose hair", MeasureKind.PreventsContact);
    private static readonly Measure Clamp = new("clamp the work, or let it rest against a stop", MeasureKind.PreventsContact);
    private static readonly Measure Stop = new("a stop in reach with both hands caught, that stays off", MeasureKind.PreventsContact);
    private static readonly Measure Position = new("a faster belt position: less torque, more speed", MeasureKind.ChangesTheBound);
    private static readonly Measure MotorSize = new("a smaller motor", MeasureKind.ChangesTheBound);
    private static readonly Measure NoBoost = new("no boost", MeasureKind.NotCredited);
    private static readonly Measure Limit = new("a current limit", MeasureKind.NotCredited);

    private static readonly string[] Pulls = ["ring-avulsion", "finger-joint-damage", "finger-fracture"];
    private static readonly string[] Bendings = ["forearm-bending", "forearm-bending-small"];
    private static readonly string[] StartControls = ["no_restart", "reverse_from_standstill"];
    private static readonly string[] NoLimits = ["no speed limit is given: highest_speed of [spindle], or [[speed_limit]]"];
    private static readonly string[] NoPulleys = ["no pulleys are given: the pull of the belts at a nip"];

    /// <summary>What is not determined, with the mechanism it belongs to: shown first.</summary>
    public IReadOnlyList<(string Mechanism, string Missing)> NotDetermined =>
        [.. Mechanisms.SelectMany(each => each.NotDetermined.Select(missing => (each.Name, missing)))];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="forces">Its forces.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The mechanisms.</returns>
    public static MechanismStudy Of(DrillPress press, SurfaceForceStudy forces, Handbook handbook)
    {
        var against = new Comparing(forces, handbook);
        return new(
        [
            WoundIn(against), TakenRound(press, against), Caught(against), OverItsSpeed(press, against), Started(press, against),
            RunningDown(press, against), BeltsAndLink(press, against),
        ]);
    }

    private static Mechanism WoundIn(Comparing against) => new(
        1, "clothing, glove or hair wound in",
        [
            .. Pulls.Select(key => against.Force(key, "steady pull at the wrapped roll", "wrapped roll", at => at.Steady)),
            against.Force("hand-transient", "largest pull of a roll on a hand held fast", "wrapped roll", at => at.HeldFast),
            .. Bendings.Select(key => against.Moment(key, Forearm)),
            against.SurfaceSpeed("setting-speed"),
        ],
        ["whether cloth, glove or hair tears before that: no published criterion was found"], [Guard, Clothing, Stop, Position, MotorSize, NoBoost, Limit]);

    private static Mechanism TakenRound(DrillPress press, Comparing against)
    {
        if (press.ContactOrUsual.Plate is not { } plate)
            return new(2, "work taken round", [], ["no loose work is described: length, width, thickness and offset of [loose_work]"], [Clamp, Position, MotorSize, Limit]);
        // A hand at the middle of the long arm, where it would hold the plate.
        var grip = plate.EdgeRadius / 2;
        return new(
            2, "work taken round",
            [
                against.HeldAt("hand-transient", "force at a grip half way to the farthest corner", grip),
                against.HeldAt("finger-fracture", "force at the farthest corner", plate.EdgeRadius),
                against.Energy("wrist-fracture", "energy of plate and drive train", plate),
                against.Energy("guard-energy", "energy of plate and drive train", plate),
            ],
            [], [Clamp, Position, MotorSize, NoBoost, Limit]);
    }

    private static Mechanism Caught(Comparing against) => new(
        3, "hand caught or pinched at the chuck",
        [
            against.Force("finger-entrapment", "steady force at the chuck body", "chuck body", at => at.Steady),
            against.Force("hand-quasi-static", "steady force at the chuck body", "chuck body", at => at.Steady),
            against.Force("hand-transient", "largest force on a hand carried along", "chuck body", at => at.FreeHand),
            against.Force("finger-joint-damage", "largest force on a hand held fast", "chuck body", at => at.HeldFast),
            against.Force("finger-fracture", "largest force on a hand held fast at the tool shank", "tool shank", at => at.HeldFast),
        ],
        [], [Guard, Clothing, Stop, Position, MotorSize, NoBoost, Limit]);

    /// <summary>Limits are the owner's own figures: no published figure of injury stands on the other side.</summary>
    private static Mechanism OverItsSpeed(DrillPress press, Comparing against)
    {
        var comparisons = PermittedFrequency.LimitsOf(press).Select(limit => against.OverLimit(limit)).ToList();
        return new(
            4, "tool, chuck or mounted work over its speed", comparisons,
            [.. NoLimits.Where(_ => comparisons.Count == 0), "what a part that bursts would hit: no model"],
            [new("hold to the highest permitted frequency of the belt position in use", MeasureKind.PreventsContact), Guard]);
    }

    private static Mechanism Started(DrillPress press, Comparing against) => new(
        5, "unexpected start, sudden reversal, restart after supply loss",
        [
            against.Force("guard-force", "force of a start from rest at the chuck body", "chuck body", at => at.FromRest),
            against.Force("finger-joint-damage", "force of a start from rest at the tool shank", "tool shank", at => at.FromRest),
        ],
        [
            .. StartControls.Where(key => !press.ContactOrUsual.Controls.ContainsKey(key))
                .Select(key => $"whether it can start by itself: {key} of [controls] is not answered"),
        ],
        [new("no restart after a loss of supply; reverse only from standstill", MeasureKind.PreventsContact), new("isolate before touching", MeasureKind.PreventsContact), Position, MotorSize]);

    private static Mechanism RunningDown(DrillPress press, Comparing against) => press.ContactOrUsual.StopTime is not { } stop
        ? new(6, "contact while running down", [], ["no measured stop time: stop_time of [contact]"], [Guard, Stop])
        : new(6, "contact while running down", [against.StopTime(stop), against.TrainEnergy("guard-energy")], [], [Guard, Stop, new("a braking resistor", MeasureKind.NotCredited)]);

    private static Mechanism BeltsAndLink(DrillPress press, Comparing against) => new(
        7, "belts, charged link, handling",
        press.Belts.All(belt => belt.Pulleys.Count == 0) ? [] : [against.BeltPull("finger-fracture")],
        [
            .. NoPulleys.Where(_ => press.Belts.All(belt => belt.Pulleys.Count == 0)),
            "how long the link stays charged: as its maker says, then have it measured", "what a heavier motor does to head and column: no masses are given",
        ],
        [
            new("a cover over the belts that stops the motor when it opens", MeasureKind.PreventsContact),
            new("isolate before touching belts or wiring", MeasureKind.PreventsContact), MotorSize,
        ]);
}
