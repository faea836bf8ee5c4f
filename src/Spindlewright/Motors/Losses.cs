using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors;

/// <summary>Friction and windage: a power at a reference speed and the power of speed by which it goes.</summary>
/// <param name="Reference">Loss at the reference speed, 0 or more; 0 switches it off.</param>
/// <param name="At">Reference speed, above 0.</param>
/// <param name="Exponent">1 (dry friction) to 3 (fan); 2 is usual.</param>
public sealed record RotationalLoss(Power Reference, RotationalSpeed At, double Exponent)
{
    private const string Part = "friction and windage";

    /// <summary>No friction and windage.</summary>
    public static RotationalLoss None { get; } = new(Power.Zero, RotationalSpeed.FromRevolutionsPerMinute(1), 2);

    /// <summary>Loss at the reference speed.</summary>
    public Power Reference { get; } = Guard.NotNegative(Reference, Part, "loss at the reference speed");

    /// <summary>Reference speed.</summary>
    public RotationalSpeed At { get; } = Guard.Positive(At, Part, "reference speed");

    /// <summary>Power of speed.</summary>
    public double Exponent { get; } = Guard.Within(Exponent, 1, 3, Part, "exponent");

    internal double Watts(double speedRadPerS) =>
        (double)Reference.Watts * Math.Pow(Math.Abs(speedRadPerS) / At.RadiansPerSecond, Exponent);
}

/// <summary>Stray-load loss: goes with the square of stator current and a power of speed.</summary>
/// <param name="Reference">Loss at the reference point, 0 or more; 0 switches it off.</param>
/// <param name="AtCurrent">Stator (line) current at the reference point, above 0.</param>
/// <param name="AtSpeed">Speed at the reference point, above 0.</param>
public sealed record StrayLoadLoss(Power Reference, ElectricCurrent AtCurrent, RotationalSpeed AtSpeed)
{
    private const string Part = "stray-load loss";

    /// <summary>No stray-load loss.</summary>
    public static StrayLoadLoss None { get; } =
        new(Power.Zero, ElectricCurrent.FromAmperes(1), RotationalSpeed.FromRevolutionsPerMinute(1));

    /// <summary>Loss at the reference point.</summary>
    public Power Reference { get; } = Guard.NotNegative(Reference, Part, "loss at the reference point");

    /// <summary>Stator (line) current at the reference point.</summary>
    public ElectricCurrent AtCurrent { get; } = Guard.Positive(AtCurrent, Part, "reference current");

    /// <summary>Speed at the reference point.</summary>
    public RotationalSpeed AtSpeed { get; } = Guard.Positive(AtSpeed, Part, "reference speed");

    /// <summary>Power of speed: 2 unless said otherwise, as the loss of induced currents goes; 0 to 3.</summary>
    public double SpeedExponent
    {
        get;
        init => field = Guard.Within(value, 0, 3, Part, "exponent of speed");
    } = 2;

    internal StrayLoadLoss ForCurrentsTimes(double factor) =>
        new(Reference, AtCurrent * factor, AtSpeed) { SpeedExponent = SpeedExponent };

    internal double Watts(double currentA, double speedRadPerS)
    {
        var (current, speed) = (currentA / AtCurrent.Amperes, Math.Abs(speedRadPerS) / AtSpeed.RadiansPerSecond);
        // The square, which all machines but odd ones have, without the cost of a general power.
        return (double)Reference.Watts * current * current * (SpeedExponent == 2 ? speed * speed : Math.Pow(speed, SpeedExponent));
    }
}
