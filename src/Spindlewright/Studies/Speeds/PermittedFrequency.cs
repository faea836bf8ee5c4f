using Spindlewright.Belts;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>Highest permitted frequency of a belt position, by the tightest of the limits given.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">Highest permitted; null where no limit is given.</param>
/// <param name="SetBy">Which limit sets it.</param>
/// <param name="Passed">True where the inverter's highest frequency lies above it.</param>
/// <remarks>Limits: chuck and bearings of the spindle, and whatever [[speed_limit]] names: bearings, pulleys, cutters, mounted work.</remarks>
public sealed record PermittedFrequency(BeltPosition Belt, Frequency? Frequency, string SetBy, bool Passed)
{
    /// <summary>What the limit of the spindle is called.</summary>
    internal const string OfTheSpindle = "chuck and bearings of the spindle";

    /// <summary>Finds it.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="belt">One of its belt positions.</param>
    /// <returns>The frequency and what sets it.</returns>
    public static PermittedFrequency Of(DrillPress press, BeltPosition belt)
    {
        if (MotorSpeedOf(press, belt) is not var (name, speed)) return new(belt, null, "not determined: no speed limit is given", false);
        var permitted = UnitsNet.Frequency.FromHertz(speed.RevolutionsPerMinute * press.Motor.Circuit.Hazard.Poles / 120);
        return new(belt, permitted, name, press.Inverter.HighestFrequency > permitted);
    }

    /// <summary>Highest motor speed on a belt position by the tightest limit, whatever the motor; null where no limit is given.</summary>
    internal static (string Name, RotationalSpeed Speed)? MotorSpeedOf(DrillPress press, BeltPosition belt) =>
        LimitsOf(press).Select(limit => ((string, RotationalSpeed Speed)?)(limit.Name, limit.TurnsWithMotor ? limit.Speed : limit.Speed * belt.Ratio))
            .OrderBy(limit => limit!.Value.Speed.RadiansPerSecond).ThenBy(limit => limit!.Value.Item1, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>All limits of speed that are given, the spindle's first.</summary>
    internal static IReadOnlyList<SpeedLimit> LimitsOf(DrillPress press) =>
    [
        .. press.Spindle.HighestSpeed is { } spindle ? [new SpeedLimit(OfTheSpindle, spindle, false)] : Array.Empty<SpeedLimit>(),
        .. press.ContactOrUsual.SpeedLimits,
    ];
}
