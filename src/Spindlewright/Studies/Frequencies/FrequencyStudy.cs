using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Frequencies;

/// <summary>What frequency does to the torque of the motor, shown as curves and as the points that surprise.</summary>
/// <remarks>
/// <para>
/// Boost law: torque of the linear circuit goes with voltage squared, so V(f) = Vb·√(Tb(base) / Tb(f at Vb)), Tb the closed
/// breakdown torque at a fixed frequency. Breakdown may stand beyond standstill there (slip above 1), as in published
/// tables. Saturation is left out: with it the volts at the slow end would be more, and the current with them.
/// </para>
/// <para>
/// All torques are air-gap torques at the motor shaft; every one of them stands under <see cref="Torques.TorqueBound"/>.
/// </para>
/// </remarks>
public sealed record FrequencyStudy
{
    private const int SpeedSteps = 60;

    /// <summary>Torque–speed curves, from the lowest to the highest frequency.</summary>
    public required IReadOnlyList<TorqueSpeedCurve> Curves { get; init; }

    /// <summary>The boost law, from the lowest to the base frequency.</summary>
    public required IReadOnlyList<BoostLawPoint> BoostLaw { get; init; }

    /// <summary>Where locked-rotor torque is largest between lowest and highest frequency: often not at base.</summary>
    public required Sided<TorqueAt> LargestLockedRotor { get; init; }

    /// <summary>Locked-rotor torque at base frequency.</summary>
    public required Sided<TorqueAt> LockedRotorAtBase { get; init; }

    /// <summary>Locked-rotor torque at the lowest frequency, as modelled.</summary>
    public required Sided<TorqueAt> LockedRotorAtLowest { get; init; }

    /// <summary>The same with the drops of stator resistance and output stage made good: what they take away.</summary>
    public required Sided<TorqueAt> LockedRotorAtLowestWithoutDrops { get; init; }

    /// <summary>Twice base frequency against base.</summary>
    public required TwiceBaseFrequency TwiceBase { get; init; }

    /// <summary>
    /// Up to where the motor could give rated power: the frequency above base at which pull-out torque has fallen to rated
    /// power over synchronous speed; null where that lies beyond the highest frequency.
    /// </summary>
    public required Sided<Frequency?> RatedPowerUntil { get; init; }

    /// <summary>What boost does, from none to an eighth of the base voltage.</summary>
    public required IReadOnlyList<BoostCase> Boosts { get; init; }

    /// <summary>What temperature does, from the coldest to the hottest winding to be expected.</summary>
    public required IReadOnlyList<TemperatureCase> Temperatures { get; init; }

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Its curves and points.</returns>
    public static FrequencyStudy Of(DrillPress press)
    {
        var drives = new Sided<Drive>(new Drive(press, Side.Capability), new Drive(press, Side.Hazard));
        var (lowestHz, baseHz) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.Curve.BaseFrequency.Hertz);
        var highestHz = press.Inverter.HighestFrequency.Hertz;
        Sided<TorqueAt> At(double hertz) => drives.Map(drive => Point(hertz, drive.LockedRotorNm(hertz)));
        return new()
        {
            Curves = [.. CurveHertz(lowestHz, baseHz, highestHz).Select(hertz => Curve(press, drives, hertz))],
            BoostLaw = [.. FrequencyGrid.Of(press.Inverter).Where(hertz => hertz <= baseHz).Select(hertz => Boost(press, hertz))],
            LargestLockedRotor = drives.Map(drive =>
            {
                var (torqueNm, hertz) = Peak.FindHighest(drive.LockedRotorNm, lowestHz, highestHz);
                return Point(hertz, torqueNm);
            }),
            LockedRotorAtBase = At(baseHz),
            LockedRotorAtLowest = At(lowestHz),
            LockedRotorAtLowestWithoutDrops = drives.Map(drive => Point(lowestHz, drive.IdealBoostNm(lowestHz, 1))),
            TwiceBase = new(
                Frequency.FromHertz(2 * baseHz),
                drives.Map(drive => drive.LockedRotorNm(2 * baseHz) / drive.LockedRotorNm(baseHz)),
                drives.Map(drive => drive.PullOutNm(2 * baseHz) / drive.PullOutNm(baseHz)), 2 * 2, highestHz >= 2 * baseHz),
            RatedPowerUntil = drives.Map(drive => RatedPowerEnd(press, drive, baseHz, highestHz)),
            Boosts = FrequencyFamilies.Boosts(press),
            Temperatures = FrequencyFamilies.Temperatures(press),
        };
    }

    private static TorqueAt Point(double hertz, double torqueNm) =>
        new(Frequency.FromHertz(hertz), Torque.FromNewtonMeters(torqueNm));

    /// <summary>Lowest, base and highest frequency, and fifths of the base frequency between them.</summary>
    private static SortedSet<double> CurveHertz(double lowestHz, double baseHz, double highestHz)
    {
        var hertz = new SortedSet<double> { lowestHz, highestHz };
        for (var fifth = 1; fifth * baseHz / 5 < highestHz; fifth += fifth < 5 ? 1 : 2)
            if (fifth * baseHz / 5 > 1.1 * lowestHz) hertz.Add(fifth * baseHz / 5);
        return hertz;
    }

    private static TorqueSpeedCurve Curve(DrillPress press, Sided<Drive> drives, double hertz)
    {
        var synchronous = press.Motor.Circuit.Capability.SynchronousSpeedAt(Frequency.FromHertz(hertz));
        TorqueSpeedPoint At(int step)
        {
            // Finer near synchronous speed, where the curve is steep: the square of an even step.
            var slip = Math.Pow(1 - (double)step / SpeedSteps, 2);
            return new(
                synchronous * (1 - slip), drives.Map(drive => Torque.FromNewtonMeters(drive.TorqueNm(hertz, slip))),
                Torque.FromNewtonMeters(drives.Hazard.IdealBoostNm(hertz, slip)));
        }

        return new(Frequency.FromHertz(hertz), [.. Enumerable.Range(0, SpeedSteps + 1).Select(At)]);
    }

    private static Frequency? RatedPowerEnd(DrillPress press, Drive drive, double baseHz, double highestHz)
    {
        var powerW = (double)press.Motor.RatedPower.Watts;
        double Spare(double hertz) => drive.PullOutNm(hertz) * drive.Si[0].SynchronousRadPerS(hertz) / powerW - 1;
        if (highestHz <= baseHz || Spare(highestHz) >= 0) return null;
        return Frequency.FromHertz(Spare(baseHz) <= 0 ? baseHz : Brent.FindRoot(Spare, baseHz, highestHz, 1e-6, 100));
    }

    private static BoostLawPoint Boost(DrillPress press, double hertz)
    {
        var curve = press.Inverter.Curve;
        ElectricPotential Needed(EquivalentCircuit circuit)
        {
            var phase = curve.BaseVoltage / Math.Sqrt(3);
            var wanted = CircuitSolver.Breakdown(circuit, curve.BaseFrequency, phase).Torque;
            var here = CircuitSolver.Breakdown(circuit, Frequency.FromHertz(hertz), phase).Torque;
            return curve.BaseVoltage * Math.Sqrt(wanted / here);
        }

        return new(
            Frequency.FromHertz(hertz), curve.LineVoltage(Frequency.FromHertz(hertz)), press.Motor.Circuit.Map(Needed));
    }
}
