using CsCheck;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Studies.Ratios;
using UnitsNet;

namespace Spindlewright.Tests.BeltDrives;

public sealed class BeltTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static readonly Gen<BeltLayout> Layouts =
        from small in Gen.Double[40, 200]
        from large in Gen.Double[40, 300]
        from gap in Gen.Double[5, 1500]
        select new BeltLayout(
            new(Length.FromMillimeters(small), Length.FromMillimeters(large)), Length.FromMillimeters((small + large) / 2 + gap));

    [Fact]
    public void The_wraps_of_an_open_belt_make_one_turn_and_its_length_finds_its_centres_again() => Layouts.Sample(layout =>
    {
        Assert.Equal(360, (layout.WrapOfSmaller + layout.WrapOfLarger).Degrees, 1e-9);
        Assert.Equal(
            layout.CentreDistance.Millimeters, BeltLayout.ForLength(layout.Pair, layout.DatumLength).CentreDistance.Millimeters, 1e-3);
    });

    [Fact] // Limiting case: equal pulleys.
    public void Equal_pulleys_have_half_a_turn_of_wrap_and_two_centres_and_one_circumference_of_belt()
    {
        var layout = new BeltLayout(new(Length.FromMillimeters(100), Length.FromMillimeters(100)), Length.FromMillimeters(400));
        Assert.Equal(180, layout.WrapOfSmaller.Degrees, 9);
        Assert.Equal(800 + 100 * Math.PI, layout.DatumLength.Millimeters, 9);
    }

    [Fact] // Limiting cases: no friction left, very much of it, and a belt that its own speed lifts off.
    public void A_belt_holds_nothing_without_friction_and_twice_its_tension_with_all_of_it()
    {
        var tension = Force.FromNewtons(100);
        Assert.Equal(0, BeltGrip.Pull(tension, Force.Zero, 1).Newtons);
        Assert.Equal(200, BeltGrip.Pull(tension, Force.Zero, 1e300).Newtons);
        Assert.Equal(0, BeltGrip.Pull(tension, Force.FromNewtons(120), 10).Newtons);
        Assert.Equal(0.11 * 400, BeltGrip.Centrifugal(LinearDensity.FromKilogramsPerMeter(0.11), Speed.FromMetersPerSecond(20)).Newtons, 9);
    }

    [Fact]
    public void The_slip_law_and_the_sum_of_the_strands_hold_for_the_pull() => Gen.Select(Gen.Double[0.3, 0.8], Gen.Double[1, 4]).Sample((friction, wrap) =>
    {
        var (tension, centrifugal) = (100.0, 5.0);
        var ratio = BeltGrip.TensionRatio(friction, Angle.FromRadians(wrap));
        var pull = BeltGrip.Pull(Force.FromNewtons(tension), Force.FromNewtons(centrifugal), ratio).Newtons;
        var (tight, slack) = (tension + pull / 2, tension - pull / 2);
        Assert.Equal(Math.Exp(friction * wrap), (tight - centrifugal) / (slack - centrifugal), 1e-6);
    });

    [Fact]
    public void The_looser_pair_of_an_intermediate_pulley_slips_first()
    {
        var belting = new Belting
        {
            Profile = Handbook.BeltProfiles["A"],
            CentreDistances = [Length.FromMillimeters(380), Length.FromMillimeters(260)],
            DeflectionForce = Force.FromNewtons(20),
            DeflectionOverSpan = 1.0 / 64,
            EffectiveFriction = new(0.4, 0.65),
            ReadingSpread = 0.1,
        };
        var position = BeltPosition.FromPulleys(
            "slow",
            [new(Length.FromMillimeters(60), Length.FromMillimeters(150)), new(Length.FromMillimeters(80), Length.FromMillimeters(140))],
            Sided.Same(0.9));
        var slip = belting.SlipAtSpindle(position, RotationalSpeed.FromRevolutionsPerMinute(915))!;
        // The second belt runs slower and carries more torque: it slips first.
        Assert.Equal(1, slip.Pair);
        Assert.True(slip.Least < slip.Most);
        Assert.Null(belting.SlipAtSpindle(new("by ratio", 3, Sided.Same(0.9)), RotationalSpeed.FromRevolutionsPerMinute(915)));
    }

    [Fact]
    public void Pulleys_that_would_touch_are_refused()
    {
        var error = Assert.Throws<PartException>(() => new BeltLayout(
            new(Length.FromMillimeters(200), Length.FromMillimeters(300)), Length.FromMillimeters(240)));
        Assert.Contains("do not touch", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_conversion_reaches_the_speeds_that_were_wanted()
    {
        var wish = Wish(60, 2400, 6);
        var design = ConversionDesign.Of(wish, Handbook);
        Assert.True(design.Covers, design.Words);
        Assert.True(design.Choices[0].Slowest.RevolutionsPerMinute <= 63);
        Assert.True(design.Choices[^1].Fastest.RevolutionsPerMinute >= 2280);
        Assert.All(design.Choices, choice => Assert.Contains(choice.Pair.Driving, Handbook.PulleyDiameters.Select(row => row.Diameter)));
    }

    [Fact]
    public void A_conversion_keeps_the_pulleys_that_are_there_and_says_what_to_turn()
    {
        var existing = Length.FromMillimeters(140);
        var design = ConversionDesign.Of(Wish(100, 1200, 4) with { ExistingDriven = [existing] }, Handbook);
        Assert.All(design.Choices, choice =>
        {
            Assert.Equal(existing, choice.Pair.Driven);
            Assert.True(choice.DrivenExists);
            if (choice.ToTurn is { } turned) Assert.Equal(choice.Exact, existing / turned, 9);
        });
    }

    [Fact]
    public void Impossible_wishes_are_refused()
    {
        Assert.Throws<PartException>(() => Wish(500, 100, 4));
        Assert.Throws<PartException>(() => Wish(50, 100, 5));
        Assert.Contains("up to 8", Assert.Throws<PartException>(() => ConversionDesign.Of(
            new ConversionWish(
                RotationalSpeed.FromRevolutionsPerMinute(1), RotationalSpeed.FromRevolutionsPerMinute(100_000), 4,
                Frequency.FromHertz(45), Frequency.FromHertz(50), [], Handbook.BeltProfiles["A"]), Handbook)).Message, StringComparison.Ordinal);
    }

    private static ConversionWish Wish(double slowest, double fastest, int poles) => new(
        RotationalSpeed.FromRevolutionsPerMinute(slowest), RotationalSpeed.FromRevolutionsPerMinute(fastest), poles,
        Frequency.FromHertz(7), Frequency.FromHertz(100), [], Handbook.BeltProfiles["A"]);
}
