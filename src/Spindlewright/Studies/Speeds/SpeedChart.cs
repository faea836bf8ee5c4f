using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Studies.Heat;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>Spindle speed at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Unloaded">At the motor's synchronous speed.</param>
/// <param name="Loaded">At the stated torque; null where the motor stalls at it.</param>
public sealed record SpeedPoint(Frequency Frequency, RotationalSpeed Unloaded, RotationalSpeed? Loaded);

/// <summary>Speeds of one belt position over frequency.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="StatedTorque">Torque at the spindle for the loaded speeds.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Points">One a frequency, slowest first.</param>
public sealed record SpeedLine(BeltPosition Belt, Torque StatedTorque, Torque Bound, IReadOnlyList<SpeedPoint> Points);

/// <summary>Speeds that two neighbouring belt positions both reach.</summary>
/// <param name="Slower">Name of the slower position.</param>
/// <param name="Faster">Name of the faster position.</param>
/// <param name="From">Lowest speed that both reach.</param>
/// <param name="To">Highest speed that both reach.</param>
public sealed record SpeedOverlap(string Slower, string Faster, RotationalSpeed From, RotationalSpeed To);

/// <summary>One way to a wanted speed.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">Frequency at which the spindle, loaded with the stated torque, turns at the speed.</param>
/// <param name="Continuous">Continuous torque at the spindle there.</param>
/// <param name="ShortTime">Short-time torque at the spindle there.</param>
/// <param name="Bound">No-credit bound at the spindle of this position.</param>
public sealed record SpeedChoice(BeltPosition Belt, Frequency Frequency, Torque Continuous, Torque ShortTime, Torque Bound);

/// <summary>All ways to a wanted speed.</summary>
/// <param name="Speed">The speed.</param>
/// <param name="Choices">One a belt position that reaches it; may be empty.</param>
public sealed record SpeedChoices(RotationalSpeed Speed, IReadOnlyList<SpeedChoice> Choices)
{
    /// <summary>The position with the most continuous torque: best for drilling. Null where none reaches the speed.</summary>
    public SpeedChoice? MostContinuous => Choices.MaxBy(choice => choice.Continuous);

    /// <summary>The position with the least torque bound: least for a hand to meet. Null where none reaches the speed.</summary>
    public SpeedChoice? LeastBound => Choices.MinBy(choice => choice.Bound);

    /// <summary>True where the two are different positions: more torque to drill with is more to be caught by.</summary>
    public bool AreOpposed => MostContinuous?.Belt.Name != LeastBound?.Belt.Name;
}

/// <summary>All belt positions over frequency, and which to take for a wanted speed.</summary>
public sealed record SpeedChart
{
    /// <summary>Stated torque of the loaded speeds over rated motor torque. Own choice: a drill that works, not one that labours.</summary>
    public const double StatedShare = 0.5;

    /// <summary>Speeds for which a choice is shown beside those of the owner's work.</summary>
    private static readonly double[] UsualRpm = [80, 125, 200, 315, 500, 800, 1250, 2000];

    /// <summary>One a belt position, in the machine's order.</summary>
    public required IReadOnlyList<SpeedLine> Lines { get; init; }

    /// <summary>Overlaps of neighbouring positions, slowest first.</summary>
    public required IReadOnlyList<SpeedOverlap> Overlaps { get; init; }

    /// <summary>Choices for usual speeds and those of the owner's work, slowest first.</summary>
    public required IReadOnlyList<SpeedChoices> Choices { get; init; }

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="heat">What heat allows.</param>
    /// <returns>The chart.</returns>
    public static SpeedChart Of(DrillPress press, HeatStudy heat)
    {
        var drive = new Drive(press, Side.Capability);
        var speeds = press.Work.Select(item => item.Speed.RevolutionsPerMinute).Concat(UsualRpm)
            .Select(rpm => Math.Round(rpm)).Distinct().Order();
        return new()
        {
            Lines = [.. heat.Spindle.Select(spindle => Line(press, drive, spindle))],
            Overlaps = OverlapsOf(press),
            Choices = [.. speeds.Select(rpm => ChoicesFor(press, heat, RotationalSpeed.FromRevolutionsPerMinute(rpm)))],
        };
    }

    /// <summary>All ways to a wanted speed.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="heat">What heat allows.</param>
    /// <param name="wanted">Spindle speed, above 0.</param>
    /// <returns>One choice a belt position that reaches it at the stated torque.</returns>
    /// <exception cref="PartException">The speed is not above 0.</exception>
    public static SpeedChoices ChoicesFor(DrillPress press, HeatStudy heat, RotationalSpeed wanted)
    {
        Guard.Positive(wanted, "speed chart", "wanted speed");
        var drive = new Drive(press, Side.Capability);
        List<SpeedChoice> choices = [];
        foreach (var spindle in heat.Spindle)
        {
            if (FrequencyFor.Of(press, drive, spindle.Belt, wanted, StatedTorque(press, spindle.Belt)).Frequency is not { } frequency)
                continue;
            var (continuous, shortTime) = spindle.At(frequency);
            choices.Add(new(spindle.Belt, frequency, continuous, shortTime, spindle.Bound));
        }
        return new(wanted, choices);
    }

    internal static Torque StatedTorque(DrillPress press, BeltPosition belt) => UnitMath.Max(
        Torque.Zero, belt.SpindleTorque(press.Motor.RatedTorque * StatedShare, Side.Capability) - press.Spindle.FrictionTorque.Capability);

    private static SpeedLine Line(DrillPress press, Drive drive, SpindleEnvelope spindle)
    {
        var motor = press.Motor.RatedTorque * StatedShare;
        return new(spindle.Belt, StatedTorque(press, spindle.Belt), spindle.Bound, [.. spindle.Points.Select(at =>
        {
            var rpm = FrequencyFor.LoadedRpm(drive, at.Frequency.Hertz, motor);
            return new SpeedPoint(at.Frequency, at.SynchronousSpeed, rpm > 0
                ? RotationalSpeed.FromRevolutionsPerMinute(rpm) / spindle.Belt.Ratio
                : null);
        })]);
    }

    private static List<SpeedOverlap> OverlapsOf(DrillPress press)
    {
        var circuit = press.Motor.Circuit.Capability;
        (RotationalSpeed Low, RotationalSpeed High) Band(BeltPosition belt) => (
            belt.SpindleSpeed(circuit.SynchronousSpeedAt(press.Inverter.LowestFrequency)),
            belt.SpindleSpeed(circuit.SynchronousSpeedAt(press.Inverter.HighestFrequency)));
        var bands = press.Belts.Select(belt => (belt.Name, Band: Band(belt))).OrderBy(each => each.Band.Low).ToList();
        return [.. bands.Zip(bands.Skip(1))
            .Where(pair => pair.Second.Band.Low < pair.First.Band.High)
            .Select(pair => new SpeedOverlap(
                pair.First.Name, pair.Second.Name, pair.Second.Band.Low, UnitMath.Min(pair.First.Band.High, pair.Second.Band.High)))];
    }
}
