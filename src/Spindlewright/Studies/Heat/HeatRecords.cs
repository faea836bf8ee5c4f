using Spindlewright.Belts;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Studies.Heat;

/// <summary>Continuous torque at the motor shaft at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Continuous">
/// Largest torque for ever: the winding no hotter than at rated load, and never above the short-time torque.
/// </param>
/// <param name="Limit">What sets it on the capability side.</param>
/// <param name="AtClassLimit">Largest torque for ever with the winding at the limit of its insulation class.</param>
/// <param name="Derated">The published derating line times rated torque, beside our own figure.</param>
/// <param name="DeratedSpread">Its uncertainty either way.</param>
public sealed record ContinuousTorque(
    Frequency Frequency, Sided<Torque> Continuous, string Limit, Sided<Torque> AtClassLimit, Torque Derated,
    Torque DeratedSpread);

/// <summary>Continuous and short-time torque at the spindle at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="SynchronousSpeed">Spindle speed at the motor's synchronous speed.</param>
/// <param name="Continuous">Continuous envelope, capability side: the hot one.</param>
/// <param name="ShortTime">Short-time envelope.</param>
public sealed record SpindleEnvelopePoint(
    Frequency Frequency, RotationalSpeed SynchronousSpeed, Torque Continuous, Torque ShortTime);

/// <summary>The envelopes of one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Points">One a frequency.</param>
public sealed record SpindleEnvelope(BeltPosition Belt, Torque Bound, IReadOnlyList<SpindleEnvelopePoint> Points)
{
    /// <summary>The envelopes at a frequency between the lowest and the highest of the settings.</summary>
    /// <param name="frequency">Output frequency; beyond the ends those of the end.</param>
    /// <returns>Straight between the two nearest points.</returns>
    public (Torque Continuous, Torque ShortTime) At(Frequency frequency)
    {
        var hertz = frequency.Hertz;
        var upper = 1;
        while (upper < Points.Count - 1 && Points[upper].Frequency.Hertz < hertz) upper++;
        var (low, high) = (Points[upper - 1], Points[upper]);
        var share = Math.Clamp((hertz - low.Frequency.Hertz) / (high.Frequency.Hertz - low.Frequency.Hertz), 0, 1);
        Torque Between(Torque from, Torque to) => from + (to - from) * share;
        return (Between(low.Continuous, high.Continuous), Between(low.ShortTime, high.ShortTime));
    }
}

/// <summary>A steady state of the motor and how hot it becomes.</summary>
/// <param name="Name">What is done, in words.</param>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Load">Torque at the motor shaft; null at stall.</param>
/// <param name="Final">Where the winding settles; null where it never does.</param>
/// <param name="TimeToLimit">From air temperature to the class limit; null for never.</param>
/// <param name="WindingAlone">At stall: the same if the copper kept all its heat, the quick end, null for no current; null as a whole otherwise.</param>
/// <param name="Stalls">True where the motor cannot turn this load, so that the row has no figures.</param>
public sealed record HeatCase(
    string Name, Frequency Frequency, Torque? Load, Sided<Temperature?> Final, Sided<Duration?> TimeToLimit,
    Sided<Duration?>? WindingAlone, bool Stalls);

/// <summary>One load at twice base frequency.</summary>
/// <param name="Share">Over the torque of rated power at that frequency.</param>
/// <param name="Case">How hot it becomes.</param>
/// <param name="DutyShare">Largest share of the period that it may take; null where the motor stalls.</param>
public sealed record FastLoad(double Share, HeatCase Case, Sided<double>? DutyShare);

/// <summary>One thing that limits the load or the speed at twice base frequency.</summary>
/// <param name="Name">Which limit.</param>
/// <param name="Torque">Motor torque at which it is met; null for a limit of speed.</param>
/// <param name="Words">How it stands.</param>
/// <param name="Passed">True for a limit of speed that is passed.</param>
public sealed record FastLimit(string Name, Torque? Torque, string Words, bool Passed);

/// <summary>The belief that a small motor kept at twice base frequency overheats while intermittent drilling leaves it cool.</summary>
/// <param name="Frequency">Twice base frequency.</param>
/// <param name="Period">Period of the intermittent work.</param>
/// <param name="Loads">Loads from none to more than rated power.</param>
/// <param name="Limits">What limits, the first to be met first.</param>
/// <param name="Kept">Whether keeping it there overheats it.</param>
/// <param name="Intermittent">Whether intermittent work leaves it below its limit.</param>
/// <param name="Words">The verdict in sentences, with numbers.</param>
public sealed record FastRunning(
    Frequency Frequency, Duration Period, IReadOnlyList<FastLoad> Loads, IReadOnlyList<FastLimit> Limits, Belief Kept,
    Belief Intermittent, string Words);

/// <summary>The settled temperature of one task of the day, were it repeated for ever.</summary>
/// <param name="Task">The task.</param>
/// <param name="Highest">Highest winding temperature; null where the motor stalls or it never settles.</param>
/// <param name="Words">How it stands to the class limit.</param>
public sealed record TaskHeat(Machines.DayTask Task, Sided<Temperature?> Highest, string Words);
