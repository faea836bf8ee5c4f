using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors.Heat;

/// <summary>What moves the cooling air.</summary>
public enum Ventilation
{
    /// <summary>A fan on the motor's own shaft: less air at less speed.</summary>
    Self,

    /// <summary>A fan with a motor of its own: the air of rated speed at every speed.</summary>
    Separate,
}

/// <summary>A motor as one body that stores heat and sheds it, faster the faster its own fan turns.</summary>
/// <remarks>
/// <para>
/// C·dθ/dt = loss − Λ(n)·θ with θ the mean rise of the winding over the coolant. At rated speed Λ = rated loss / rated
/// rise and C = Λ × running time constant. At standstill Λ is smaller by the ratio of the time constants; between,
/// Λ(n) = Λ0 + (Λ1 − Λ0)·(n/n rated)^0.8, the exponent of forced convection in turbulent air (textbook, from memory).
/// </para>
/// <para>
/// Limitations: one body. A winding heats ahead of its iron, so a heavy overload of less than a few minutes is hotter than
/// this says; <see cref="WindingAlone"/> is the other end. Where the losses arise is not told apart.
/// </para>
/// </remarks>
public sealed record ThermalBody
{
    private const string Part = "motor heating";

    /// <summary>Power of speed by which the fan's share of the cooling goes.</summary>
    public const double CoolingExponent = 0.8;

    /// <summary>Makes a body.</summary>
    /// <param name="ratedLoss">All losses at rated load, above 0.</param>
    /// <param name="ratedRise">Rise of the winding over the coolant at rated load, 10 K to 200 K.</param>
    /// <param name="runningTimeConstant">At rated speed, 0.5 min to 10 h.</param>
    /// <param name="standstillOverRunning">Time constant at standstill over that at rated speed, 1 to 10.</param>
    /// <param name="ratedSpeed">Speed at which the running figures stand, above 0.</param>
    /// <param name="ventilation">What moves the air.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public ThermalBody(
        Power ratedLoss, TemperatureDelta ratedRise, Duration runningTimeConstant, double standstillOverRunning,
        RotationalSpeed ratedSpeed, Ventilation ventilation = Ventilation.Self)
    {
        RatedLoss = Guard.Positive(ratedLoss, Part, "loss at rated load");
        RatedRise = Guard.Within(
            ratedRise, TemperatureDelta.FromKelvins(10), TemperatureDelta.FromKelvins(200), Part, "rise at rated load");
        RunningTimeConstant = Guard.Within(
            runningTimeConstant, Duration.FromMinutes(0.5), Duration.FromMinutes(600), Part, "time constant");
        StandstillOverRunning = Guard.Within(
            standstillOverRunning, 1, 10, Part, "standstill over running", "a motor at rest cools slower");
        RatedSpeed = Guard.Positive(ratedSpeed, Part, "rated speed");
        Ventilation = ventilation;
    }

    /// <summary>All losses at rated load.</summary>
    public Power RatedLoss { get; }

    /// <summary>Rise of the winding at rated load.</summary>
    public TemperatureDelta RatedRise { get; }

    /// <summary>Time constant at rated speed.</summary>
    public Duration RunningTimeConstant { get; }

    /// <summary>Time constant at standstill over that at rated speed.</summary>
    public double StandstillOverRunning { get; }

    /// <summary>Speed at which the running figures stand.</summary>
    public RotationalSpeed RatedSpeed { get; }

    /// <summary>What moves the air.</summary>
    public Ventilation Ventilation { get; }

    /// <summary>Heat stored a kelvin of rise, in joule a kelvin.</summary>
    public double CapacityJPerK => RatedConductanceWPerK * RunningTimeConstant.Seconds;

    /// <summary>Heat shed a kelvin of rise at a speed.</summary>
    /// <param name="speed">Any finite speed; its sign does not matter.</param>
    /// <returns>Watt a kelvin.</returns>
    public double ConductanceWPerK(RotationalSpeed speed) => ConductanceWPerK(speed.RadiansPerSecond);

    /// <summary>Time constant at a speed.</summary>
    /// <param name="speed">Any finite speed.</param>
    /// <returns>Heat capacity over conductance.</returns>
    public Duration TimeConstant(RotationalSpeed speed) => Duration.FromSeconds(CapacityJPerK / ConductanceWPerK(speed));

    /// <summary>The rise that a steady loss comes to.</summary>
    /// <param name="loss">All losses, 0 or more.</param>
    /// <param name="speed">The speed at which it runs.</param>
    /// <returns>Loss over conductance.</returns>
    public TemperatureDelta FinalRise(Power loss, RotationalSpeed speed) => TemperatureDelta.FromKelvins(
        (double)Guard.NotNegative(loss, Part, "loss").Watts / ConductanceWPerK(speed));

    internal double ConductanceWPerK(double speedRadPerS)
    {
        var running = RatedConductanceWPerK;
        if (Ventilation == Ventilation.Separate) return running;
        var still = running / StandstillOverRunning;
        return still + (running - still) * Math.Pow(Math.Abs(speedRadPerS) / RatedSpeed.RadiansPerSecond, CoolingExponent);
    }

    private double RatedConductanceWPerK => (double)RatedLoss.Watts / RatedRise.Kelvins;
}
