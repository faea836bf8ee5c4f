using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Motors.Heat;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Heat;

/// <summary>What heat allows: continuous torque, time to the limit of the insulation, duties, and twice base frequency.</summary>
public sealed record HeatStudy
{
    private const double DeratingSpread = 0.1;

    /// <summary>What heats and cools the motor.</summary>
    public required HeatingData Data { get; init; }

    /// <summary>The motor as a body, by side.</summary>
    public required Sided<ThermalBody> Body { get; init; }

    /// <summary>At the motor shaft, one a frequency.</summary>
    public required IReadOnlyList<ContinuousTorque> Motor { get; init; }

    /// <summary>At the spindle, one a belt position in the machine's order.</summary>
    public required IReadOnlyList<SpindleEnvelope> Spindle { get; init; }

    /// <summary>Steady states that a reader asks about: slow, fast, stalled.</summary>
    public required IReadOnlyList<HeatCase> Cases { get; init; }

    /// <summary>Twice base frequency.</summary>
    public required FastRunning TwiceBase { get; init; }

    /// <summary>The tasks of the day.</summary>
    public required IReadOnlyList<TaskHeat> Tasks { get; init; }

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>What heat allows.</returns>
    public static HeatStudy Of(DrillPress press, TorqueStudy torques, Handbook handbook)
    {
        var data = press.Heating ?? HeatingData.Usual(handbook);
        var motors = new Sided<HeatedMotor>(new(press, data, Side.Capability), new(press, data, Side.Hazard));
        var motor = torques.Motor.Select(at => At(press, motors, at, handbook)).ToList();
        return new()
        {
            Data = data,
            Body = motors.Map(each => each.Body),
            Motor = motor,
            Spindle = [.. torques.Spindle.Select(each => AtSpindle(press, each, motor))],
            Cases = HeatCases.Of(press, motors),
            TwiceBase = FastRunningStudy.Of(press, motors, torques.Bound.Motor, handbook),
            Tasks = [.. press.DayOrUsual.Tasks.Select(task => HeatCases.Task(press, motors, task))],
        };
    }

    private static ContinuousTorque At(
        DrillPress press, Sided<HeatedMotor> motors, FrequencyTorques at, Handbook handbook)
    {
        var hertz = at.Frequency.Hertz;
        var (hot, cool) = (
            motors.Capability.Continuous(hertz, motors.Capability.AtRatedLoad),
            motors.Hazard.Continuous(hertz, motors.Hazard.AtRatedLoad));
        var shortTime = at.ShortTime.NewtonMeters;
        var rated = press.Motor.RatedTorque;
        var derating = handbook.MotorDerating.At(at.Frequency / press.Motor.Circuit.Capability.RatedFrequency);
        return new(
            at.Frequency, new(Nm(Math.Min(hot.TorqueNm, shortTime)), Nm(Math.Min(cool.TorqueNm, shortTime))),
            hot.TorqueNm <= shortTime ? hot.Limit : $"short-time limit: {at.ShortTimeLimit}",
            motors.Map(each => Nm(each.Continuous(hertz, each.Limit).TorqueNm)), rated * derating.Value,
            rated * DeratingSpread);
    }

    private static SpindleEnvelope AtSpindle(
        DrillPress press, SpindleTorques spindle, List<ContinuousTorque> motor) => new(
        spindle.Belt, spindle.Bound, [.. spindle.Points.Zip(motor, (point, at) => new SpindleEnvelopePoint(
            point.Frequency, point.SynchronousSpeed, Through(press, spindle.Belt, at.Continuous.Capability), point.ShortTime))]);

    private static Torque Through(DrillPress press, BeltPosition belt, Torque motor) => Nm(Math.Max(
        0, (belt.SpindleTorque(motor, Side.Capability) - press.Spindle.FrictionTorque.Capability).NewtonMeters));

    private static Torque Nm(double newtonMeters) => Torque.FromNewtonMeters(newtonMeters);
}
