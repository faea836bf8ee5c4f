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

    // Of a cell of a few hertz at most: to a billionth.
    private const int Halvings = 32;

    // What a halved bracket and a solved slip leave of a speed.
    private const double Settled = 1e-6;

    /// <summary>By how much more slip it is seen whether torque rises.</summary>
    private const double Nearby = 1.001;

    /// <summary>Looks for the lowest frequency of the settings.</summary>
    internal static FrequencyFor Of(
        DrillPress press, Drive drive, BeltPosition belt, RotationalSpeed wanted, Torque atSpindle)
    {
        var friction = press.Spindle.FrictionTorque.Capability;
        var motor = (atSpindle + friction) / (belt.Ratio * belt.Efficiency.Capability);
        var wantedRpm = (wanted * belt.Ratio).RevolutionsPerMinute;
        bool Reaches(double hertz) => TurnsAtLeast(drive, hertz, wantedRpm, motor);
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        if (LoadedRpm(drive, lowest, motor) > wantedRpm) return new(null, "too fast even at the lowest frequency");
        if (FirstReaching(Reaches, lowest, highest) is not var (below, above))
            return new(null, "too slow, or stalled, up to the highest frequency");
        // Halved, because a stalled motor reads zero speed: the bracket may hold a jump from standstill past the wanted speed.
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (below + above) / 2;
            if (Reaches(middle)) above = middle;
            else below = middle;
        }
        var loadedRpm = LoadedRpm(drive, above, motor);
        return loadedRpm >= wantedRpm * (1 - Settled) && loadedRpm <= wantedRpm * (1 + NearEnough)
            ? new(UnitsNet.Frequency.FromHertz(above), "")
            : new(null, "stalls under this load below the speed, and turns faster as soon as it carries it");
    }

    /// <summary>Slower of the cold and the hot motor's speeds under a torque; 0 where it stalls.</summary>
    internal static double LoadedRpm(Drive drive, double hertz, Torque motor) =>
        drive.Circuits.Min(circuit => CircuitSolver.Running(
            circuit, UnitsNet.Frequency.FromHertz(hertz), ElectricPotential.FromVolts(drive.PhaseV(hertz)), motor,
            ElectricPotential.FromVolts(drive.DropV))?.Speed.RevolutionsPerMinute ?? 0);

    /// <summary>Whether the cold and the hot motor both turn at least so fast under a torque.</summary>
    private static bool TurnsAtLeast(Drive drive, double hertz, double wantedRpm, Torque motor)
    {
        var slip = 1 - wantedRpm / (120 * hertz / drive.Si[0].Poles);
        // No load turns a motor faster than its field.
        if (slip < 0) return false;
        var places = drive.Circuits.Zip(drive.Si, (circuit, si) => PlaceOf(drive, circuit, si, hertz, slip, motor.NewtonMeters)).ToList();
        if (places.Contains(Place.Slower)) return false;
        return places.TrueForAll(place => place == Place.AsFast) || LoadedRpm(drive, hertz, motor) >= wantedRpm;
    }

    /// <summary>Where a motor settles, from its torque at the wanted speed alone where that tells.</summary>
    private static Place PlaceOf(Drive drive, EquivalentCircuit circuit, in CircuitSi si, double hertz, double slip, double loadNm)
    {
        var there = Shaft(si, slip);
        // What carries the torque at that speed settles at it or above.
        if (there >= loadNm) return Place.AsFast;
        // Before the peaks of both cages and rising, more torque means less speed. Beyond, it may still run faster on the near side.
        return Shaft(si, slip * Nearby) > there && slip < si.BreakdownSlips(hertz, si.XmOhm).Least / 2 ? Place.Slower : Place.Untold;

        double Shaft(in CircuitSi si, double slip) =>
            CircuitSolver.ShaftNm(circuit, si, hertz, drive.PhaseV(hertz), drive.DropV, slip);
    }

    private enum Place { Untold, Slower, AsFast }

    /// <summary>The first pair of neighbouring frequencies of which the upper one reaches the speed.</summary>
    private static (double Below, double Above)? FirstReaching(Func<double, bool> reaches, double lowest, double highest)
    {
        const int Steps = 64;
        for (var step = 1; step <= Steps; step++)
        {
            var above = lowest + (highest - lowest) * step / Steps;
            if (reaches(above)) return (lowest + (highest - lowest) * (step - 1) / Steps, above);
        }
        return null;
    }
}
