using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Tests.Studies;

/// <summary>The running point itself is the reference: solved at the frequency that was found, and just below it.</summary>
public class FrequencyForTests
{
    private const double JustBelow = 1 - 1e-6;

    [Fact]
    public void The_frequency_found_turns_the_loaded_spindle_at_the_wanted_speed_and_a_little_less_does_not()
    {
        var (found, none) = (0, 0);
        Gen.Select(Presses.Random, Gen.Double[0.05, 1.3], Gen.Double[0, 1.1]).Sample(
            (given, speedShare, torqueShare) =>
            {
                var press = speedShare < 0.5 ? given : WithShaftLosses(given);
                var (drive, belt) = (new Drive(press, Side.Capability), press.Belts[0]);
                var wanted = press.Motor.RatedSpeed / belt.Ratio * speedShare;
                var torque = Torque.FromNewtonMeters(drive.PullOutNm(50) * belt.Ratio * torqueShare);
                var motor = torque / (belt.Ratio * belt.Efficiency.Capability);
                double Loaded(double hertz) => FrequencyFor.LoadedRpm(drive, hertz, motor) / belt.Ratio;
                var answer = FrequencyFor.Of(press, drive, belt, wanted, torque);
                var rpm = wanted.RevolutionsPerMinute;
                if (answer.Frequency is { Hertz: var hertz })
                {
                    Interlocked.Increment(ref found);
                    Assert.InRange(Loaded(hertz), rpm * (1 - 1e-9), rpm * 1.02);
                    Assert.True(Loaded(hertz * JustBelow) < rpm, $"{hertz} Hz is the lowest that does");
                    return;
                }
                Interlocked.Increment(ref none);
                var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
                double[] speeds = [.. Enumerable.Range(0, 65).Select(step => Loaded(lowest + (highest - lowest) * step / 64))];
                var why = answer.Words.Split(' ', ',')[0..2];
                Assert.True(
                    why is ["too", "fast"] ? speeds[0] > rpm : why is ["too", "slow"] ? speeds.All(each => each < rpm) : speeds.Any(each => each > rpm),
                    $"{answer.Words}: {string.Join(" ", speeds)} against {rpm}");
            },
            iter: 100);
        Assert.True(found > 10 && none > 10, $"{found} found, {none} without");
    }

    /// <summary>Friction and stray-load loss of some hundredths of the pull-out torque each.</summary>
    private static DrillPress WithShaftLosses(DrillPress given)
    {
        var (circuit, pullOutNm) = (given.Motor.Circuit.Capability, new Drive(given, Side.Capability).PullOutNm(50));
        var loss = Power.FromWatts(0.03 * pullOutNm * circuit.SynchronousSpeed.RadiansPerSecond);
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, circuit.SynchronousSpeed * 0.95).Current;
        var motor = given.Motor with
        {
            Circuit = Sided.Same(circuit with
            {
                Rotational = new RotationalLoss(loss, circuit.SynchronousSpeed, 2),
                Stray = new StrayLoadLoss(loss, rated, circuit.SynchronousSpeed),
            }),
        };
        return new(given.Title, given.Supply, given.Inverter, motor, given.Belts, given.Spindle) { Person = given.Person };
    }
}
