using Spindlewright.Foundations;
using Spindlewright.Machines;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.SupplyAndBill;

/// <summary>The energy of a working day, through the inverter and direct on line.</summary>
/// <remarks>
/// Direct on line the same motor does the same shaft work at its rated frequency, on a three-phase line that a home or a
/// small workshop often does not have; belt and cut ask for the same power either way. Motors are warm, the supply nominal,
/// the inverter's losses those of the capability side.
/// </remarks>
internal static class DayStudy
{
    internal static DayEnergy Of(DrillPress press, MotorFeed feed)
    {
        var day = press.DayOrUsual;
        var rows = day.Tasks.Select(task => Of(press, feed, task)).ToList();
        var runningHours = day.Tasks.Sum(task => (task.Loaded + task.Idle).Hours * task.Repeats);
        var standby = Energy.FromWattHours(
            (double)press.Inverter.Losses.Capability.Standby.Watts * Math.Max(0, day.SwitchedOn.Hours - runningHours));
        Energy? Sum(Func<TaskEnergy, Energy?> of) => rows.Any(row => of(row) is null)
            ? null
            : Energy.FromWattHours(rows.Sum(row => of(row)!.Value.WattHours));
        var with = Sum(row => row.WithInverter) is { } tasks ? tasks + standby : (Energy?)null;
        var result = new DayEnergy(rows, with, standby, Sum(row => row.DirectOnLine), "");
        return result with { Words = Words(result) };
    }

    private static TaskEnergy Of(DrillPress press, MotorFeed feed, DayTask task)
    {
        var loaded = feed.OnInverter(task.Frequency, press.Motor.RatedTorque * task.Load);
        var idle = feed.OnInverter(task.Frequency, Torque.Zero);
        var (loadedHours, idleHours) = (task.Loaded.Hours * task.Repeats, task.Idle.Hours * task.Repeats);
        if (loaded is null || idle is null) return new(task, null, null, Energy.Zero);
        double InputW(Motors.OperatingPoint motor) => (double)feed.Input(motor).Input.Watts;
        var with = Energy.FromWattHours(InputW(loaded) * loadedHours + InputW(idle) * idleHours);
        return new(
            task, with, Line(feed, loaded, loadedHours, idleHours),
            Energy.FromWattHours((double)loaded.Shaft.Watts * loadedHours));
    }

    private static Energy? Line(MotorFeed feed, Motors.OperatingPoint loaded, double loadedHours, double idleHours)
    {
        var speed = feed.Circuit.SynchronousSpeed.RadiansPerSecond;
        // The same shaft power at the line's speed; the few percent of slip are made good in one more step.
        var first = feed.DirectOnLine(Torque.FromNewtonMeters((double)loaded.Shaft.Watts / speed));
        var line = first is null
            ? null
            : feed.DirectOnLine(Torque.FromNewtonMeters((double)loaded.Shaft.Watts / first.Speed.RadiansPerSecond));
        return line is null || feed.DirectOnLine(Torque.Zero) is not { } idle
            ? null
            : Energy.FromWattHours((double)line.Input.Watts * loadedHours + (double)idle.Input.Watts * idleHours);
    }

    private static string Words(DayEnergy day)
    {
        if (day.WithInverter is not { } with || day.DirectOnLine is not { } line || day.Saving is not { } saving)
            return "Not computed: a task asks for more torque than the motor has at its frequency.";
        var verdict = saving >= 0
            ? Invariant($"{100 * saving:0} % less")
            : Invariant($"{-100 * saving:0} % more");
        return Invariant(
            $"The day takes {with.KilowattHours:0.00} kWh through the inverter ({day.Standby.KilowattHours:0.00} kWh of it standby) and {line.KilowattHours:0.00} kWh by the same motor direct on line: {verdict}. At the drill {day.Tasks.Sum(row => row.AtDrill.KilowattHours):0.00} kWh are done. The cut asks for the same energy either way; an inverter saves only what the motor loses by turning faster than it must, and adds its own losses and standby. Savings claimed for fans and pumps, whose load falls with the cube of speed, do not carry over to a drill.");
    }
}
