using MathNet.Numerics.RootFinding;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Torques;

/// <summary>Torques at the motor shaft at one frequency of the settings.</summary>
/// <remarks>The bound does not depend on frequency; it stands in <see cref="TorqueStudy.Bound"/>.</remarks>
public sealed record FrequencyTorques
{
    /// <summary>Output frequency.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>As modelled: largest torque over 0 &lt; s ≤ 1.</summary>
    public required Sided<Torque> PullOut { get; init; }

    /// <summary>As modelled: torque at standstill.</summary>
    public required Sided<Torque> LockedRotor { get; init; }

    /// <summary>Ideal boost: largest torque over 0 &lt; s ≤ 1 with stator flux held at its rated value.</summary>
    public required Sided<Torque> IdealBoost { get; init; }

    /// <summary>Ideal boost at standstill.</summary>
    public required Sided<Torque> IdealBoostLockedRotor { get; init; }

    /// <summary>
    /// Short-time envelope: the smallest of 1.6 times rated torque, 0.75 of the capability side's pull-out torque less
    /// friction, and the torque at the current limit. Never below 0.
    /// </summary>
    public required Torque ShortTime { get; init; }

    /// <summary>What sets the short-time envelope.</summary>
    public required string ShortTimeLimit { get; init; }

    /// <summary>Motor speed at the short-time torque; null where the motor cannot turn it.</summary>
    public required RotationalSpeed? ShortTimeSpeed { get; init; }
}

/// <summary>Torque against frequency at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
/// <param name="Points">One a frequency.</param>
public sealed record SpindleTorques(BeltPosition Belt, Torque Bound, IReadOnlyList<SpindleTorquePoint> Points);

/// <summary>Torques at the spindle at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="SynchronousSpeed">Spindle speed at the motor's synchronous speed: unloaded but for the slip of no load.</param>
/// <param name="PullOut">As modelled, largest over 0 &lt; s ≤ 1.</param>
/// <param name="LockedRotor">As modelled, at standstill.</param>
/// <param name="IdealBoost">Ideal boost, largest over 0 &lt; s ≤ 1.</param>
/// <param name="ShortTime">Short-time envelope.</param>
/// <param name="ShortTimePower">Power at the spindle at the short-time torque; null where the motor cannot turn it.</param>
public sealed record SpindleTorquePoint(
    Frequency Frequency, RotationalSpeed SynchronousSpeed, Sided<Torque> PullOut, Sided<Torque> LockedRotor,
    Sided<Torque> IdealBoost, Torque ShortTime, Power? ShortTimePower);

/// <summary>The three torques and the short-time envelope over the frequencies of the settings.</summary>
public sealed record TorqueStudy
{
    internal const double MomentaryExcess = 1.6;
    private const double PullOutMargin = 0.75;

    /// <summary>The no-credit bound.</summary>
    public required TorqueBound Bound { get; init; }

    /// <summary>At the motor shaft.</summary>
    public required IReadOnlyList<FrequencyTorques> Motor { get; init; }

    /// <summary>At the spindle, one a belt position in the machine's order.</summary>
    public required IReadOnlyList<SpindleTorques> Spindle { get; init; }

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Its torques.</returns>
    public static TorqueStudy Of(DrillPress press)
    {
        var (capability, hazard) = (new Drive(press, Side.Capability), new Drive(press, Side.Hazard));
        var motor = FrequencyGrid.Of(press.Inverter)
            .Select(hertz => At(press, capability, hazard, hertz)).ToList();
        var bound = TorqueBound.Of(press);
        return new()
        {
            Bound = bound,
            Motor = motor,
            Spindle = [.. press.Belts.Select(belt => AtSpindle(press, belt, bound, motor))],
        };
    }

    /// <summary>Short-time torque at the shaft, N·m: the least of its three limits, never below 0.</summary>
    /// <param name="ratedNm">Rated torque.</param>
    /// <param name="pullOutNm">Pull-out torque across the gap.</param>
    /// <param name="frictionNm">What friction and windage take of it.</param>
    /// <param name="atLimitNm">Shaft torque at the current limit; infinite where none limits.</param>
    internal static double ShortTimeNm(double ratedNm, double pullOutNm, double frictionNm, double atLimitNm = double.PositiveInfinity) =>
        Math.Max(0, Math.Min(MomentaryExcess * ratedNm, Math.Min(PullOutMargin * pullOutNm - frictionNm, atLimitNm)));

