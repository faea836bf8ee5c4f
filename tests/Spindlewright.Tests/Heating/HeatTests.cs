using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors.Heat;
using Spindlewright.Studies.Heat;
using Spindlewright.Studies.Torques;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Heating;

public class ThermalBodyTests
{
    private static readonly RotationalSpeed Rated = RotationalSpeed.FromRevolutionsPerMinute(1430);

    private static readonly Gen<ThermalBody> Bodies =
        from watts in Gen.Double[20, 2000]
        from rise in Gen.Double[20, 120]
        from minutes in Gen.Double[2, 60]
        from ratio in Gen.Double[1, 5]
        from separate in Gen.Bool
        select new ThermalBody(
            Power.FromWatts(watts), TemperatureDelta.FromKelvins(rise), Duration.FromMinutes(minutes), ratio, Rated,
            separate ? Ventilation.Separate : Ventilation.Self);

    [Fact]
    public void At_rated_loss_and_speed_the_rise_is_the_rated_one_and_63_percent_of_it_after_one_time_constant() =>
        Bodies.Sample(body =>
        {
            Assert.Equal(body.RatedRise.Kelvins, body.FinalRise(body.RatedLoss, Rated).Kelvins, 1e-9 * body.RatedRise.Kelvins);
            var cycle = new DutyCycle(body, [new(body.RunningTimeConstant, body.RatedLoss, Rated)]);
            Assert.Equal(0.6321205588, cycle.Over(TemperatureDelta.Zero)[0] / body.RatedRise, 1e-9);
        });

    [Fact]
    public void More_loss_more_time_and_less_speed_never_cool() =>
        Gen.Select(Bodies, Gen.Double[0, 3000], Gen.Double[0, 120], Gen.Double[0, 3000], Gen.Double[0, 100])
            .Sample((body, watts, minutes, rpm, start) =>
            {
                double After(double w, double n, double from) => new DutyCycle(body, [new(
                        Duration.FromMinutes(minutes + 0.01), Power.FromWatts(w), RotationalSpeed.FromRevolutionsPerMinute(n))])
                    .Over(TemperatureDelta.FromKelvins(from))[0].Kelvins;
                var here = After(watts, rpm, start);
                Assert.True(After(watts * 1.1 + 1, rpm, start) > here);
                Assert.True(After(watts, rpm, start + 1) >= here);
                Assert.True(After(watts, rpm * 0.9, start) >= here - 1e-9 * (1 + here));
            });

    [Fact]
    public void What_goes_in_is_stored_or_shed() => Gen.Select(Bodies, Gen.Double[0, 2000], Gen.Double[0.1, 200]).Sample((body, watts, minutes) =>
    {
        // Shed heat is the mean rise times the conductance; the mean follows from many short steps of an explicit solution.
        const int Steps = 20_000;
        var (rise, shed, dt) = (0.0, 0.0, minutes * 60 / Steps);
        var conductance = body.ConductanceWPerK(Rated);
        for (var step = 0; step < Steps; step++)
        {
            var middle = rise + dt / 2 * (watts - conductance * rise) / body.CapacityJPerK;
            shed += dt * conductance * middle;
            rise += dt * (watts - conductance * middle) / body.CapacityJPerK;
        }
        var exact = new DutyCycle(body, [new(Duration.FromMinutes(minutes), Power.FromWatts(watts), Rated)])
            .Over(TemperatureDelta.Zero)[0].Kelvins;
        Assert.Equal(exact, rise, 1e-4 * (1 + exact));
        Assert.Equal(watts * minutes * 60, shed + body.CapacityJPerK * exact, 1e-4 * (1 + watts * minutes * 60));
    }, iter: 30);

    [Fact]
    public void A_settled_duty_repeats_itself_and_many_cycles_from_cold_lead_there() =>
        Gen.Select(Bodies, Gen.Double[0.5, 10], Gen.Double[0, 10], Gen.Double[0, 500]).Sample((body, on, off, watts) =>
        {
            var cycle = new DutyCycle(body, [
                new(Duration.FromMinutes(on), Power.FromWatts(watts), Rated), DutyStage.Off(Duration.FromMinutes(off))]);
            var settled = cycle.Settled()!;
            Assert.Equal(settled[^1].Kelvins, cycle.Over(settled[^1])[^1].Kelvins, 1e-9 * (1 + settled[^1].Kelvins));
            var rise = TemperatureDelta.Zero;
            for (var i = 0; i < 5000; i++) rise = cycle.Over(rise)[^1];
            Assert.Equal(settled[^1].Kelvins, rise.Kelvins, 1e-6 * (1 + rise.Kelvins));
        }, iter: 30);

    [Fact]
    public void Where_each_kelvin_adds_more_than_is_shed_the_rise_has_no_end()
    {
        var body = new ThermalBody(Power.FromWatts(200), TemperatureDelta.FromKelvins(80), Duration.FromMinutes(15), 2.5, Rated);
        Assert.Null(new DutyCycle(body, [new(Duration.FromMinutes(5), Power.FromWatts(100), Rated, 2.6)]).Settled());
        Assert.NotNull(new DutyCycle(body, [new(Duration.FromMinutes(5), Power.FromWatts(100), Rated, 2.4)]).Settled());
    }

