using CsCheck;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies.Contact;
using Spindlewright.Studies.Torques;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Contact;

/// <summary>Comparisons, numbers to design by, the sheet: over random machines and the demo machines.</summary>
public class ContactStudyTests
{
    private const double Rounding = 1 + 1e-9;
    private static readonly Handbook Tables = Handbook.FromEmbedded();

    [Fact]
    public void The_bound_stands_above_every_other_torque_and_force_of_its_row() =>
        Presses.Random.Sample(press =>
        {
            foreach (var point in Of(press).Forces.Belts.SelectMany(belt => belt.Points).Where((_, index) => index % 25 == 0))
            {
                AtLeast(point.Torque.Map(torque => torque.NewtonMeters));
                foreach (var surface in point.Surfaces)
                    foreach (var forces in new[] { surface.Steady, surface.FromRest, surface.FreeHand, surface.HeldFast })
                        AtLeast(forces.Map(force => force.Newtons));
            }

            static void AtLeast(SideBySide<double> each)
            {
                Assert.True(each.IdealBoost <= each.Bound * Rounding && each.AsModelled <= each.Bound * Rounding);
                Assert.True(each.CurrentLimited <= each.AsModelled * Rounding);
            }
        }, iter: 30);

    [Fact]
    public void A_measured_slip_torque_leaves_every_bound_and_every_other_position_as_they_are() =>
        Gen.Select(Presses.Random, Gen.Double[0.5, 20]).Sample((press, slipNm) =>
        {
            BeltPosition[] belts = [.. press.Belts, new("other", 2, Sided.Same(0.9))];
            var plain = Of(With(press, belts, null));
            var measured = Of(With(press, [belts[0].With(Torque.FromNewtonMeters(slipNm)), belts[1]], null));
            foreach (var (a, b) in plain.Forces.Belts.Zip(measured.Forces.Belts))
            {
                Assert.Equal(a.Bound, b.Bound);
                Assert.Equal(a.Points.Select(point => point.Torque), b.Points.Select(point => point.Torque));
            }
            Assert.Null(measured.Forces.Belts[1].Belt.MeasuredSlip);
        }, iter: 10);

    [Fact]
    public void The_largest_ratio_does_not_depend_on_the_order_of_the_comparisons() =>
        Gen.Select(Presses.Random, Gen.Int[0, 1000]).Sample((press, seed) =>
        {
            foreach (var mechanism in Of(press).Mechanisms.Mechanisms)
            {
                var turned = mechanism with { Comparisons = [.. mechanism.Comparisons.OrderBy(each => (each.Published.Key.Length * 31 + seed) % 7).Reverse()] };
                Assert.Equal(mechanism.Largest, turned.Largest);
            }
        }, iter: 10);

    [Theory]
    [InlineData(2, "loose work")]
    [InlineData(4, "speed limit")]
    [InlineData(6, "stop time")]
    public void An_input_that_is_missing_leaves_its_mechanism_not_determined(int place, string missing)
    {
        var mechanism = Of(Presses.HandComputed(4, Duration.FromSeconds(1.5))).Mechanisms.Mechanisms.Single(each => each.Place == place);
        Assert.True(mechanism.IsNotDetermined);
        Assert.Null(mechanism.Largest);
        Assert.Contains(mechanism.NotDetermined, words => words.Contains(missing, StringComparison.Ordinal));
    }

    [Fact]
    public void Removing_any_inputs_leaves_their_mechanisms_not_determined_and_all_others_as_they_were() =>
        Gen.Select(Presses.Random, Gen.Bool, Gen.Bool, Gen.Bool).Sample((press, plate, limits, stop) =>
        {
            Length Mm(double mm) => Length.FromMillimeters(mm);
            var all = ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with
            {
                Plate = new(Mm(200), Mm(50), Mm(6), Mm(20), 7850),
                SpeedLimits = [new("hole saw", RotationalSpeed.FromRevolutionsPerMinute(500), false)],
                StopTime = Duration.FromSeconds(2),
            };
            var whole = Of(With(press, press.Belts, all)).Mechanisms.Mechanisms;
            var less = Of(With(press, press.Belts, all with
            {
                Plate = plate ? all.Plate : null, SpeedLimits = limits ? all.SpeedLimits : [], StopTime = stop ? all.StopTime : null,
            })).Mechanisms;
            int[] gone = [.. new[] { (plate, 2), (limits, 4), (stop, 6) }.Where(each => !each.Item1).Select(each => each.Item2), 7];
            foreach (var (before, after) in whole.Zip(less.Mechanisms))
            {
                Assert.Equal(gone.Contains(after.Place), after.IsNotDetermined);
                if (gone.Contains(after.Place)) Assert.Contains(less.NotDetermined, missing => missing.Mechanism == after.Name);
                else Assert.Equal(before.Comparisons.Select(each => each.Ratio), after.Comparisons.Select(each => each.Ratio));
            }
        }, iter: 15);

