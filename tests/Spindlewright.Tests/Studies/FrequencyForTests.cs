using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Machines;
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
            (press, speedShare, torqueShare) =>
            {
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
                Assert.All(Enumerable.Range(0, 41).Select(step => lowest + (highest - lowest) * step / 40), at =>
                    Assert.False(Loaded(at) >= rpm && Loaded(at) <= rpm * 1.0001, $"{answer.Words}, and yet {at} Hz gives the speed"));
            },
            iter: 100);
        Assert.True(found > 10 && none > 10, $"{found} found, {none} without");
    }
}
