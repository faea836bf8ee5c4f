using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using UnitsNet;

namespace Spindlewright.Tests.Contact;

/// <summary>Laws of contact: limits, an independent solution, monotonicity.</summary>
public class ContactLawTests
{
    private static readonly bool[] FreeOrNot = [false, true];
    private static readonly ContactBody Hand = ContactBody.HandOf(Handbook.FromEmbedded());

    [Theory]
    [InlineData(140, 1.6, 1.309)]
    [InlineData(5, 80, 4)]
    [InlineData(400, 0.4, 0.2)]
    public void The_largest_force_agrees_with_the_motion_integrated_step_by_step(double drivingN, double massKg, double speedMPerS)
    {
        // Independent solution: m x'' = Fd − k x from x = 0 at speed v, leap-frog in small steps, largest k x.
        var (k, x, v, largest) = (Hand.NewtonsPerMetre, 0.0, speedMPerS, 0.0);
        var step = Math.Sqrt(massKg / k) / 20_000;
        while (v >= 0 || x <= 0)
        {
            v += step * (drivingN - k * x) / massKg;
            x += step * v;
            largest = Math.Max(largest, k * x);
        }
        var force = GrabForce.Of(Force.FromNewtons(drivingN), Hand, Mass.FromKilograms(massKg), Speed.FromMetersPerSecond(speedMPerS));
        Assert.Equal(1, force.Newtons / largest, 1e-3); // error of the steps
    }

    [Fact]
    public void Force_never_falls_when_torque_inertia_or_speed_rises() =>
        Gen.Select(Gen.Double[0, 2000], Gen.Double[1e-5, 1], Gen.Double[0, 20], Gen.Double[1, 3]).Sample((drivingN, inertia, speed, more) =>
        {
            double At(double f, double j, double v, bool free)
            {
                var trapped = GrabForce.TrappedMass(MassMomentOfInertia.FromKilogramSquareMeters(j), Length.FromMillimeters(50));
                return GrabForce.Of(Force.FromNewtons(f), Hand, free ? GrabForce.FreeMass(Hand, trapped) : trapped, Speed.FromMetersPerSecond(v)).Newtons;
            }
            foreach (var free in FreeOrNot)
            {
                var here = At(drivingN, inertia, speed, free) * (1 - 1e-12);
                Assert.True(At(drivingN * more, inertia, speed, free) >= here);
                Assert.True(At(drivingN, inertia * more, speed, free) >= here);
                Assert.True(At(drivingN, inertia, speed * more, free) >= here);
                Assert.True(At(drivingN, inertia, speed, false) >= here);
            }
        });

    [Fact]
    public void A_roll_of_thin_layers_is_as_long_as_the_turns_of_the_bare_body_and_of_thick_ones_longer()
    {
        // 50 mm, 500 r/min, 1.5 s: 12.5 turns, 1.963 m (own arithmetic); 3 mm layers add π·12.5²·3 mm = 1.473 m.
        WoundOn At(double mm) => WrapIn.Of(Length.FromMillimeters(50), RotationalSpeed.FromRevolutionsPerMinute(500), Duration.FromSeconds(1.5), Duration.Zero, Length.FromMillimeters(mm));
        Assert.Equal(12.5, At(0).Turns, 1e-9);
        Assert.Equal(1.963, At(0).Length.Meters, 0.001);
        Assert.Equal(1.963 + 1.473, At(3).Length.Meters, 0.002);
        Assert.Equal(125, At(3).RollDiameter.Millimeters, 1e-9);
    }

    [Fact]
    public void The_time_for_a_length_gives_that_length_back() =>
        Gen.Select(Gen.Double[0.01, 3], Gen.Double[5, 100], Gen.Double[0, 10], Gen.Double[10, 3000]).Sample((metres, mm, layer, rpm) =>
        {
            var (diameter, thick, speed) = (Length.FromMillimeters(mm), Length.FromMillimeters(layer), RotationalSpeed.FromRevolutionsPerMinute(rpm));
            var time = WrapIn.TimeFor(Length.FromMeters(metres), diameter, speed, thick);
            Assert.Equal(1, WrapIn.Of(diameter, speed, time, Duration.Zero, thick).Length.Meters / metres, 1e-9);
        });

    [Fact]
    public void A_braked_stop_takes_out_all_the_energy()
    {
        var (inertia, speed, stop) = (MassMomentOfInertia.FromKilogramSquareMeters(0.02), RotationalSpeed.FromRevolutionsPerMinute(1234), Duration.FromSeconds(0.7));
        // Mean power of an even stop is half the first one.
        Assert.Equal(RunDown.EnergyOf(inertia, speed).Joules, (double)RunDown.BrakingPower(inertia, speed, stop).Watts / 2 * stop.Seconds, 1e-9);
        Assert.Equal(stop.Seconds, RunDown.CoastTime(inertia, speed, RunDown.BrakingTorque(inertia, speed, stop)).Seconds, 1e-12);
        Assert.Equal(5, RunDown.TurnsOf(speed, RunDown.TimeForTurns(speed, 5)), 1e-12);
    }

    [Fact]
    public void What_holds_the_work_grows_with_torque_and_falls_with_distance()
    {
        var torque = Torque.FromNewtonMeters(60);
        Assert.Equal(300, Holding.AtPin(torque, Length.FromMillimeters(200)).Newtons, 1e-9);
        Assert.Equal(3000, Holding.ByFriction(torque, Length.FromMillimeters(200), 0.1).Newtons, 1e-9);
        Assert.Equal(200, Holding.PinDistance(torque, Force.FromNewtons(300)).Millimeters, 1e-9);
    }

    [Fact]
    public void A_plate_or_a_body_that_cannot_be_is_refused()
    {
        Length Mm(double mm) => Length.FromMillimeters(mm);
        Assert.Throws<PartException>(() => new LoosePlate(Mm(200), Mm(50), Mm(6), Mm(120), 7850));
        Assert.Throws<PartException>(() => new ContactBody("hand", Mass.Zero, 75_000, Provenance.Yours, ""));
        Assert.Throws<PartException>(() => RunDown.CoastTime(MassMomentOfInertia.Zero, RotationalSpeed.Zero, Torque.Zero));
    }
}
