using Spindlewright.Foundations;
using Spindlewright.Hazards;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>A highest speed that something on the machine is made for.</summary>
/// <param name="Name">What it is, such as "hole saw 60 mm".</param>
/// <param name="Speed">Its highest speed, above 0.</param>
/// <param name="TurnsWithMotor">True where it turns with the motor shaft, false where with the spindle.</param>
/// <param name="AtTimes">True for a cutter or mounted work that is fitted at times, false for what always turns.</param>
public sealed record SpeedLimit(string Name, RotationalSpeed Speed, bool TurnsWithMotor, bool AtTimes = false)
{
    /// <summary>Its highest speed.</summary>
    public RotationalSpeed Speed { get; } = Guard.Positive(Speed, "speed limit", "speed");
}

/// <summary>The lever arm and scale of a torque test.</summary>
/// <param name="Arm">From the spindle's axis to the scale; null where not given.</param>
/// <param name="Scale">Most that the scale reads; null where not given.</param>
/// <param name="ArmBears">Most that the arm bears at the scale; null where not given.</param>
public sealed record StallTest(Length? Arm, Force? Scale, Force? ArmBears)
{
    /// <summary>From the spindle's axis to the scale, 50 mm to 2 m.</summary>
    public Length? Arm { get; } =
        Arm is { } arm ? Guard.Within(arm, Length.FromMillimeters(50), Length.FromMillimeters(2000), "stall test", "arm") : null;

    /// <summary>Most that the scale reads.</summary>
    public Force? Scale { get; } = Scale is { } scale ? Guard.Positive(scale, "stall test", "scale") : null;

    /// <summary>Most that the arm bears.</summary>
    public Force? ArmBears { get; } = ArmBears is { } bears ? Guard.Positive(bears, "stall test", "arm bears") : null;
}

/// <summary>What the study of contact needs beside the machine itself.</summary>
/// <remarks>
/// Figures that are null have no default: what rests on them is <em>not determined</em>. Diameters and inertia have pairs; the hazard
/// side is the one that makes force and length large.
/// </remarks>
public sealed record ContactInputs
{
    private const string Part = "contact";

    /// <summary>Spindle, chuck and spindle pulley.</summary>
    public required Sided<MassMomentOfInertia> SpindleInertia
    {
        get;
        init => field = value.Map(inertia => Guard.NotNegative(inertia, Part, "spindle inertia"));
    }

    /// <summary>Rotor and motor pulley, at the motor's speed.</summary>
    public required Sided<MassMomentOfInertia> MotorInertia
    {
        get;
        init => field = value.Map(inertia => Guard.NotNegative(inertia, Part, "motor inertia"));
    }

    /// <summary>Diameter of the tool's shank; the smaller, the larger the force.</summary>
    public required Sided<Length> ToolShank
    {
        get;
        init => field = value.Map(length => Guard.Within(length, Length.FromMillimeters(1), Length.FromMillimeters(100), Part, "tool shank"));
    }

    /// <summary>Diameter of a roll of cloth on the tool; the smaller, the larger the force.</summary>
    public required Sided<Length> Roll
    {
        get;
        init => field = value.Map(length => Guard.Within(length, Length.FromMillimeters(5), Length.FromMillimeters(300), Part, "roll"));
    }

    /// <summary>Thickness of what is wound on; the thicker, the longer the length a turn takes.</summary>
    public required Sided<Length> Layer
    {
        get;
        init => field = value.Map(length => Guard.Within(length, Length.Zero, Length.FromMillimeters(30), Part, "layer"));
    }

    /// <summary>Turns after which the spindle is wanted to stand still.</summary>
    public required double WantedTurns { get; init => field = Guard.Within(value, 0.1, 1000, Part, "wanted turns"); }

    /// <summary>Length of chuck and drill to be covered; null where not given.</summary>
    public Length? ChuckLength { get; init; }

    /// <summary>Measured time from stop command to standstill from the highest spindle speed in use; null where not given.</summary>
    public Duration? StopTime { get; init => field = value is { } time ? Guard.Positive(time, Part, "stop time") : null; }

    /// <summary>A workpiece that may be taken round; null where not described.</summary>
    public LoosePlate? Plate { get; init; }

    /// <summary>Mean distance of the clamps from the spindle's axis; null where not given.</summary>
    public Length? ClampDistance { get; init => field = value is { } far ? Guard.Positive(far, Part, "clamp distance") : null; }

    /// <summary>Friction that clamps can count on; the hazard side is the smaller.</summary>
    public required Sided<double> ClampFriction
    {
        get;
        init => field = value.Map(friction => Guard.Within(friction, 0.02, 1, Part, "clamp friction"));
    }

    /// <summary>Highest speeds beside that of the spindle; may be empty.</summary>
    public IReadOnlyList<SpeedLimit> SpeedLimits { get; init; } = [];

    /// <summary>Arm and scale of a torque test.</summary>
    public StallTest StallTest { get; init; } = new(null, null, null);

    /// <summary>Answers to the yes/no controls, by key; a question without an answer is missing.</summary>
    public IReadOnlyDictionary<string, bool> Controls { get; init; } = new Dictionary<string, bool>();

    /// <summary>Inertia of everything that turns, seen from the spindle.</summary>
    /// <param name="ratio">Motor speed over spindle speed.</param>
    /// <param name="side">Which of the pairs.</param>
    /// <returns>Js + Jm·i².</returns>
    public MassMomentOfInertia AtSpindle(double ratio, Side side) => SpindleInertia.On(side) + MotorInertia.On(side) * (ratio * ratio);

    /// <summary>Inertia of everything that turns, seen from the motor shaft.</summary>
    /// <param name="ratio">Motor speed over spindle speed.</param>
    /// <param name="side">Which of the pairs.</param>
    /// <returns>Jm + Js/i².</returns>
    public MassMomentOfInertia AtMotor(double ratio, Side side) => AtSpindle(ratio, side) / (ratio * ratio);

    /// <summary>The inputs of a machine of which nothing of all this is given.</summary>
    /// <param name="rated">Rated power of its motor.</param>
    /// <param name="poles">Its number of poles.</param>
    /// <returns>The pairs that stand in.</returns>
    public static ContactInputs Usual(Power rated, int poles) => new()
    {
        MotorInertia = MotorBuild.UsualInertia(rated, poles),
        SpindleInertia = new(MassMomentOfInertia.FromKilogramSquareMeters(0.001), MassMomentOfInertia.FromKilogramSquareMeters(0.015)),
        ToolShank = new(Length.FromMillimeters(13), Length.FromMillimeters(6)),
        Roll = new(Length.FromMillimeters(60), Length.FromMillimeters(30)),
        Layer = new(Length.FromMillimeters(0.5), Length.FromMillimeters(3)),
        ClampFriction = new(0.2, 0.1),
        WantedTurns = 3,
    };
}
