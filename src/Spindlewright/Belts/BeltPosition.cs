using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Belts;

/// <summary>One pair of pulleys that a belt joins, by datum diameters.</summary>
/// <param name="Driving">The pulley nearer the motor.</param>
/// <param name="Driven">The pulley nearer the spindle.</param>
public sealed record PulleyPair(Length Driving, Length Driven)
{
    private static readonly Length Least = Length.FromMillimeters(10);
    private static readonly Length Most = Length.FromMillimeters(1000);

    /// <summary>Datum diameter of the pulley nearer the motor, 10 mm to 1000 mm.</summary>
    public Length Driving { get; } = Guard.Within(Driving, Least, Most, "belt", "diameter of the driving pulley");

    /// <summary>Datum diameter of the pulley nearer the spindle, 10 mm to 1000 mm.</summary>
    public Length Driven { get; } = Guard.Within(Driven, Least, Most, "belt", "diameter of the driven pulley");

    /// <summary>Speed of the driving over speed of the driven pulley.</summary>
    public double Ratio => Driven / Driving;
}

/// <summary>One setting of the belt or belts.</summary>
public sealed record BeltPosition
{
    private const string Part = "belt";

    /// <summary>Makes a belt position from a known ratio.</summary>
    /// <param name="name">What the owner calls it.</param>
    /// <param name="ratio">Motor speed over spindle speed, 0.05 to 100.</param>
    /// <param name="efficiency">Power out over power in, 0.5 to 1; 1 on the hazard side.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public BeltPosition(string name, double ratio, Sided<double> efficiency)
    {
        Name = name.Trim().Length > 0 ? name : throw new PartException(Part, "name", "empty", "a name");
        Ratio = Guard.Within(ratio, 0.05, 100, Part, "ratio of motor speed to spindle speed");
        Efficiency = efficiency.Map(value => Guard.Within(value, 0.5, 1, Part, "efficiency"));
    }

    /// <summary>Makes a belt position from its pulleys, motor end first; two pairs where there is an intermediate pulley.</summary>
    /// <param name="name">What the owner calls it.</param>
    /// <param name="pairs">One pair or more.</param>
    /// <param name="efficiency">Power out over power in of the whole path, 0.5 to 1.</param>
    /// <returns>The position.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static BeltPosition FromPulleys(string name, IReadOnlyList<PulleyPair> pairs, Sided<double> efficiency) =>
        new(name, pairs.Aggregate(1.0, (ratio, pair) => ratio * pair.Ratio), efficiency) { Pulleys = pairs };

    /// <summary>What the owner calls it.</summary>
    public string Name { get; }

    /// <summary>Motor speed over spindle speed.</summary>
    public double Ratio { get; }

    /// <summary>Power out over power in.</summary>
    public Sided<double> Efficiency { get; }

    /// <summary>The pulleys, motor end first; empty where only the ratio is known.</summary>
    public IReadOnlyList<PulleyPair> Pulleys { get; private init; } = [];

    /// <summary>
    /// Torque at the spindle at which the belt was seen to slip, at the tension it had then; null where it was not measured. It
    /// holds for this position and that tension alone, and no bound credits it.
    /// </summary>
    public Torque? MeasuredSlip
    {
        get;
        private init => field = value is { } torque ? Guard.Positive(torque, Part, "measured slip torque") : null;
    }

    /// <summary>The same position with a measured slip torque.</summary>
    /// <param name="measuredSlip">Above 0; null for none.</param>
    /// <returns>A new position.</returns>
    /// <exception cref="PartException">Not above 0.</exception>
    public BeltPosition With(Torque? measuredSlip) => this with { MeasuredSlip = measuredSlip };

    /// <summary>Spindle speed at a motor speed, creep left out.</summary>
    /// <param name="motor">Motor speed.</param>
    /// <returns>Spindle speed.</returns>
    public RotationalSpeed SpindleSpeed(RotationalSpeed motor) => motor / Ratio;

    /// <summary>Spindle torque at a motor torque.</summary>
    /// <param name="motor">Torque at the motor shaft.</param>
    /// <param name="side">Which efficiency to take.</param>
    /// <returns>Motor torque times ratio times efficiency.</returns>
    public Torque SpindleTorque(Torque motor, Side side) => motor * (Ratio * Efficiency.On(side));
}
