using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Frequencies;

/// <summary>The same machine over settings of boost and over temperatures of its winding.</summary>
internal static class FrequencyFamilies
{
    private const int BoostSteps = 20;
    private const int TemperatureSteps = 30;

    private static readonly double[] BoostShares = [0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.125];
    private static readonly double[] TemperatureShares = [0, 0.25, 0.5, 0.75, 1];

    internal static IReadOnlyList<BoostCase> Boosts(DrillPress press)
    {
        var (curve, lowestHz) = (press.Inverter.Curve, press.Inverter.LowestFrequency.Hertz);
        return [.. BoostShares.Select(share =>
        {
            var boosted = press.WithCurve(new StraightCurve(curve.BaseVoltage, curve.BaseFrequency, curve.BaseVoltage * share));
            var drives = DrivesOf(boosted);
            var idle = drives.Map(drive => Idle(drive, lowestHz));
            return new BoostCase(
                share, Points(drives, lowestHz, curve.BaseFrequency.Hertz, BoostSteps),
                idle.Map(each => ElectricCurrent.FromAmperes(each.CurrentA)), idle.Map(each => each.Flux),
                TorqueBound.Of(boosted).Motor);
        })];
    }

    internal static IReadOnlyList<TemperatureCase> Temperatures(DrillPress press)
    {
        var (cold, hot) = (press.Motor.Winding.Cold.DegreesCelsius, press.Motor.Winding.Hot.DegreesCelsius);
        var (lowestHz, highestHz) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        return [.. TemperatureShares.Select(share => cold + share * (hot - cold)).Distinct().Select(celsius =>
        {
            var winding = Temperature.FromDegreesCelsius(celsius);
            return new TemperatureCase(winding, Points(DrivesOf(press.WithWinding(winding)), lowestHz, highestHz, TemperatureSteps));
        })];
    }

    private static Sided<Drive> DrivesOf(DrillPress press) => new(new(press, Side.Capability), new(press, Side.Hazard));

    private static List<MotorTorques> Points(Sided<Drive> drives, double fromHz, double toHz, int steps) =>
        [.. Enumerable.Range(0, steps + 1).Select(step => fromHz + (toHz - fromHz) * step / steps).Distinct().Select(hertz =>
            new MotorTorques(
                Frequency.FromHertz(hertz), drives.Map(drive => Torque.FromNewtonMeters(drive.PullOutNm(hertz))),
                drives.Map(drive => Torque.FromNewtonMeters(drive.LockedRotorNm(hertz)))))];

    /// <summary>Largest no-load current of cold and hot winding, and the flux that goes with it.</summary>
    private static (double CurrentA, double Flux) Idle(Drive drive, double hertz) => drive.Si.Select(circuit =>
    {
        var state = circuit.Solve(hertz, drive.PhaseV(hertz), drive.DropV, 0);
        return (state.CurrentA, state.AirGapV / (hertz / circuit.RatedHz * circuit.RatedAirGapV));
    }).MaxBy(each => each.CurrentA);
}