    [Fact]
    public void With_its_input_the_mechanism_is_compared()
    {
        Length Mm(double mm) => Length.FromMillimeters(mm);
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var given = Of(With(press, press.Belts, ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with
        {
            Plate = new(Mm(200), Mm(50), Mm(6), Mm(20), 7850),
            StopTime = Duration.FromSeconds(12),
        }));
        Assert.Equal([1, 2, 3, 5, 6], given.Mechanisms.Mechanisms.Where(each => !each.IsNotDetermined).Select(each => each.Place));
        var down = given.Mechanisms.Mechanisms[5].Comparisons.Single(each => each.Published.Key == "run-down");
        Assert.Equal(1.2, down.Ratio, 1e-9); // 12 s over the 10 s of woodworking machines
        Assert.StartsWith("exceeds", down.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_published_figure_carries_source_and_provenance_and_says_what_it_measures()
    {
        foreach (var comparison in Presses.Demo.SelectMany(press => Of(press).Mechanisms.Mechanisms).SelectMany(each => each.Comparisons))
        {
            if (comparison.Published.Citation.Provenance != Provenance.Yours) Assert.NotNull(Tables.References[comparison.Published.Citation.Source]);
            Assert.NotEmpty(comparison.Published.Measures);
            Assert.True(double.IsFinite(comparison.Ratio) && comparison.Ratio > 0);
            if (comparison.ModelledRatio is { } modelled) Assert.True(modelled <= comparison.Ratio * Rounding, comparison.Computed);
        }
    }

    [Fact]
    public void By_belt_the_bound_goes_with_the_ratio_and_energy_with_the_motor_behind_it()
    {
        foreach (var speed in Presses.Demo.SelectMany(press => Of(press).TwoWays.Speeds))
        {
            var first = speed.Ways[0];
            foreach (var way in speed.Ways.Skip(1))
            {
                Assert.Equal(way.Belt.Ratio / first.Belt.Ratio, way.Torque.Bound / first.Torque.Bound, 1e-9);
                Assert.Equal(first.WoundOn, way.WoundOn);
                Assert.True(way.Energy <= first.Energy); // a higher ratio puts a faster motor behind the same spindle speed
            }
        }
    }

    [Fact]
    public void The_sheet_refuses_an_arm_or_a_scale_that_is_missing_or_too_small_for_the_bound()
    {
        // Hand-computed machine: bound 95.3 N·m at the spindle (own arithmetic), 953 N on an arm of 100 mm.
        var press = Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        string Refusal(double? armMm, double? scaleN, double? bearsN) => Of(With(press, press.Belts, ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with
        {
            StallTest = new(
                armMm is { } mm ? Length.FromMillimeters(mm) : null, scaleN is { } n ? Force.FromNewtons(n) : null,
                bearsN is { } b ? Force.FromNewtons(b) : null),
        })).StallTest.Rows[1].Refusal;
        Assert.Contains("length of the arm", Refusal(null, 2000, 2000), StringComparison.Ordinal);
        Assert.Contains("range of the scale", Refusal(100, null, 2000), StringComparison.Ordinal);
        Assert.Contains("953 N on a scale of 900 N", Refusal(100, 900, 2000), StringComparison.Ordinal);
        Assert.Contains("953 N on an arm that bears 900 N", Refusal(100, 2000, 900), StringComparison.Ordinal);
        Assert.Equal("", Refusal(100, 1000, 1000));
    }

    [Fact]
    public void The_permitted_frequency_follows_the_tightest_limit_of_each_position()
    {
        var press = Presses.HandComputed(2, Duration.FromSeconds(1.5));
        SpeedLimit[] limits = [new("motor bearings", RotationalSpeed.FromRevolutionsPerMinute(1800), true), new("hole saw", RotationalSpeed.FromRevolutionsPerMinute(500), false)];
        var permitted = Of(With(press, [new("slow", 4, Sided.Same(1.0)), new("fast", 1, Sided.Same(1.0))], ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with { SpeedLimits = limits })).Design.Permitted;
        // Six poles: 20 r/min of the motor for each hertz. 500 × 4 = 2000 is above 1800; 500 × 1 is below.
        Assert.Equal([90.0, 25.0], permitted.Select(each => each.Frequency!.Value.Hertz), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(["motor bearings", "hole saw"], permitted.Select(each => each.SetBy));
    }

    [Fact]
    public void A_stop_that_is_not_reached_has_no_end_and_stands_beside_the_four_reactions()
    {
        var wound = Of(Presses.Demo[0]).Design.Wound.Where(each => each.Belt.Name == Presses.Demo[0].Belts[0].Name).ToList();
        Assert.Equal(["fast", "slow", "foot", "startled", "stop not reached"], wound.Select(each => each.Reaction));
        Assert.Null(wound[^1].Time);
        Assert.Equal(wound.Take(4).OrderBy(each => each.Wound.Turns), wound.Take(4));
    }

    [Fact]
    public void A_control_that_is_not_answered_comes_first_and_nothing_is_assumed()
    {
        Assert.All(ControlQuestion.Of(Presses.HandComputed(4, Duration.FromSeconds(1.5)), Tables.References), question => Assert.Equal("not answered", question.Words));
        var press = Presses.HandComputed(4, Duration.FromSeconds(1.5));
        var some = ControlQuestion.Of(With(press, press.Belts, ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with
        {
            Controls = new Dictionary<string, bool> { ["chuck_guard"] = true, ["no_restart"] = false },
        }), Tables.References);
        Assert.Equal(["yes", "no"], some.TakeLast(2).Select(question => question.Words));
        Assert.Equal(7, some.TakeWhile(question => question.Answer is null).Count());
    }

    private static ContactStudy Of(DrillPress press) => ContactStudy.Of(press, TorqueStudy.Of(press), Tables);

    private static DrillPress With(DrillPress press, IReadOnlyList<BeltPosition> belts, ContactInputs? contact) =>
        new(press.Title, press.Supply, press.Inverter, press.Motor, belts, press.Spindle) { Person = press.Person, Contact = contact };
}
