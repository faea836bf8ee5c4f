using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Motors.Heat;
using UnitsNet;

namespace Spindlewright.Studies.Heat;

/// <summary>One side's motor on its inverter, with what it loses and how it sheds it. Plain SI inside.</summary>
/// <remarks>
/// The capability side is the hot one: lowest supply, drops in, waveform loss, warm air. All losses count as heat, those of
/// fan and bearings too, which is on the hot side of the truth.
/// </remarks>
internal sealed class HeatedMotor
{
    private readonly DrillPress press;
    private readonly Side side;
    private readonly HeatingData data;

    internal HeatedMotor(DrillPress press, HeatingData data, Side side)
    {
        (this.press, this.data, this.side) = (press, data, side);
        Drive = new(press, side);
        AtRatedLoad = HeatingData.RatedCoolant + data.RatedRise.On(side);
        var rated = RatedPoint();
        Body = new(
            rated.Input - rated.Shaft, data.RatedRise.On(side), data.RunningTimeConstant.On(side),
            data.StandstillOverRunning.On(side), rated.Speed, data.Ventilation);
        Air = data.Coolant.On(side);
        WaveformLossW = data.WaveformLoss.On(side) * (double)Body.RatedLoss.Watts;
    }

    internal ThermalBody Body { get; }

    internal Temperature Air { get; }

    internal Temperature Limit => data.ClassLimit;

    /// <summary>Winding temperature at rated load in the coolant for which motors are rated.</summary>
    internal Temperature AtRatedLoad { get; }

    internal Drive Drive { get; }

    /// <summary>Loss that the waveform adds, W.</summary>
    internal double WaveformLossW { get; }

    internal ElectricCurrentDensity RatedCurrentDensity => data.RatedCurrentDensity.On(side);

    /// <summary>Rise over the air up to the class limit.</summary>
    internal TemperatureDelta Room => Limit - Air;

    /// <summary>The largest shaft torque that keeps the winding at or below a temperature for ever, and what sets it.</summary>
    internal (double TorqueNm, string Limit) Continuous(double hertz, Temperature winding)
    {
        var circuit = Circuit(winding);
        var (si, phaseV) = (circuit.Si, Drive.PhaseV(hertz));
        var roomK = (winding - Air).Kelvins;
        var peakSlip = CircuitSolver.PullOutSi(si, hertz, phaseV, Drive.DropV).Slip;
        if (Excess(0) >= 0) return (0, "too hot even unloaded");
        var slip = Excess(peakSlip) <= 0 ? peakSlip : Brent.FindRoot(Excess, 0, peakSlip, 1e-12, 200);
        var torque = At(slip).ShaftTorque.NewtonMeters;
        return torque <= 0 ? (0, "too hot even unloaded") : (torque, slip == peakSlip ? "pull-out torque" : "heat");

        OperatingPoint At(double at) => OperatingPoint.From(circuit, hertz, phaseV, at, si.Solve(hertz, phaseV, Drive.DropV, at));

        double Excess(double at)
        {
            var point = At(at);
            return LossW(point) - Body.ConductanceWPerK(point.Speed) * roomK;
        }
    }

    /// <summary>A stage of a duty under a shaft torque; null where the motor stalls at it, cold or hot.</summary>
    internal DutyStage? Stage(double hertz, double torqueNm, Duration time)
    {
        var (cold, hot) = (Running(hertz, torqueNm, Air), Running(hertz, torqueNm, Limit));
        if (cold is null || hot is null) return null;
        // The hot motor turns slower and fans less: its speed serves both.
        return Stage(LossW(cold), LossW(hot), hot.Speed, time);
    }

    /// <summary>A stage at standstill with the supply on.</summary>
    internal (DutyStage Stage, ElectricCurrent Current) Stalled(double hertz, Duration time)
    {
        OperatingPoint At(Temperature winding) => CircuitSolver.Solve(
            Circuit(winding), Frequency.FromHertz(hertz),
            ElectricPotential.FromVolts(Drive.PhaseV(hertz)), 1, ElectricPotential.FromVolts(Drive.DropV));
        var (cold, hot) = (At(Air), At(Limit));
        return (Stage(LossW(cold), LossW(hot), RotationalSpeed.Zero, time), cold.Current);
    }

    /// <summary>Where the winding settles under a steady stage; null where it never does.</summary>
    internal Temperature? Final(DutyStage stage)
    {
        var net = Body.ConductanceWPerK(stage.Speed) - stage.LossPerKelvinW;
        return net <= 0 ? null : Air + TemperatureDelta.FromKelvins((double)stage.Loss.Watts / net);
    }

    /// <summary>Time from air temperature to the class limit under a steady stage; null for never.</summary>
    internal Duration? TimeToLimit(DutyStage stage) => FirstOrder.TimeTo(
        Room.Kelvins, 0, (double)stage.Loss.Watts, Body.ConductanceWPerK(stage.Speed) - stage.LossPerKelvinW,
        Body.CapacityJPerK) is { } seconds ? Duration.FromSeconds(seconds) : null;

    /// <summary>The largest share of a period that a stage may take, the motor off for the rest; 1 for always.</summary>
    internal double DutyShare(DutyStage stage, Duration period)
    {
        if (Final(stage) is { } final && final <= Limit) return 1;
        double Excess(double share)
        {
            var cycle = new DutyCycle(Body,
                [new(period * share, stage.Loss, stage.Speed, stage.LossPerKelvinW), DutyStage.Off(period * (1 - share))]);
            return (cycle.HighestRise?.Kelvins ?? double.MaxValue) - Room.Kelvins;
        }
        var (below, above) = (0.0, 1.0);
        // Halving, because beyond some share the rise has no end.
        for (var step = 0; step < 40; step++)
        {
            var middle = (below + above) / 2;
            if (Excess(middle) <= 0) below = middle;
            else above = middle;
        }
        return below;
    }

    private OperatingPoint? Running(double hertz, double torqueNm, Temperature winding) => CircuitSolver.Running(
        Circuit(winding), Frequency.FromHertz(hertz),
        ElectricPotential.FromVolts(Drive.PhaseV(hertz)), Torque.FromNewtonMeters(torqueNm),
        ElectricPotential.FromVolts(Drive.DropV));

    private DutyStage Stage(double coldW, double hotW, RotationalSpeed speed, Duration time) => new(
        time, Power.FromWatts(coldW), speed, Math.Max(0, (hotW - coldW) / Room.Kelvins));

    private double LossW(OperatingPoint point) => (double)(point.Input - point.Shaft).Watts + WaveformLossW;

    private EquivalentCircuit Circuit(Temperature winding) => press.Motor.Circuit.On(side).AtTemperature(winding);

    /// <summary>Rated load from a sinusoidal supply, the winding as hot as it then is.</summary>
    private OperatingPoint RatedPoint()
    {
        var circuit = Circuit(AtRatedLoad);
        return CircuitSolver.Running(
                circuit, circuit.RatedFrequency, circuit.RatedLineVoltage / Math.Sqrt(3), press.Motor.RatedTorque)
            ?? CircuitSolver.SolveAtRatedSupply(circuit, press.Motor.RatedSpeed);
    }
}
