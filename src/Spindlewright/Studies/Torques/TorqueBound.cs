using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Torques;

/// <summary>The no-credit bound on torque: one number a belt position, independent of frequency.</summary>
/// <remarks>
/// <para>
/// Breakdown torque with R1 = 0 at rated volts per hertz, the larger of both sides' circuits, × (highest supply /
/// nominal)² × overflux², with high-side defaults and efficiency 1. No drop, boost setting, current limit or belt slip is credited. The base never stands
/// below the breakdown torque of the nameplate (or its high default).
/// </para>
/// <para>
/// <em>Overflux</em> is what the set curve gives over rated volts per hertz. Up to 1.2 it counts in full; beyond, the
/// core saturates and 1.2 is taken, but never less than what the machine's own circuit without saturation gives at its
/// breakdown point. So the bound stands above the modelled torque at every frequency and slip, whatever the settings.
/// </para>
/// <para>Own derivation: torque rises with the magnetising reactance and with core resistance at every slip, and stator
/// flux never exceeds V/ω, so each step only raises the torque.</para>
/// </remarks>
public sealed record TorqueBound
{
    /// <summary>Overflux that counts in full; beyond it saturation holds. Own choice.</summary>
    public const double MostCountedOverflux = 1.2;

    /// <summary>Pieces of a stretch between bends that are searched one by one.</summary>
    internal const int Pieces = 6;

    /// <summary>Breakdown torque with R1 = 0 at rated volts per hertz.</summary>
    public required Torque WithoutResistance { get; init; }

    /// <summary>Breakdown torque by the nameplate or its high default; null where a circuit was given.</summary>
    public required Torque? ByNameplate { get; init; }

    /// <summary>(Highest supply / nominal)².</summary>
    public required double SupplyFactor { get; init; }

    /// <summary>Largest volts per hertz that the curve sets over the motor's rated ones, at least 1.</summary>
    public required double SetOverflux { get; init; }

    /// <summary>Overflux that went in.</summary>
    public required double CountedOverflux { get; init; }

    /// <summary>The bound at the motor shaft.</summary>
    public Torque Motor =>
        Torque.FromNewtonMeters(
            Math.Max(WithoutResistance.NewtonMeters, ByNameplate?.NewtonMeters ?? 0)
            * SupplyFactor * CountedOverflux * CountedOverflux);

    /// <summary>The bound at the spindle of a belt position.</summary>
    /// <param name="belt">The belt position.</param>
    /// <returns>Motor bound times ratio, efficiency 1.</returns>
    public Torque AtSpindle(BeltPosition belt) => Motor * belt.Ratio;

    /// <summary>The bound of a bare motor at its rated supply, before any machine is built with it.</summary>
    /// <param name="circuits">Its circuits, one a side.</param>
    /// <param name="byNameplate">Breakdown torque by the nameplate or its high default; null where there is none.</param>
    /// <returns>The bound without a rise of supply and without overflux; a machine's own stands at or above it.</returns>
    public static TorqueBound OfMotor(Sided<EquivalentCircuit> circuits, Torque? byNameplate) => new()
    {
        // Where locked-rotor figures are fitted, the circuit with the larger R1 has the smaller leakage: with its R1 made good
        // it is the stronger one. Both meet the plate, so neither may be left out.
        WithoutResistance = Torque.FromNewtonMeters(
            Math.Max(RatedFlux.BreakdownNm(circuits.Capability.Si), RatedFlux.BreakdownNm(circuits.Hazard.Si))),
        ByNameplate = byNameplate,
        SupplyFactor = 1,
        SetOverflux = 1,
        CountedOverflux = 1,
    };

    /// <summary>Computes the bound of a machine.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>The bound with its factors.</returns>
    public static TorqueBound Of(DrillPress press)
    {
        var circuit = press.Motor.Circuit.Hazard.Si;
        var supply = press.Supply.Highest / press.Supply.Nominal;
        var bound = OfMotor(press.Motor.Circuit, press.Motor.BreakdownTorqueForBound * press.Motor.RatedTorque) with
        {
            SupplyFactor = supply * supply,
            SetOverflux = SetOverfluxOf(press, circuit),
        };
        if (bound.SetOverflux <= MostCountedOverflux) return bound with { CountedOverflux = bound.SetOverflux };
        var needed = Math.Sqrt(UnsaturatedBreakdownNm(press) / bound.Motor.NewtonMeters);
        return bound with { CountedOverflux = Math.Max(MostCountedOverflux, needed) };
    }

    private static double SetOverfluxOf(DrillPress press, in CircuitSi circuit)
    {
        var (inverter, rated) = (press.Inverter, circuit.RatedPhaseV * Math.Sqrt(3) / circuit.RatedHz);
        // Between bends every law is straight (volts per hertz a/f + b rise or fall all the way) or quadratic (convex), and
        // above base it is level: the largest stands at a bend or an end. Slip compensation only moves within the range.
        return EndsHz(inverter).Max(hertz => inverter.Curve.LineVolts(hertz) / hertz / rated) is var most && most > 1 ? most : 1;
    }

    /// <summary>Lowest and highest frequency with the bends of the law between them.</summary>
    internal static double[] EndsHz(Inverter inverter)
    {
        var (lowest, highest) = (inverter.LowestFrequency.Hertz, inverter.HighestFrequency.Hertz);
        return [lowest, .. inverter.Curve.BendsHz.Where(hertz => hertz > lowest && hertz < highest), highest];
    }

    /// <summary>The largest breakdown torque of both sides' circuits over the frequencies that are set, saturation left out.</summary>
    private static double UnsaturatedBreakdownNm(DrillPress press)
    {
        var drive = new Drive(press, Side.Hazard);
        CircuitSi[] circuits = [.. drive.Si, .. new Drive(press, Side.Capability).Si];
        double At(double hertz) => circuits.Max(circuit =>
            (circuit with { CoreConductanceS = 0 }).Breakdown(hertz, drive.PhaseV(hertz), circuit.UnsaturatedXmOhm).TorqueNm);
        // A law with several bends may give several peaks: each stretch between bends is searched in pieces of its own.
        var ends = EndsHz(press.Inverter);
        return ends.Zip(ends.Skip(1)).SelectMany(stretch => Enumerable.Range(0, Pieces).Select(piece =>
        {
            double Cut(int at) => stretch.First + (stretch.Second - stretch.First) * at / Pieces;
            return Peak.Find(At, Cut(piece), Cut(piece + 1)).Value;
        })).Max();
    }
}
