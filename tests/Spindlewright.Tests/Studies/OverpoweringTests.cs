using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Machines;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Tests.Studies;

public class OverpoweringTests
{
    [Fact]
    public void A_crossing_where_the_spindle_turns_less_than_once_in_the_reaction_time_is_named()
    {
        // At 0.5 s one turn passes at 120 r/min; the hand-computed curve passes 20 N·m between 65 and 82 r/min.
        var strong = Against(1000.0 / 245, 20, Duration.FromSeconds(0.5));
        var speed = Assert.IsType<OverpoweringSpeed.At>(strong.Answer).Speed.RevolutionsPerMinute;
        Assert.InRange(speed, 65, 82);
    }

    [Fact]
    public void A_crossing_where_the_spindle_turns_more_than_once_in_the_longest_reaction_time_is_not_named()
    {
        var strong = Against(1000.0 / 245, 20, Duration.FromSeconds(1.5));
        Assert.IsType<OverpoweringSpeed.NoSpeed>(strong.Answer);
        Assert.StartsWith("no speed of this belt position", strong.Answer.Words, StringComparison.Ordinal);
        Assert.InRange(strong.Crossing.Hazard!.Value.RevolutionsPerMinute, 65, 82);
    }

    /// <summary>
    /// Ratio 1.4 on a six-pole motor: 14.25 r/min a hertz. At the reaction of 1.5 s the words are those of one turn; with a reaction so
    /// short that this cannot decide, locked-rotor torque that falls again does.
    /// </summary>
    [Theory]
    [InlineData(1.5)]
    [InlineData(0.15)]
    [InlineData(0.5)]
    public void A_fast_belt_position_whose_locked_rotor_torque_falls_again_names_no_speed_and_shows_the_bound_above_the_hand(double reactionS)
    {
        var strong = Against(1.4, 20, Duration.FromSeconds(reactionS));
        Assert.IsType<OverpoweringSpeed.NoSpeed>(strong.Answer);
        Assert.StartsWith("no speed of this belt position", strong.Answer.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("any speed", strong.Answer.Words, StringComparison.OrdinalIgnoreCase);
        Assert.True(strong.BoundOverHand > 1);
    }

    [Fact]
    public void On_the_fast_belt_position_locked_rotor_torque_rises_and_falls_again_with_frequency()
    {
        var drive = new Drive(Presses.HandComputed(1.4, Duration.FromSeconds(1.5)), Side.Hazard);
        double[] torques = [.. new[] { 5.0, 20, 35, 50, 65, 80, 100 }.Select(hertz => drive.LockedRotorNm(hertz) * 1.4)];
        var top = Array.IndexOf(torques, torques.Max());
        Assert.InRange(top, 1, torques.Length - 2);
        Assert.All(Enumerable.Range(1, torques.Length - 1), place => Assert.Equal(place <= top, torques[place] > torques[place - 1]));
        Assert.True(torques.Max() < 20, "the hand of 20 N·m is never passed at standstill, and yet the bound passes it");
    }

    /// <summary>2.30 N·m at the motor stand on the second rise, and at 159 r/min the spindle turns less than once in 0.3 s.</summary>
    [Fact]
    public void A_locked_rotor_torque_that_falls_and_rises_again_has_fallen()
    {
        var press = Presses.TwiceRising(Duration.FromSeconds(0.3));
        var drive = new Drive(press, Side.Hazard);
        double[] torques = [.. new[] { 11, 22.75, 27.5, 31, 34.0, 40 }.Select(drive.LockedRotorNm)];
        Assert.Equal([1, -1, 1, 1, -1], torques.Zip(torques.Skip(1)).Select(pair => Math.Sign(pair.Second - pair.First)));
        var strong = Of(press, 2.30 * 12).Belts[0].Hands[1];
        Assert.InRange(strong.Crossing.Hazard!.Value.RevolutionsPerMinute, 27.5 * 5, 34 * 5);
        Assert.Contains("falls", Assert.IsType<OverpoweringSpeed.NoSpeed>(strong.Answer).Words, StringComparison.Ordinal);
        Assert.IsType<OverpoweringSpeed.At>(Of(press, 1.8 * 12).Belts[0].Hands[1].Answer);
    }

    [Fact]
    public void A_hand_that_is_passed_at_the_lowest_frequency_is_passed_already_at_standstill() =>
        Assert.IsType<OverpoweringSpeed.AlreadyAtStandstill>(Against(12, 0.5, Duration.FromSeconds(1.5)).Answer);

    [Fact]
    public void A_speed_is_named_only_up_to_base_only_where_torque_rises_and_only_below_one_turn_in_the_reaction_time()
    {
        var count = 0;
        Gen.Select(Presses.Random, Gen.Double[0.5, 40], Gen.Double[0.15, 3]).Sample((press, handNm, reactionS) =>
        {
            var here = new DrillPress(press.Title, press.Supply, press.Inverter, press.Motor, press.Belts, press.Spindle)
            {
                Person = new Person(5, 95, Duration.FromSeconds(reactionS)),
            };
            foreach (var hand in Of(here, handNm).Belts[0].Hands)
            {
                if (hand.Answer is not OverpoweringSpeed.At named) continue;
                Interlocked.Increment(ref count);
                Assert.True(named.Speed.RevolutionsPerMinute * reactionS < 60 * (1 + 1e-9));
                var hertz = named.Speed.RevolutionsPerMinute * here.Belts[0].Ratio * here.Motor.Circuit.Hazard.Poles / 120;
                Assert.True(hertz <= here.Inverter.Curve.BaseFrequency.Hertz * (1 + 1e-9));
                var drive = new Drive(here, Side.Hazard);
                var lowest = here.Inverter.LowestFrequency.Hertz;
                Assert.All(Enumerable.Range(0, 50).Select(step => lowest + (hertz - lowest) * step / 50).Append(hertz * 0.999), before =>
                    Assert.True(
                        drive.LockedRotorNm(before) <= drive.LockedRotorNm(hertz) * (1 + 1e-9),
                        $"locked-rotor torque rises up to {hertz} Hz, also from {before} Hz"));
                Assert.True(hand.BoundOverHand >= 1 - 1e-9, "what the model passes the bound has passed");
            }
        }, iter: 150);
        Assert.True(count > 5, $"a speed was named {count} times");
    }

    [Fact]
    public void Weak_and_strong_hand_stand_in_the_same_row_with_the_bound()
    {
        var row = Study(1000.0 / 245, 7, Duration.FromSeconds(1.5)).Belts[0];
        Assert.Equal(["weak hand", "strong hand"], row.Hands.Select(hand => hand.Hand.Name));
        Assert.Equal(95.3, row.Bound.NewtonMeters, 0.05);
        Assert.Equal(2 * row.Bound.NewtonMeters / 0.05, row.BoundForce.Newtons, 1e-6);
    }

    private static HandAgainstBelt Against(double ratio, double handNm, Duration reaction) =>
        Study(ratio, handNm, reaction).Belts[0].Hands[1];

    private static OverpoweringStudy Study(double ratio, double handNm, Duration reaction)
    {
        return Of(Presses.HandComputed(ratio, reaction), handNm);
    }

    private static OverpoweringStudy Of(DrillPress press, double handNm)
    {
        var hands = new HandStrength(
            Torque.FromNewtonMeters(handNm), Torque.Zero, "a stated hand", Provenance.OwnArithmetic, "");
        return OverpoweringStudy.Of(press, TorqueStudy.Of(press), hands);
    }
}
