using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>Spindle speeds of one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="AtLowest">At the lowest frequency of the settings.</param>
/// <param name="AtBase">At the base frequency, or the highest where that is lower.</param>
/// <param name="AtHighest">At the highest frequency.</param>
/// <param name="Permitted">Highest frequency at which every part stays within the highest speed that is given for it.</param>
/// <param name="PassesSpindleLimit">True where the settings take chuck and bearings above their highest speed.</param>
public sealed record BeltSpeeds(
    BeltPosition Belt, SpeedAt AtLowest, SpeedAt AtBase, SpeedAt AtHighest, PermittedFrequency Permitted, bool PassesSpindleLimit);

/// <summary>Speed at one frequency, unloaded and loaded.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Synchronous">Spindle speed at the motor's synchronous speed.</param>
/// <param name="Loaded">Spindle speed at rated motor torque on the capability side; null where the motor stalls at it.</param>
public sealed record SpeedAt(Frequency Frequency, RotationalSpeed Synchronous, RotationalSpeed? Loaded);

/// <summary>A range of spindle speeds that no belt position reaches.</summary>
/// <param name="From">Upper end of the slower band.</param>
/// <param name="To">Lower end of the faster band.</param>
public sealed record SpeedGap(RotationalSpeed From, RotationalSpeed To);

/// <summary>Which spindle speeds the machine has.</summary>
/// <param name="Belts">One row a belt position, in the machine's order.</param>
/// <param name="Gaps">Speeds between the slowest and the fastest that no position reaches.</param>
public sealed record SpeedStudy(IReadOnlyList<BeltSpeeds> Belts, IReadOnlyList<SpeedGap> Gaps)
{
    /// <summary>Slowest spindle speed, unloaded.</summary>
    public RotationalSpeed Slowest => Belts.Min(belt => belt.AtLowest.Synchronous);

    /// <summary>Fastest spindle speed, unloaded.</summary>
    public RotationalSpeed Fastest => Belts.Max(belt => belt.AtHighest.Synchronous);

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Its speeds.</returns>
    public static SpeedStudy Of(DrillPress press)
    {
        var drive = new Drive(press, Side.Capability);
        var inverter = press.Inverter;
        var atBase = UnitMath.Min(inverter.Curve.BaseFrequency, inverter.HighestFrequency);
        var motor = new[] { inverter.LowestFrequency, atBase, inverter.HighestFrequency }
            .Select(frequency => MotorSpeeds(press, drive, frequency)).ToList();
        var belts = press.Belts.Select(belt =>
        {
            var at = motor.Select(speed => new SpeedAt(
                speed.Frequency, belt.SpindleSpeed(speed.Synchronous),
                speed.Loaded is { } loaded ? belt.SpindleSpeed(loaded) : null)).ToList();
            return new BeltSpeeds(belt, at[0], at[1], at[2], PermittedFrequency.Of(press, belt), at[2].Synchronous > press.Spindle.HighestSpeed);
        }).ToList();
        return new(belts, GapsBetween(belts));
    }

    private static SpeedAt MotorSpeeds(DrillPress press, Drive drive, Frequency frequency)
    {
        var loaded = drive.Circuits.Select(circuit => CircuitSolver.Running(
                circuit, frequency, ElectricPotential.FromVolts(drive.PhaseV(frequency.Hertz)), press.Motor.RatedTorque,
                ElectricPotential.FromVolts(drive.DropV)))
            .ToList();
        return new(
            frequency, press.Motor.Circuit.Capability.SynchronousSpeedAt(frequency),
            loaded.Contains(null) ? null : loaded.Min(point => point!.Speed));
    }

    private static List<SpeedGap> GapsBetween(List<BeltSpeeds> belts)
    {
        List<SpeedGap> gaps = [];
        var reached = RotationalSpeed.Zero;
        foreach (var belt in belts.OrderBy(belt => belt.AtLowest.Synchronous))
        {
            if (reached > RotationalSpeed.Zero && belt.AtLowest.Synchronous > reached)
                gaps.Add(new(reached, belt.AtLowest.Synchronous));
            reached = UnitMath.Max(reached, belt.AtHighest.Synchronous);
        }
        return gaps;
    }
}
