using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Motors;
using Spindlewright.Studies.Changes;
using Spindlewright.Studies.Torques;
using Spindlewright.Studies.Uncertainty;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Uncertainty;

/// <summary>One setting or part changed at a time, over random machines and the demo machines.</summary>
public sealed class ChangesStudyTests
{
    private const double Rounding = 1 + 1e-9;
    private static readonly HandStrength Strength = HandStrength.OfHandbook(Handbook.FromEmbedded());

    [Fact]
    public void Settings_leave_or_raise_the_bound_and_parts_change_it_in_proportion() =>
        Presses.Random.Sample(press =>
        {
            var machines = Of(press);
            var described = machines[0].Bound;
            foreach (var each in machines.Where(each => each.What is "drop of dead time and devices" or "slip compensation"))
                Assert.Equal(described, each.Bound);
            var boosts = machines.Where(each => each.What == "boost").Select(each => each.Bound.NewtonMeters).ToList();
            Assert.All(boosts.Zip(boosts.Skip(1)), pair => Assert.True(pair.Second >= pair.First / Rounding));
            var poles = press.Motor.Circuit.Hazard.Poles;
            foreach (var each in machines.Where(each => each.What == "poles"))
                Assert.Equal(double.Parse(each.Change, System.Globalization.CultureInfo.InvariantCulture) / poles, each.Bound / described, 1e-6);
            var sizes = machines.Where(each => each.What == "motor size").Select(each => each.Bound / described).ToList();
            Assert.Equal([2.0 / 3, 1.5], sizes, (a, b) => Math.Abs(a - b) < 1e-6);
        }, iter: 10);

    [Fact]
    public void A_drop_puts_the_crossing_up_and_boost_size_and_slip_compensation_put_it_down_in_every_machine_drawn() =>
        Presses.Random.Sample(press =>
        {
            var machines = Of(press);
            double[] Crossings(string what) => [.. machines.Where(each => each.What == what).Select(each => each.Hands[^1].Crossing.Median)];
            Rising(Crossings("drop of dead time and devices"));
            Rising([.. Crossings("boost").Reverse()]);
            Rising([.. Crossings("motor size").Reverse()]);
            Assert.True(Crossings("slip compensation")[0] <= machines[0].Hands[^1].Crossing.Median * Rounding);
            foreach (var each in machines) Assert.True(each.Hands[0].Crossing.Median <= each.Hands[^1].Crossing.Median * Rounding);

            static void Rising(double[] speeds) => Assert.All(speeds.Zip(speeds.Skip(1)), pair => Assert.True(pair.First <= pair.Second * (1 + 1e-3)));
        }, iter: 10);

    [Fact]
    public void Slip_compensation_sets_the_crossing_back_by_the_rated_slip_times_the_load()
    {
        // Hand-computed machine, known exactly: rated slip 3.5 Hz at 550 W and 930 r/min, 5.647 N·m. A hand of 20 N·m on a ratio of
        // 1000/245 asks 4.9 N·m of the motor: 3.5·4.9/5.647 = 3.037 Hz, at 20·245/1000 = 4.9 r/min a hertz 14.88 r/min (own arithmetic).
        var press = Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        var hand = new HandStrength(Torque.FromNewtonMeters(20), Torque.Zero, "stated", Provenance.OwnChoice, "");
        var machines = ChangesStudy.Of(press, hand, 1, TestContext.Current.CancellationToken).Machines;
        double At(string what) => machines.Single(each => each.What == what).Hands[^1].Crossing.Middle.Least;
        var slow = machines.Single(each => each.What == "nothing").Hands[^1].Crossing;
        Assert.Equal(14.88, slow.Middle.Least - At("slip compensation"), 0.05);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Both_hands_are_overpowered_no_more_often_than_one_and_no_chance_falls_with_speed(int demo)
    {
        var press = Presses.Demo[demo];
        var study = UncertaintyStudy.Of(press, TorqueStudy.Of(press), Strength, 5, cancellation: TestContext.Current.CancellationToken);
        foreach (var belt in study.Belts)
        {
            Assert.All(belt.Chances, at => Assert.True(at.BothHands.Estimate <= at.Chance.Estimate));
            Assert.All(belt.Chances, at => Assert.True(at.BothHands.Doubt.Contains(at.BothHands.Estimate)));
            Assert.Equal(belt.Chances.Select(at => at.BothHands.Estimate).Order(), belt.Chances.Select(at => at.BothHands.Estimate));
        }
        Assert.Contains(study.Belts.SelectMany(belt => belt.Chances), at => at.BothHands.Estimate < at.Chance.Estimate);
    }

    /// <summary>Both hands at twice one are one hand of a sample twice as strong: a second way to the same chance.</summary>
    [Fact]
    public void The_chance_of_both_hands_is_that_of_one_hand_of_people_twice_as_strong()
    {
        var press = Presses.Demo[0];
        UncertaintyStudy Study(HandStrength hands) => UncertaintyStudy.Of(press, TorqueStudy.Of(press), hands, 5, cancellation: TestContext.Current.CancellationToken);
        var twice = Study(new(Strength.Mean * 2, Strength.StandardDeviation * 2, Strength.Sample, Strength.Provenance, Strength.Source));
        foreach (var (one, two) in Study(Strength).Belts.Zip(twice.Belts))
            Assert.Equal(two.Chances.Select(at => at.Chance.Estimate), one.Chances.Select(at => at.BothHands.Estimate), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void Another_size_draws_current_and_gives_torque_in_proportion_and_other_poles_turn_slower_with_more_torque()
    {
        var circuit = Presses.HandComputed(4, Duration.FromSeconds(1.5)).Motor.Circuit.Hazard with
        {
            Rotational = new(Power.FromWatts(20), RotationalSpeed.FromRevolutionsPerMinute(1000), 2),
        };
        var volts = ElectricPotential.FromVolts(400 / Math.Sqrt(3));
        OperatingPoint At(EquivalentCircuit of) => CircuitSolver.Solve(of, Frequency.FromHertz(50), volts, 0.07);
        var (one, larger, slower) = (At(circuit), At(circuit.OfPower(1.5)), At(circuit.WithPoles(8)));
        Assert.Equal(1.5, larger.Current / one.Current, 1e-9);
        Assert.Equal(1.5, (double)(larger.Shaft.Watts / one.Shaft.Watts), 1e-9);
        Assert.Equal(0.75, slower.Speed / one.Speed, 1e-9);
        Assert.Equal(1, (double)(slower.Shaft.Watts / one.Shaft.Watts), 1e-9);
        Assert.Throws<PartException>(() => circuit.WithPoles(0));
        Assert.Throws<PartException>(() => circuit.OfPower(0));
    }

    private static IReadOnlyList<ChangedMachine> Of(DrillPress press) =>
        ChangesStudy.Of(press with { Uncertainty = new(press.Uncertainty.Spreads, 200) }, Strength, 3, TestContext.Current.CancellationToken).Machines;
}
