using Spindlewright.Foundations;
using Spindlewright.Studies.Speeds;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Laws;

public class SlipCompensationTests
{
    private static readonly Machines.DrillPress Press = Presses.HandComputed(4, Duration.FromSeconds(1.5));

    [Fact]
    public void At_rated_torque_and_base_frequency_the_rated_slip_comes_back_as_speed()
    {
        var rated = SlipCompensation.Of(Press, Frequency.FromHertz(50), Press.Motor.RatedTorque, 1);
        // Rated slip of this motor: 1000 - 930 r/min, that is 3.5 Hz.
        Assert.Equal(53.5, rated.Output.Hertz, 1e-6);
        var gained = rated.With!.Value.RevolutionsPerMinute - rated.Without!.Value.RevolutionsPerMinute;
        Assert.InRange(gained, 50, 75); // 3.5 Hz are 70 r/min; weaker flux above base takes a little back
    }

    [Fact]
    public void Unloaded_or_switched_off_it_changes_nothing_and_the_bound_never_moves()
    {
        var off = SlipCompensation.Of(Press, Frequency.FromHertz(20), Press.Motor.RatedTorque * 0.3, 0);
        var unloaded = SlipCompensation.Of(Press, Frequency.FromHertz(20), Torque.Zero, 1);
        var on = SlipCompensation.Of(Press, Frequency.FromHertz(20), Press.Motor.RatedTorque * 0.3, 1);
        Assert.Equal(off.Without, off.With);
        Assert.Equal(20, unloaded.Output.Hertz, 1e-12);
        Assert.Equal(off.Bound, on.Bound);
        Assert.True(on.With > on.Without && on.PullOutWith <= on.Bound);
    }

    [Fact]
    public void The_highest_frequency_is_never_passed_and_a_wrong_share_is_named()
    {
        Assert.Equal(100, SlipCompensation.Of(Press, Frequency.FromHertz(99), Press.Motor.RatedTorque, 1.5).Output.Hertz, 1e-9);
        Assert.Equal(
            "share of the rated slip",
            Assert.Throws<PartException>(() => SlipCompensation.Of(Press, Frequency.FromHertz(20), Torque.Zero, 2)).Quantity);
    }
}
