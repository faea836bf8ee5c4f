using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Hazards;

/// <summary>Energy of rotation, and how it goes: coasting against friction, or braked in a given time.</summary>
/// <remarks>Plain mechanics of a rigid body at an even rate: E = ½·J·ω², t = J·ω/T, n = ω·t/(4π).</remarks>
public static class RunDown
{
    private const string Part = "run-down";

    /// <summary>Energy of rotation.</summary>
    /// <param name="inertia">0 or more.</param>
    /// <param name="speed">0 or more.</param>
    /// <returns>½·J·ω².</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Energy EnergyOf(MassMomentOfInertia inertia, RotationalSpeed speed)
    {
        var radPerS = Guard.NotNegative(speed, Part, "speed").RadiansPerSecond;
        return Energy.FromJoules(Guard.NotNegative(inertia, Part, "inertia").KilogramSquareMeters * radPerS * radPerS / 2);
    }

    /// <summary>Time until friction stops it.</summary>
    /// <param name="inertia">0 or more.</param>
    /// <param name="speed">0 or more.</param>
    /// <param name="friction">Constant friction torque, above 0.</param>
    /// <returns>J·ω/T.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Duration CoastTime(MassMomentOfInertia inertia, RotationalSpeed speed, Torque friction) => Duration.FromSeconds(
        Guard.NotNegative(inertia, Part, "inertia").KilogramSquareMeters * Guard.NotNegative(speed, Part, "speed").RadiansPerSecond
        / Guard.Positive(friction, Part, "friction torque").NewtonMeters);

    /// <summary>Turns of a stop at an even rate.</summary>
    /// <param name="speed">Speed at its beginning, 0 or more.</param>
    /// <param name="stop">Time that it takes, 0 or more.</param>
    /// <returns>n·t/2.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double TurnsOf(RotationalSpeed speed, Duration stop) =>
        Guard.NotNegative(speed, Part, "speed").RevolutionsPerSecond * Guard.NotNegative(stop, Part, "stop time").Seconds / 2;

    /// <summary>Time of a stop at an even rate that turns so far.</summary>
    /// <param name="speed">Speed at its beginning, above 0.</param>
    /// <param name="turns">Turns, above 0.</param>
    /// <returns>2·turns/n.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Duration TimeForTurns(RotationalSpeed speed, double turns) => Duration.FromSeconds(
        2 * Guard.Positive(turns, Part, "turns") / Guard.Positive(speed, Part, "speed").RevolutionsPerSecond);

    /// <summary>Torque that stops it in a time.</summary>
    /// <param name="inertia">0 or more.</param>
    /// <param name="speed">0 or more.</param>
    /// <param name="stop">Above 0.</param>
    /// <returns>J·ω/t.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Torque BrakingTorque(MassMomentOfInertia inertia, RotationalSpeed speed, Duration stop) => Torque.FromNewtonMeters(
        Guard.NotNegative(inertia, Part, "inertia").KilogramSquareMeters * Guard.NotNegative(speed, Part, "speed").RadiansPerSecond
        / Guard.Positive(stop, Part, "stop time").Seconds);

    /// <summary>Largest power of a braked stop: at its beginning.</summary>
    /// <param name="inertia">0 or more.</param>
    /// <param name="speed">0 or more.</param>
    /// <param name="stop">Above 0.</param>
    /// <returns>T·ω; losses of motor and inverter, which take their share, are left out.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Power BrakingPower(MassMomentOfInertia inertia, RotationalSpeed speed, Duration stop) =>
        Power.FromWatts(BrakingTorque(inertia, speed, stop).NewtonMeters * speed.RadiansPerSecond);

    /// <summary>Largest braking resistor that takes a power.</summary>
    /// <param name="link">Link voltage while braking, the lower the more cautious; above 0.</param>
    /// <param name="power">Above 0.</param>
    /// <returns>V²/P.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static ElectricResistance MostResistance(ElectricPotential link, Power power)
    {
        var volts = Guard.Positive(link, Part, "link voltage").Volts;
        return ElectricResistance.FromOhms(volts * volts / Guard.Positive((double)power.Watts, Part, "braking power"));
    }
}
