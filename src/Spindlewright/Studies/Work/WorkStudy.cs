using MathNet.Numerics.RootFinding;
using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Work;

/// <summary>One hole at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">Frequency that turns the loaded spindle at the wanted speed; null where none does.</param>
/// <param name="Available">Short-time torque at the spindle there.</param>
/// <param name="Bound">No-credit bound at the spindle of this position.</param>
/// <param name="Words">What limits, in words.</param>
public sealed record WorkAtBelt(BeltPosition Belt, Frequency? Frequency, Torque? Available, Torque Bound, string Words)
{
    /// <summary>Available over needed torque; null where the speed is not reached.</summary>
    public required double? Margin { get; init; }
}

/// <summary>One hole of the machine file over every belt position.</summary>
/// <param name="Item">The hole.</param>
/// <param name="Speed">Spindle speed looked for.</param>
/// <param name="Load">Thrust and torque by the handbook method.</param>
/// <param name="Power">Power at the drill at that speed.</param>
/// <param name="Belts">One row a belt position.</param>
public sealed record WorkResult(
    WorkItem Item, RotationalSpeed Speed, TwistDrillLoad Load, Power Power, IReadOnlyList<WorkAtBelt> Belts)
{
    /// <summary>The position with the largest margin; null where none reaches the speed.</summary>
    public WorkAtBelt? Best => Belts.Where(belt => belt.Margin is not null).MaxBy(belt => belt.Margin);
}

/// <summary>Will it drill it? The holes of the machine file against the short-time envelope.</summary>
/// <param name="Items">One a hole.</param>
public sealed record WorkStudy(IReadOnlyList<WorkResult> Items)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="factors">The handbook's factors.</param>
    /// <returns>One result a hole.</returns>
    public static WorkStudy Of(DrillPress press, TorqueStudy torques, IDrillFactors factors)
    {
        var drive = new Drive(press, Side.Capability);
        return new([.. press.Work.Select(item => Of(press, torques, drive, item, factors))]);
    }

    private static WorkResult Of(
        DrillPress press, TorqueStudy torques, Drive drive, WorkItem item, IDrillFactors factors)
    {
        var load = TwistDrillLoad.Of(factors, item.Material, item.Diameter, item.FeedPerRevolution, item.Condition);
        return new(item, item.Speed, load, load.Power(item.Speed),
            [.. torques.Spindle.Select(spindle => At(press, drive, spindle, item.Speed, load.Torque))]);
    }

    private static WorkAtBelt At(
        DrillPress press, Drive drive, SpindleTorques spindle, RotationalSpeed speed, Torque needed)
    {
        var belt = spindle.Belt;
        var friction = press.Spindle.FrictionTorque.Capability;
        var motorNeeded = (needed + friction) / (belt.Ratio * belt.Efficiency.Capability);
        var wantedRpm = (speed * belt.Ratio).RevolutionsPerMinute;
        double Excess(double hertz) => LoadedRpm(drive, hertz, motorNeeded) - wantedRpm;
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        if (Excess(lowest) > 0)
            return new(belt, null, null, spindle.Bound, "too fast even at the lowest frequency") { Margin = null };
        if (LastBelow(Excess, lowest, highest) is not var (below, above))
            return new(belt, null, null, spindle.Bound, "too slow, or stalled, up to the highest frequency") { Margin = null };
        // A stalled motor reads zero speed, so the bracket may hold a jump; its upper end runs and is close enough.
        var hertz = Brent.TryFindRoot(Excess, below, above, 1e-6, 100, out var root) && Excess(root) > -1 ? root : above;
        var (motorNm, limit, _) = TorqueStudy.ShortTimeAt(press, drive, hertz);
        var available = belt.SpindleTorque(Torque.FromNewtonMeters(motorNm), Side.Capability) - friction;
        return new(belt, Frequency.FromHertz(hertz), available, spindle.Bound, $"short-time limit: {limit}")
        {
            Margin = available / needed,
        };
    }

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

    /// <summary>Slower of the cold and the hot motor's speeds under a torque; 0 where it stalls.</summary>
    private static double LoadedRpm(Drive drive, double hertz, Torque motor) =>
        drive.Circuits.Min(circuit => CircuitSolver.Running(
            circuit, Frequency.FromHertz(hertz), ElectricPotential.FromVolts(drive.PhaseV(hertz)), motor,
            ElectricPotential.FromVolts(drive.DropV))?.Speed.RevolutionsPerMinute ?? 0);
}