    [Fact]
    public void A_separate_fan_cools_a_stalled_motor_as_well_as_a_running_one()
    {
        var body = new ThermalBody(
            Power.FromWatts(200), TemperatureDelta.FromKelvins(80), Duration.FromMinutes(15), 2.5, Rated, Ventilation.Separate);
        Assert.Equal(body.ConductanceWPerK(Rated), body.ConductanceWPerK(RotationalSpeed.Zero));
    }

    [Theory]
    [InlineData(double.NaN, 80, 15, 2.5, "loss at rated load")]
    [InlineData(200, 5, 15, 2.5, "rise at rated load")]
    [InlineData(200, 80, 0, 2.5, "time constant")]
    [InlineData(200, 80, 15, 0.5, "standstill over running")]
    [InlineData(200, 80, double.PositiveInfinity, 2.5, "time constant")]
    public void A_wrong_value_is_named(double watts, double kelvins, double minutes, double ratio, string quantity)
    {
        var fault = Assert.ThrowsAny<ArgumentException>(() => new ThermalBody(
            Power.FromWatts(watts), TemperatureDelta.FromKelvins(kelvins), Duration.FromMinutes(minutes), ratio, Rated));
        if (fault is PartException part) Assert.Equal(quantity, part.Quantity);
    }
}

public class HeatStudyTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly HeatingData Sinusoidal = HeatingData.Usual(Handbook) with
    {
        WaveformLoss = Sided.Same(0.0),
        Coolant = Sided.Same(HeatingData.RatedCoolant),
        RatedRise = Sided.Same(TemperatureDelta.FromKelvins(80)),
    };

    [Fact]
    public void From_a_rated_sinusoidal_supply_in_rated_air_the_continuous_torque_is_the_rated_one()
    {
        // 400 V held, no drop, no waveform loss; the winding stands at 120 °C in both.
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5)) with { Heating = Sinusoidal };
        var motor = new HeatedMotor(press, Sinusoidal, Side.Hazard);
        var (torque, limit) = motor.Continuous(50, motor.AtRatedLoad);
        Assert.Equal("heat", limit);
        Assert.Equal(1, torque / press.Motor.RatedTorque.NewtonMeters, 1e-6);
    }

    [Fact]
    public void The_straight_line_of_loss_over_temperature_settles_where_the_whole_iteration_does()
    {
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var motor = new HeatedMotor(press, Sinusoidal, Side.Hazard);
        var torque = 0.8 * press.Motor.RatedTorque.NewtonMeters;
        var final = motor.Final(motor.Stage(50, torque, Duration.FromHours(1))!)!.Value;
        Assert.Equal(torque, motor.Continuous(50, final).TorqueNm, 0.02 * torque);
    }

    [Fact]
    public void Continuous_torque_never_passes_short_time_torque_and_falls_with_warmer_air() =>
        Presses.Random.Sample(press =>
        {
            var torques = TorqueStudy.Of(press);
            var study = HeatStudy.Of(press, torques, Handbook);
            foreach (var (at, torque) in study.Motor.Zip(torques.Motor))
            {
                Assert.True(at.Continuous.Capability <= torque.ShortTime);
                Assert.True(at.Continuous.Capability.NewtonMeters >= 0);
                Assert.True(at.Continuous.Capability.NewtonMeters <= torques.Bound.Motor.NewtonMeters);
            }
            var warm = new HeatedMotor(press, Sinusoidal with { Coolant = Sided.Same(Temperature.FromDegreesCelsius(50)) }, Side.Capability);
            var cool = new HeatedMotor(press, Sinusoidal with { Coolant = Sided.Same(Temperature.FromDegreesCelsius(10)) }, Side.Capability);
            var hertz = press.Inverter.LowestFrequency.Hertz;
            Assert.True(warm.Continuous(hertz, warm.Limit).TorqueNm <= cool.Continuous(hertz, cool.Limit).TorqueNm + 1e-9);
        }, iter: 8);

    [Fact]
    public void A_stalled_winding_heats_faster_alone_than_with_its_iron()
    {
        var study = Of(Presses.HandComputed(4, Duration.FromSeconds(1.5)));
        var stalled = study.Cases.Single(state => state.Name == "stalled at base frequency");
        Assert.True(stalled.WindingAlone!.Capability < stalled.TimeToLimit.Capability);
        Assert.True(stalled.TimeToLimit.Capability < Duration.FromMinutes(10));
    }

    [Fact]
    public void At_twice_base_frequency_every_row_that_may_run_for_ever_may_be_on_all_the_time()
    {
        var fast = Of(Presses.HandComputed(4, Duration.FromSeconds(1.5))).TwiceBase;
        Assert.Equal(100, fast.Frequency.Hertz, 1e-9);
        Assert.Contains(fast.Loads, load => load.DutyShare is not null);
        foreach (var load in fast.Loads.Where(load => load.DutyShare is not null))
            Assert.Equal(load.Case.TimeToLimit.Capability is null, load.DutyShare!.Capability >= 1);
        Assert.Contains("bound", fast.Words, StringComparison.Ordinal);
    }

    private static HeatStudy Of(Machines.DrillPress press) => HeatStudy.Of(press, TorqueStudy.Of(press), Handbook);
}
