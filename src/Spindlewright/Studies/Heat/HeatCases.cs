using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors.Heat;
using UnitsNet;

namespace Spindlewright.Studies.Heat;

/// <summary>How hot single states and repeated tasks become.</summary>
internal static class HeatCases
{
    private static readonly Duration Steady = Duration.FromHours(1);

    /// <summary>Slow, base and stalled states that a reader asks about.</summary>
    internal static IReadOnlyList<HeatCase> Of(DrillPress press, Sided<HeatedMotor> motors)
    {
        var (lowest, atBase) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.Curve.BaseFrequency.Hertz);
        var rated = press.Motor.RatedTorque.NewtonMeters;
        return
        [
            Running("rated torque at base frequency", motors, atBase, rated),
            Running("half of rated torque at the lowest frequency", motors, lowest, rated / 2),
            Running("rated torque at the lowest frequency", motors, lowest, rated),
            Running("unloaded at the lowest frequency", motors, lowest, 0),
            Stalled("stalled at the lowest frequency", press, motors, lowest),
            Stalled("stalled at base frequency", press, motors, atBase),
        ];
    }

    /// <summary>A steady load.</summary>
    internal static HeatCase Running(string name, Sided<HeatedMotor> motors, double hertz, double torqueNm)
    {
        var (frequency, load) = (Frequency.FromHertz(hertz), Torque.FromNewtonMeters(torqueNm));
        var stages = motors.Map(motor => motor.Stage(hertz, torqueNm, Steady));
        if (stages.Capability is not { } hot || stages.Hazard is not { } cool)
            return new(name, frequency, load, new(null, null), new(null, null), null, true);
        return new(
            name, frequency, load, new(motors.Capability.Final(hot), motors.Hazard.Final(cool)),
            new(motors.Capability.TimeToLimit(hot), motors.Hazard.TimeToLimit(cool)), null, false);
    }

    /// <summary>The settled temperature of a task.</summary>
    internal static TaskHeat Task(DrillPress press, Sided<HeatedMotor> motors, DayTask task)
    {
        var highest = motors.Map(motor => Highest(press, motor, task));
        var limit = motors.Capability.Limit;
        var words = (highest.Capability, highest.Hazard) switch
        {
            (null, null) => "the motor stalls at this load",
            (null, _) => "the motor stalls at this load on the capability side",
            ({ } hot, _) when hot <= limit => "stays below the class limit on both sides",
            (_, { } cool) when cool <= limit => "passes the class limit on the hot side",
            _ => "passes the class limit on both sides",
        };
        return new(task, highest, words);
    }

    private static Temperature? Highest(DrillPress press, HeatedMotor motor, DayTask task)
    {
        var (hertz, rated) = (task.Frequency.Hertz, press.Motor.RatedTorque.NewtonMeters);
        if (motor.Stage(hertz, task.Load * rated, task.Loaded) is not { } loaded
            || motor.Stage(hertz, 0, task.Idle) is not { } idle)
            return null;
        var rise = new DutyCycle(motor.Body, [loaded, idle, DutyStage.Off(task.Off)]).HighestRise;
        return rise is { } highest ? motor.Air + highest : null;
    }

    private static HeatCase Stalled(string name, DrillPress press, Sided<HeatedMotor> motors, double hertz)
    {
        var stalled = motors.Map(motor => (Motor: motor, At: motor.Stalled(hertz, Steady)));
        return new(
            name, Frequency.FromHertz(hertz), null, stalled.Map(each => each.Motor.Final(each.At.Stage)),
            stalled.Map(each => each.Motor.TimeToLimit(each.At.Stage)),
            stalled.Map(each => Alone(each.Motor, each.At.Current)), false);

        // A drop larger than the set volts leaves no current, and no heat.
        Duration? Alone(HeatedMotor motor, ElectricCurrent current) =>
            motor.RatedCurrentDensity * (current / press.Motor.RatedCurrent) is var density && density.AmperesPerSquareMeter > 0
                ? WindingAlone.TimeTo(density, motor.Air, motor.Limit)
                : null;
    }
}
