using Spindlewright.Foundations;
using Spindlewright.Hands;
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

    [Fact]
    public void A_fast_belt_position_whose_locked_rotor_torque_falls_again_names_no_speed_and_shows_the_bound_above_the_hand()
    {
        var strong = Against(1.4, 20, Duration.FromSeconds(0.15));
        Assert.IsType<OverpoweringSpeed.NoSpeed>(strong.Answer);
        Assert.True(strong.BoundOverHand > 1);
    }

    [Fact]
    public void A_hand_that_is_passed_at_the_lowest_frequency_is_passed_already_at_standstill() =>
        Assert.IsType<OverpoweringSpeed.AlreadyAtStandstill>(Against(12, 0.5, Duration.FromSeconds(1.5)).Answer);

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
        var press = Presses.HandComputed(ratio, reaction);
        var hands = new HandStrength(
            Torque.FromNewtonMeters(handNm), Torque.Zero, "a stated hand", Provenance.OwnArithmetic, "");
        return OverpoweringStudy.Of(press, TorqueStudy.Of(press), hands);
    }
}
