using CsCheck;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Hazards;
using Spindlewright.Machines;
using Spindlewright.Studies;
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

    private static IEnumerable<StudyResults> Demo => Presses.Demo.Select(press => StudyResults.Of(press, Tables));

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
    public void The_sheet_gives_the_least_arm_at_which_the_weaker_of_scale_and_arm_bears_the_bound()
    {
        // 95.3 N·m on 500 N: 190.6 mm; with the belt off 95.3·245/1000 = 23.35 N·m: 46.7 mm (own arithmetic).
        var press = Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        var rows = Of(With(press, press.Belts, ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with
        {
            StallTest = new(null, Force.FromNewtons(800), Force.FromNewtons(500)),
        })).StallTest.Rows;
        Assert.Equal([46.7, 190.6], rows.Select(row => row.LeastArm!.Value.Millimeters), (a, b) => Math.Abs(a - b) < 0.1);
        Assert.All(rows, row => Assert.NotEmpty(row.Refusal));
        Assert.All(Of(press).StallTest.Rows, row => Assert.Null(row.LeastArm));
    }

    [Fact]
    public void The_speed_at_which_a_figure_is_first_exceeded_is_the_speed_that_gives_that_figure()
    {
        // 15 m/min on a chuck of 50 mm: 95.49 r/min (own arithmetic).
        var wound = Of(Presses.HandComputed(4, Duration.FromSeconds(1.5))).Mechanisms.Mechanisms[0];
        Assert.Equal(95.49, wound.Comparisons.Single(each => each.Published.Key == "setting-speed").FirstExceeded!.Value.RevolutionsPerMinute, 0.01);
        Presses.Random.Sample(press =>
        {
            var study = Of(With(press, press.Belts, ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with { StopTime = Duration.FromSeconds(1) }));
            foreach (var comparison in study.Mechanisms.Mechanisms.SelectMany(each => each.Comparisons))
            {
                Assert.Equal(comparison.Ratio > 1, comparison.FirstExceeded is not null);
                if (comparison.ModelledFirstExceeded is { } modelled) Assert.True(modelled >= comparison.FirstExceeded!.Value / Rounding, comparison.Computed);
            }
            // E = J·ω²/2 turned round, a second way to the speed at which the energy of the drive train exceeds its figure.
            var energy = study.Mechanisms.Mechanisms[5].Comparisons.Single(each => each.Published.Key == "guard-energy");
            var expected = Math.Sqrt(2 * energy.Figure / study.Forces.Belts[0].Inertia.KilogramSquareMeters);
            if (energy.FirstExceeded is { } first) Assert.Equal(1, first.RadiansPerSecond / expected, 1e-6);
        }, iter: 20);
    }

    [Fact]
    public void A_hand_held_fast_whose_force_from_rest_exceeds_a_figure_meets_it_from_standstill_on()
    {
        // Bound 95.3 N·m: 2·95.3/0.05 = 3.8 kN at the chuck, twice that from rest, far above any figure.
        var caught = Of(Presses.HandComputed(1000.0 / 245, Duration.FromSeconds(1.5))).Mechanisms.Mechanisms[2];
        Assert.All(caught.Comparisons, each => Assert.Equal(RotationalSpeed.Zero, each.FirstExceeded));
    }

    [Fact]
    public void Every_tool_is_held_against_the_largest_bound_that_it_may_meet_at_its_speed()
    {
        foreach (var results in Demo)
        {
            var tools = results.Contact.Tools;
            Assert.Equal(results.Work.Items.Count, tools.Count);
            Assert.Equal(tools.OrderByDescending(tool => tool.Item.Diameter).Select(tool => tool.Item.Name), tools.Select(tool => tool.Item.Name));
            foreach (var tool in tools)
            {
                Assert.Contains(results.Torques.Spindle, spindle => spindle.Belt == tool.Belt && spindle.Bound.Equals(tool.Bound, Torque.FromNewtonMeters(1e-9)));
                if (results.Work.Items.Single(item => item.Item == tool.Item).Best is { } best) Assert.True(tool.Bound >= best.Bound);
                Assert.True(tool.Bound > tool.Cutting, tool.Item.Name);
                // Moments about the axis balance: a second way to pin and clamps.
                Assert.Equal(tool.Bound.NewtonMeters, HeldTool.PinBears.Newtons * tool.PinDistance.Meters, 1e-9);
                Assert.Equal(tool.Bound.NewtonMeters, tool.Pin.Newtons * tool.Distance.Meters, 1e-9);
                Assert.True(tool.Clamps > tool.Pin);
            }
        }
    }

    [Fact]
    public void A_cutter_that_is_fitted_at_times_limits_the_machine_only_while_it_is_fitted()
    {
        var press = Presses.HandComputed(2, Duration.FromSeconds(1.5));
        SpeedLimit[] limits =
        [
            new("pulley", RotationalSpeed.FromRevolutionsPerMinute(1800), true), new("seat cutter", RotationalSpeed.FromRevolutionsPerMinute(400), false, AtTimes: true),
            new("wire brush", RotationalSpeed.FromRevolutionsPerMinute(4000), false, AtTimes: true),
        ];
        var study = Of(With(press, [new("fast", 1, Sided.Same(1.0))], ContactInputs.Usual(press.Motor.RatedPower, press.Motor.Circuit.Hazard.Poles) with { SpeedLimits = limits }));
        // Six poles: 20 r/min of the motor for each hertz.
        Assert.Equal(["", "seat cutter", "wire brush"], study.Design.Permitted.Select(each => each.Fitted));
        Assert.Equal([90.0, 20.0, 90.0], study.Design.Permitted.Select(each => each.Frequency!.Value.Hertz), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(["pulley", "seat cutter", "pulley"], study.Design.Permitted.Select(each => each.SetBy));
        Assert.Equal(3, study.Mechanisms.Mechanisms[3].Comparisons.Count);
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
        Assert.All(wound.Take(4), each => Assert.True(each.StopKnown));
        Assert.All(Of(Presses.HandComputed(4, Duration.FromSeconds(1.5))).Design.Wound, each => Assert.False(each.StopKnown));
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

    private static ContactStudy Of(DrillPress press) => ContactStudy.Of(press, TorqueStudy.Of(press), new([]), Tables);

    private static DrillPress With(DrillPress press, IReadOnlyList<BeltPosition> belts, ContactInputs? contact) =>
        new(press.Title, press.Supply, press.Inverter, press.Motor, belts, press.Spindle) { Person = press.Person, Contact = contact };
}
