using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Speeds;

/// <summary>The frequency at which a loaded spindle turns at a wanted speed.</summary>
/// <param name="Frequency">The frequency; null where no setting gives the speed.</param>
/// <param name="Words">Why there is none; empty otherwise.</param>
internal readonly record struct FrequencyFor(Frequency? Frequency, string Words)
{
    /// <summary>Share by which the loaded speed may lie above the wanted one.</summary>
    private const double NearEnough = 0.02;

    /// <summary>Looks for the lowest frequency of the settings.</summary>
    internal static FrequencyFor Of(
        DrillPress press, Drive drive, BeltPosition belt, RotationalSpeed wanted, Torque atSpindle)
    {
        var friction = press.Spindle.FrictionTorque.Capability;
        var motor = (atSpindle + friction) / (belt.Ratio * belt.Efficiency.Capability);
        var wantedRpm = (wanted * belt.Ratio).RevolutionsPerMinute;
        double Excess(double hertz) => LoadedRpm(drive, hertz, motor) - wantedRpm;
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        if (Excess(lowest) > 0) return new(null, "too fast even at the lowest frequency");
        if (LastBelow(Excess, lowest, highest) is not var (below, above))
            return new(null, "too slow, or stalled, up to the highest frequency");
        // Halved, because a stalled motor reads zero speed: the bracket may hold a jump from standstill past the wanted speed.
        for (var step = 0; step < 40; step++)
        {
            var middle = (below + above) / 2;
            if (Excess(middle) >= 0) above = middle;
            else below = middle;
        }
        return Excess(above) <= NearEnough * wantedRpm
            ? new(UnitsNet.Frequency.FromHertz(above), "")
            : new(null, "stalls under this load below the speed, and turns faster as soon as it carries it");
    }

    /// <summary>Slower of the cold and the hot motor's speeds under a torque; 0 where it stalls.</summary>
    internal static double LoadedRpm(Drive drive, double hertz, Torque motor) =>
        drive.Circuits.Min(circuit => CircuitSolver.Running(
            circuit, UnitsNet.Frequency.FromHertz(hertz), ElectricPotential.FromVolts(drive.PhaseV(hertz)), motor,
            ElectricPotential.FromVolts(drive.DropV))?.Speed.RevolutionsPerMinute ?? 0);

    /// <summary>The first pair of neighbouring frequencies between which the excess turns positive.</summary>
    private static (double Below, double Above)? LastBelow(Func<double, double> excess, double lowest, double highest)
    {
        const int Steps = 64;
        for (var step = 1; step <= Steps; step++)
        {
            var above = lowest + (highest - lowest) * step / Steps;
            if (excess(above) >= 0) return (lowest + (highest - lowest) * (step - 1) / Steps, above);
        }
        return null;
    }
}
