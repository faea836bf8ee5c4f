using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>One set frequency under a load, with slip compensation and without.</summary>
/// <remarks>
/// The unit adds share × rated slip frequency × load over rated torque to the frequency that was set, and takes the volts of
/// its law at the sum. That makes good the speed, not the torque: what the motor can give moves only as far as it does
/// between two frequencies. The bound stands over all frequencies and does not move. Capability side, slower of cold and hot.
/// </remarks>
public sealed record SlipCompensation
{
    private const string Part = "slip compensation";

    /// <summary>Frequency that was set.</summary>
    public required Frequency Set { get; init; }

    /// <summary>Frequency that goes out under the load, at most the highest of the settings.</summary>
    public required Frequency Output { get; init; }

    /// <summary>Load at the motor shaft.</summary>
    public required Torque Load { get; init; }

    /// <summary>Motor speed without compensation; null where it stalls.</summary>
    public required RotationalSpeed? Without { get; init; }

    /// <summary>Motor speed with compensation; null where it stalls.</summary>
    public required RotationalSpeed? With { get; init; }

    /// <summary>Pull-out torque at the set frequency.</summary>
    public required Torque PullOutWithout { get; init; }

    /// <summary>Pull-out torque at the frequency that goes out.</summary>
    public required Torque PullOutWith { get; init; }

    /// <summary>No-credit bound at the motor shaft, the same with and without.</summary>
    public required Torque Bound { get; init; }

    /// <summary>Computes one load.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="set">Frequency that was set, above 0.</param>
    /// <param name="load">Load at the motor shaft, 0 or more.</param>
    /// <param name="share">Share of the rated slip that is added at rated torque, 0 to 1.5.</param>
    /// <returns>Speeds and pull-out torques.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static SlipCompensation Of(DrillPress press, Frequency set, Torque load, double share)
    {
        Guard.Positive(set, Part, "frequency");
        Guard.NotNegative(load, Part, "load torque");
        Guard.Within(share, 0, 1.5, Part, "share of the rated slip");
        var drive = new Drive(press, Side.Capability);
        var added = Frequency.FromHertz(AddedHzPerNm(press, share) * load.NewtonMeters);
        var output = UnitMath.Max(set, UnitMath.Min(set + added, press.Inverter.HighestFrequency));
        Torque PullOut(Frequency at) => Torque.FromNewtonMeters(drive.PullOutNm(at.Hertz));
        return new()
        {
            Set = set,
            Output = output,
            Load = load,
            Without = Speed(drive, set, load),
            With = Speed(drive, output, load),
            PullOutWithout = PullOut(set),
            PullOutWith = PullOut(output),
            Bound = TorqueBound.Of(press).Motor,
        };
    }

    /// <summary>Hertz that the unit adds for each newton-metre at the motor shaft.</summary>
    internal static double AddedHzPerNm(DrillPress press, double share)
    {
        var circuit = press.Motor.Circuit.Capability;
        var ratedSlipHz = circuit.RatedFrequency.Hertz * (1 - press.Motor.RatedSpeed / circuit.SynchronousSpeed);
        return share * ratedSlipHz / press.Motor.RatedTorque.NewtonMeters;
    }

    private static RotationalSpeed? Speed(Drive drive, Frequency frequency, Torque load)
    {
        var points = drive.Circuits.Select(circuit => CircuitSolver.Running(
            circuit, frequency, ElectricPotential.FromVolts(drive.PhaseV(frequency.Hertz)), load,
            ElectricPotential.FromVolts(drive.DropV))).ToList();
        return points.Contains(null) ? null : points.Min(point => point!.Speed);
    }
}
