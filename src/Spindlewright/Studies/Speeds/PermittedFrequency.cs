using Spindlewright.Belts;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>Highest permitted frequency of a belt position, by the tightest of the limits given.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Fitted">What is fitted beside what always turns; empty for nothing.</param>
/// <param name="Frequency">Highest permitted; null where no limit is given.</param>
/// <param name="SetBy">Which limit sets it.</param>
/// <param name="Passed">True where the inverter's highest frequency lies above it.</param>
/// <remarks>
/// Limits: chuck and bearings of the spindle, and whatever [[speed_limit]] names: bearings, pulleys, cutters, mounted work. What is
/// fitted at times limits the machine only while it is fitted, and then together with what always turns.
/// </remarks>
public sealed record PermittedFrequency(BeltPosition Belt, string Fitted, Frequency? Frequency, string SetBy, bool Passed)
{
    /// <summary>What the limit of the spindle is called.</summary>
    internal const string OfTheSpindle = "chuck and bearings of the spindle";

    /// <summary>Finds it for what always turns.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="belt">One of its belt positions.</param>
    /// <returns>The frequency and what sets it.</returns>
    public static PermittedFrequency Of(DrillPress press, BeltPosition belt) => Of(press, belt, null);

    /// <summary>Finds it for what always turns, then with each cutter or mounted work that is fitted at times.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="belt">One of its belt positions.</param>
    /// <returns>One or more.</returns>
    public static IEnumerable<PermittedFrequency> AllOf(DrillPress press, BeltPosition belt) =>
        LimitsOf(press).Where(limit => limit.AtTimes).Select(fitted => Of(press, belt, fitted)).Prepend(Of(press, belt));

    /// <summary>Highest motor speed on a belt position by the tightest limit, whatever the motor; null where no limit is given.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="belt">The belt position.</param>
    /// <param name="fitted">What is fitted beside what always turns; null for nothing.</param>
    internal static (string Name, RotationalSpeed Speed)? MotorSpeedOf(DrillPress press, BeltPosition belt, SpeedLimit? fitted = null) =>
        LimitsOf(press).Where(limit => !limit.AtTimes || limit == fitted)
            .Select(limit => ((string Name, RotationalSpeed Speed)?)(limit.Name, limit.TurnsWithMotor ? limit.Speed : limit.Speed * belt.Ratio))
            .OrderBy(limit => limit!.Value.Speed.RadiansPerSecond).ThenBy(limit => limit!.Value.Name, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>All limits of speed that are given, the spindle's first.</summary>
    internal static IReadOnlyList<SpeedLimit> LimitsOf(DrillPress press) =>
    [
        .. press.Spindle.HighestSpeed is { } spindle ? [new SpeedLimit(OfTheSpindle, spindle, false)] : Array.Empty<SpeedLimit>(),
        .. press.ContactOrUsual.SpeedLimits,
    ];

    private static PermittedFrequency Of(DrillPress press, BeltPosition belt, SpeedLimit? fitted)
    {
        var name = fitted?.Name ?? "";
        if (MotorSpeedOf(press, belt, fitted) is not var (setBy, speed)) return new(belt, name, null, "not determined: no speed limit is given", false);
        var permitted = UnitsNet.Frequency.FromHertz(speed.RevolutionsPerMinute * press.Motor.Circuit.Hazard.Poles / 120);
        return new(belt, name, permitted, setBy, press.Inverter.HighestFrequency > permitted);
    }
}