    /// <summary>Short-time torque at the motor shaft, what sets it and the speed it turns at.</summary>
    internal static (double TorqueNm, string Limit, OperatingPoint? Point) ShortTimeAt(
        DrillPress press, Drive capability, double hertz)
    {
        var synchronous = capability.Si[0].SynchronousRadPerS(hertz);
        var frictionNm = ShaftLosses.At(press.Motor.Circuit.Capability, 0, synchronous).TorqueNm;
        (double TorqueNm, string Limit)[] limits =
        [
            (MomentaryExcess * press.Motor.RatedTorque.NewtonMeters, "1.6 times rated torque"),
            (PullOutMargin * capability.PullOutNm(hertz) - frictionNm, "0.75 of pull-out torque"),
            (AtCurrentLimitNm(press, capability, hertz) - frictionNm, "current limit"),
        ];
        var (torque, limit) = limits.MinBy(each => each.TorqueNm);
        torque = Math.Max(0, torque);
        var phase = ElectricPotential.FromVolts(capability.PhaseV(hertz));
        var point = torque == 0
            ? null
            : capability.Circuits
                .Select(circuit => CircuitSolver.Running(
                    circuit, Frequency.FromHertz(hertz), phase, Torque.FromNewtonMeters(torque),
                    ElectricPotential.FromVolts(capability.DropV)))
                .MinBy(running => running?.Speed.RadiansPerSecond ?? 0);
        return (torque, limit, point);
    }

    private static FrequencyTorques At(DrillPress press, Drive capability, Drive hazard, double hertz)
    {
        Sided<Torque> Both(Func<Drive, double> torqueNm) =>
            new(Torque.FromNewtonMeters(torqueNm(capability)), Torque.FromNewtonMeters(torqueNm(hazard)));
        var (shortTimeNm, limit, point) = ShortTimeAt(press, capability, hertz);
        return new()
        {
            Frequency = Frequency.FromHertz(hertz),
            PullOut = Both(drive => drive.PullOutNm(hertz)),
            LockedRotor = Both(drive => drive.LockedRotorNm(hertz)),
            IdealBoost = Both(drive => drive.IdealBoostNm(hertz)),
            IdealBoostLockedRotor = Both(drive => drive.IdealBoostNm(hertz, 1)),
            ShortTime = Torque.FromNewtonMeters(shortTimeNm),
            ShortTimeLimit = limit,
            ShortTimeSpeed = point?.Speed,
        };
    }

    /// <summary>The largest torque on the running side of the curve with the stator current at or below the limit.</summary>
    /// <remarks>The smaller over cold and hot on the capability side, the larger on the hazard side, where it is not credited.</remarks>
    internal static double AtCurrentLimitNm(DrillPress press, Drive drive, double hertz)
    {
        var (limitA, phaseV) = (press.Inverter.LimitingCurrent.Amperes, drive.PhaseV(hertz));
        var torques = drive.Si.Select(circuit =>
        {
            var (pullOutNm, slip) = CircuitSolver.PullOutSi(circuit, hertz, phaseV, drive.DropV);
            double Excess(double at) => circuit.Solve(hertz, phaseV, drive.DropV, at).CurrentA - limitA;
            if (Excess(slip) <= 0) return pullOutNm;
            if (Excess(0) >= 0) return 0;
            return circuit.Solve(hertz, phaseV, drive.DropV, Brent.FindRoot(Excess, 0, slip, 1e-12, 200)).TorqueNm;
        });
        return drive.Side == Side.Capability ? torques.Min() : torques.Max();
    }

    private static SpindleTorques AtSpindle(
        DrillPress press, BeltPosition belt, TorqueBound bound, List<FrequencyTorques> motor)
    {
        var friction = press.Spindle.FrictionTorque;
        Torque Through(Torque torque, Side side) =>
            Torque.FromNewtonMeters(Math.Max(0, (belt.SpindleTorque(torque, side) - friction.On(side)).NewtonMeters));
        Sided<Torque> Both(Sided<Torque> torque) =>
            new(Through(torque.Capability, Side.Capability), Through(torque.Hazard, Side.Hazard));
        var poles = press.Motor.Circuit.Capability;
        return new(belt, bound.AtSpindle(belt), [.. motor.Select(at =>
        {
            var shortTime = Through(at.ShortTime, Side.Capability);
            return new SpindleTorquePoint(
                at.Frequency, belt.SpindleSpeed(poles.SynchronousSpeedAt(at.Frequency)), Both(at.PullOut),
                Both(at.LockedRotor), Both(at.IdealBoost), shortTime,
                at.ShortTimeSpeed is { } speed
                    ? Power.FromWatts(shortTime.NewtonMeters * belt.SpindleSpeed(speed).RadiansPerSecond)
                    : null);
        })]);
    }
}
