using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using Spindlewright.Studies.Frequencies;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Tests.Studies;

public class FrequencyStudyTests
{
    private const double Rounding = 1 + 1e-9;

    [Fact]
    public void Fed_by_the_boost_law_the_motor_keeps_its_breakdown_torque() => Assert.All(Presses.Demo, press =>
    {
        var circuit = press.Motor.Circuit.Capability;
        double At(Frequency frequency, ElectricPotential line) =>
            CircuitSolver.Breakdown(circuit, frequency, line / Math.Sqrt(3)).Torque.NewtonMeters;
        var curve = press.Inverter.Curve;
        var wanted = At(curve.BaseFrequency, curve.BaseVoltage);
        Assert.All(FrequencyStudy.Of(press).BoostLaw, at => Assert.Equal(1, At(at.Frequency, at.Needed.Capability) / wanted, 1e-9));
    });

    [Fact]
    public void Locked_rotor_torque_is_nowhere_above_the_largest_that_is_named_and_no_torque_above_the_bound() =>
        Presses.Random.Sample(press =>
        {
            var (study, torques) = (FrequencyStudy.Of(press), TorqueStudy.Of(press));
            Assert.All(torques.Motor, at =>
            {
                Assert.True(at.LockedRotor.Hazard <= study.LargestLockedRotor.Hazard.Torque * Rounding);
                Assert.True(at.LockedRotor.Capability <= study.LargestLockedRotor.Capability.Torque * Rounding);
            });
            Assert.True(study.LargestLockedRotor.Hazard.Torque <= torques.Bound.Motor * Rounding);
            Assert.All(study.Boosts, boost => Assert.All(boost.Points, at => Assert.True(at.PullOut.Hazard <= boost.Bound * Rounding)));
            Assert.All(study.Temperatures, each => Assert.All(each.Points, at => Assert.True(at.PullOut.Hazard <= torques.Bound.Motor * Rounding)));
        }, iter: 12);

    [Fact]
    public void At_twice_base_frequency_a_single_cage_has_between_an_eighth_and_a_half_of_its_locked_rotor_torque()
    {
        // Limits by hand: T = 3 V² R2 / (ωs |Z|²) with V fixed. Z all resistance: ωs doubles, a half; all reactance: an eighth.
        var twice = FrequencyStudy.Of(Presses.HandComputed(4, Duration.FromSeconds(1.5))).TwiceBase;
        Assert.InRange(twice.LockedRotor.Hazard, 1.0 / 8, 1.0 / 2);
        Assert.InRange(twice.PullOut.Hazard, 1.0 / 4, 1.0 / 2);
        Assert.Equal(4, twice.StoredEnergy);
        Assert.True(twice.WithinSettings);
    }

    [Fact]
    public void Boost_raises_torque_no_load_current_and_never_lowers_the_bound() => Assert.All(Presses.Demo, press =>
    {
        var boosts = FrequencyStudy.Of(press).Boosts;
        Assert.All(boosts.Zip(boosts.Skip(1)), pair =>
        {
            Assert.True(pair.Second.Points[0].LockedRotor.Capability > pair.First.Points[0].LockedRotor.Capability);
            Assert.True(pair.Second.NoLoadCurrent.Hazard > pair.First.NoLoadCurrent.Hazard);
            Assert.True(pair.Second.Bound >= pair.First.Bound);
        });
    });

    [Fact]
    public void Families_by_temperature_run_from_cold_to_hot_and_enclose_what_is_modelled() => Assert.All(Presses.Demo, press =>
    {
        var families = FrequencyStudy.Of(press).Temperatures;
        Assert.Equal(press.Motor.Winding.Cold.Kelvins, families[0].Winding.Kelvins, 1e-9);
        Assert.Equal(press.Motor.Winding.Hot.Kelvins, families[^1].Winding.Kelvins, 1e-9);
        // The hazard side takes the larger of cold and hot.
        var hertz = families[0].Points[0].Frequency.Hertz;
        var modelled = new Machines.Drive(press, Side.Hazard).PullOutNm(hertz);
        var largest = Math.Max(families[0].Points[0].PullOut.Hazard.NewtonMeters, families[^1].Points[0].PullOut.Hazard.NewtonMeters);
        Assert.Equal(1, largest / modelled, 1e-9);
    });

    [Fact]
    public void Rated_power_ends_where_pull_out_torque_meets_it()
    {
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var study = FrequencyStudy.Of(press);
        if (study.RatedPowerUntil.Hazard is not { } end) return;
        var pullOut = new Machines.Drive(press, Side.Hazard).PullOutNm(end.Hertz);
        Assert.Equal((double)press.Motor.RatedPower.Watts, pullOut * 4 * Math.PI * end.Hertz / 6, 0.1); // six poles
    }
}
