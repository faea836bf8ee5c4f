using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>What the inverter itself takes: a standing power, and a loss that goes with its output current.</summary>
/// <param name="Standby">Taken whenever it is on the supply: control, display, fan; 0 to 500 W.</param>
/// <param name="AtRatedCurrent">
/// Loss of the output stage at rated output current over rated apparent power, 0 to 0.15; goes with the current.
/// </param>
public sealed record InverterLosses(Power Standby, double AtRatedCurrent)
{
    private const string Part = "inverter";

    /// <summary>Losses where none are given, the capability side the more (common practice, no source).</summary>
    public static Sided<InverterLosses> Usual { get; } = new(new(Power.FromWatts(15), 0.04), new(Power.FromWatts(5), 0.02));

    /// <summary>Taken whenever it is on the supply.</summary>
    public Power Standby { get; } = Guard.Within(Standby, Power.Zero, Power.FromWatts(500), Part, "standby power");

    /// <summary>Loss at rated output current over rated apparent power.</summary>
    public double AtRatedCurrent { get; } = Guard.Within(AtRatedCurrent, 0, 0.15, Part, "loss at rated current");

    /// <summary>Loss while it feeds a motor.</summary>
    /// <param name="current">Output current, 0 or more.</param>
    /// <param name="ratedCurrent">Rated output current.</param>
    /// <param name="ratedVoltage">Line voltage at base frequency.</param>
    /// <returns>Standby and output stage.</returns>
    public Power At(ElectricCurrent current, ElectricCurrent ratedCurrent, ElectricPotential ratedVoltage) =>
        Standby + Power.FromWatts(AtRatedCurrent * Math.Sqrt(3) * ratedVoltage.Volts
            * Math.Min(current.Amperes, 2 * ratedCurrent.Amperes));
}

/// <summary>How long the output frequency takes between 0 and base frequency.</summary>
/// <param name="Acceleration">0.1 s to 600 s.</param>
/// <param name="Deceleration">0.1 s to 600 s.</param>
public sealed record Ramps(Duration Acceleration, Duration Deceleration)
{
    private const string Part = "inverter";

    /// <summary>Ramps where none are given (common practice, no source).</summary>
    public static Ramps Usual { get; } = new(Duration.FromSeconds(5), Duration.FromSeconds(5));

    /// <summary>From 0 to base frequency.</summary>
    public Duration Acceleration { get; } = Guard.Within(
        Acceleration, Duration.FromSeconds(0.1), Duration.FromSeconds(600), Part, "acceleration time");

    /// <summary>From base frequency to 0.</summary>
    public Duration Deceleration { get; } = Guard.Within(
        Deceleration, Duration.FromSeconds(0.1), Duration.FromSeconds(600), Part, "deceleration time");
}
