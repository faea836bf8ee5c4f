using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Tests.Studies;

public class TorqueProperties
{
    // Rounding of a few additions and divisions; nothing physical hides in it.
    private const double Rounding = 1 + 1e-9;

    [Fact]
    public void The_bound_stands_at_or_above_the_modelled_torque_at_every_frequency_and_slip() =>
        Gen.Select(Presses.Random, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((press, share, slip) =>
        {
            var bound = TorqueBound.Of(press).Motor.NewtonMeters;
            var (hertz, drive) = (Within(press, share), new Drive(press, Side.Hazard));
            Assert.True(drive.PullOutNm(hertz) <= bound * Rounding, $"{drive.PullOutNm(hertz)} at {hertz} Hz, bound {bound}");
            Assert.True(drive.TorqueNm(hertz, slip) <= bound * Rounding);
            Assert.True(new Drive(press, Side.Capability).PullOutNm(hertz) <= bound * Rounding);
        });

    [Fact]
    public void The_bound_stands_at_or_above_ideal_boost_at_every_frequency() =>
        Gen.Select(Presses.Random, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((press, share, slip) =>
        {
            var bound = TorqueBound.Of(press).Motor.NewtonMeters;
            var (hertz, drive) = (Within(press, share), new Drive(press, Side.Hazard));
            Assert.True(drive.IdealBoostNm(hertz) <= bound * Rounding);
            Assert.True(new Drive(press, Side.Capability).IdealBoostNm(hertz) <= bound * Rounding);
            Assert.True(drive.IdealBoostNm(hertz, slip) <= drive.IdealBoostNm(hertz) * Rounding);
        });

    [Fact]
    public void Ideal_boost_stands_at_or_above_the_modelled_torque_wherever_the_set_curve_does_not_overflux() =>
        Gen.Select(Presses.Random, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((press, share, slip) =>
        {
            var (hertz, drive) = (Within(press, share), new Drive(press, Side.Hazard));
            var rated = press.Motor.Circuit.Hazard.Si;
            if (drive.PhaseV(hertz) / hertz > rated.RatedPhaseV / rated.RatedHz) return;
            Assert.True(drive.PullOutNm(hertz) <= drive.IdealBoostNm(hertz) * Rounding);
            foreach (var circuit in drive.Si)
                Assert.True(
                    circuit.Solve(hertz, drive.PhaseV(hertz), drive.DropV, slip).TorqueNm
                    <= RatedFlux.TorqueNm(circuit, hertz, drive.CeilingPhaseV, slip) * Rounding);
        });

    [Fact]
    public void The_bound_of_every_demo_machine_stands_above_both_sides_at_every_frequency_and_with_every_boost() =>
        Assert.All(Presses.Demo, press =>
        {
            foreach (var machine in new[] { 0, 0.04, 0.125 }.Select(share => press.WithCurve(new Inverters.StraightCurve(
                press.Inverter.Curve.BaseVoltage, press.Inverter.Curve.BaseFrequency, press.Inverter.Curve.BaseVoltage * share))).Prepend(press))
            {
                var study = TorqueStudy.Of(machine);
                Assert.All(study.Motor, at => Assert.All(
                    new[] { at.PullOut, at.LockedRotor, at.IdealBoost, at.IdealBoostLockedRotor },
                    pair => Assert.True(UnitMath.Max(pair.Capability, pair.Hazard) <= study.Bound.Motor * Rounding)));
            }
        });

    [Fact]
    public void The_bound_does_not_depend_on_frequency_limits_without_boost_and_goes_with_the_ratio() =>
        Gen.Select(Presses.Random, Gen.Double[0.3, 12]).Sample((press, ratio) =>
        {
            var bound = TorqueBound.Of(press);
            Assert.Equal(press.Belts[0].Ratio, bound.AtSpindle(press.Belts[0]) / bound.Motor, 1e-9);
            var other = new Belts.BeltPosition("other", ratio, Sided.Same(0.8));
            Assert.Equal(ratio / press.Belts[0].Ratio, bound.AtSpindle(other) / bound.AtSpindle(press.Belts[0]), 1e-9);
        });

    [Fact]
    public void Ideal_boost_against_slip_frequency_is_one_curve_up_to_base() =>
        Gen.Select(Presses.Random, Gen.Double[0.1, 4], Gen.Double[0.1, 0.9]).Sample((press, slipHz, share) =>
        {
            var si = press.Motor.Circuit.Hazard.Si;
            var hertz = Math.Max(slipHz, share * si.RatedHz);
            var here = RatedFlux.TorqueNm(si, hertz, double.MaxValue, slipHz / hertz);
            var atRated = RatedFlux.TorqueNm(si, si.RatedHz, double.MaxValue, slipHz / si.RatedHz);
            Assert.Equal(1, here / atRated, 1e-9);
        });

    // Hand-computed points, own arithmetic: 0.55 kW six-pole circuit, ratio 1000/245 (see Presses.HandComputed).
    [Theory]
    [InlineData(35, 9.18)]
    [InlineData(65, 18.05)]
    [InlineData(82, 22.49)]
    [InlineData(245, 43.94)]
    public void Locked_rotor_torque_at_the_spindle_agrees_with_the_hand_computed_points(double rpm, double expectedNm)
    {
        var press = Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        var spindle = new Drive(press, Side.Hazard).LockedRotorNm(50 * rpm / 245) * press.Belts[0].Ratio;
        Assert.Equal(expectedNm, spindle, 0.005); // printed to the hundredth
    }

    [Fact]
    public void Largest_torque_and_bound_agree_with_the_hand_computed_points()
    {
        var press = Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        Assert.Equal(52.8, new Drive(press, Side.Hazard).PullOutNm(50) * press.Belts[0].Ratio, 0.05);
        Assert.Equal(95.3, TorqueBound.Of(press).AtSpindle(press.Belts[0]).NewtonMeters, 0.05);
    }

    [Fact]
    public void Higher_supply_and_boost_raise_the_bound_by_their_squares()
    {
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var plain = TorqueBound.Of(press).Motor;
        var raised = TorqueBound.Of(new(
            press.Title, new Mains.Supply(press.Supply.Nominal, press.Supply.Lowest, press.Supply.Nominal * 1.1, press.Supply.Frequency, 3),
            press.Inverter, press.Motor, press.Belts, press.Spindle)
        { Person = press.Person });
        Assert.Equal(1.21, raised.Motor / plain, 1e-9);
    }

    [Fact]
    public void The_short_time_envelope_never_passes_its_three_limits() =>
        Presses.Random.Sample(press =>
        {
            var drive = new Drive(press, Side.Capability);
            foreach (var at in TorqueStudy.Of(press).Motor.Where((_, index) => index % 20 == 0))
            {
                Assert.True(at.ShortTime <= press.Motor.RatedTorque * (1.6 * Rounding));
                Assert.True(at.ShortTime.NewtonMeters <= 0.75 * drive.PullOutNm(at.Frequency.Hertz) * Rounding + 1e-12);
                Assert.True(at.PullOut.Capability <= at.PullOut.Hazard * Rounding);
            }
        }, iter: 50);

    private static double Within(DrillPress press, double share) =>
        press.Inverter.LowestFrequency.Hertz
        + (press.Inverter.HighestFrequency - press.Inverter.LowestFrequency).Hertz * share;
}
