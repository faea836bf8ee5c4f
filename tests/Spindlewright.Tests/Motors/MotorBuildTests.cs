using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

/// <summary>Usual frame, shaft, mass and inertia of a rating.</summary>
public sealed class MotorBuildTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();

    private static MotorBuild Of(double kilowatts, int poles) => MotorBuild.Of(Power.FromKilowatts(kilowatts), poles, Handbook);

    /// <summary>Frames and shafts that the trade knows by heart (IEC 60072-1 and the custom that goes with it; from memory).</summary>
    [Theory]
    [InlineData(0.75, 4, 80, 19)]
    [InlineData(1.5, 4, 90, 24)]
    [InlineData(2.2, 4, 100, 28)]
    [InlineData(0.37, 4, 71, 14)]
    [InlineData(0.18, 4, 63, 11)]
    [InlineData(0.12, 2, 56, 9)]
    [InlineData(2.2, 2, 90, 24)]
    [InlineData(0.55, 6, 80, 19)]
    [InlineData(0.75, 6, 90, 24)]
    [InlineData(2.2, 6, 112, 28)] // 100 and 112 have one shaft
    [InlineData(1.5, 8, 112, 28)]
    [InlineData(2.2, 8, 132, 38)]
    // F. Parasiliti, M. Villani, New induction motor designs with aluminum and copper rotor, University of L'Aquila 2012, Table I: published.
    [InlineData(1.5, 6, 100, 28)]
    [InlineData(3, 4, 100, 28)]
    public void Frames_and_shafts_are_those_of_the_trade(double kilowatts, int poles, double frameMm, double shaftMm)
    {
        var build = Of(kilowatts, poles);
        Assert.Equal((frameMm, shaftMm), ((double)build.Frame.Millimeters, (double)build.Shaft.Millimeters));
    }

    [Fact]
    public void Every_power_that_is_tried_has_a_build_with_every_number_of_poles()
    {
        var wishes = SizingWishes.Usual(Handbook);
        Assert.All(wishes.Poles, poles =>
        {
            var builds = wishes.Powers.Select(power => MotorBuild.Of(power, poles, Handbook)).ToList();
            Assert.All(builds, build => Assert.True(build.Mass.Capability < build.Mass.Hazard && build.Inertia.Capability < build.Inertia.Hazard));
            Assert.All(builds, build => Assert.Equal(4, build.Citations.Count(citation => citation.Source.Length > 0)));
            Assert.All(builds.Zip(builds.Skip(1)), pair => Assert.True(
                pair.First.Frame <= pair.Second.Frame && pair.First.Shaft <= pair.Second.Shaft
                && pair.First.Mass.Hazard <= pair.Second.Mass.Hazard && pair.First.Inertia.Hazard < pair.Second.Inertia.Hazard));
        });
    }

    /// <summary>A slower motor of the same power is never the smaller: its torque is larger (physics; common practice in every list).</summary>
    [Fact]
    public void Frame_mass_and_inertia_do_not_fall_with_power_nor_with_poles() =>
        Gen.Select(Gen.Double[0.05, 2.2], Gen.Double[0.05, 2.2], Gen.OneOf(Gen.Const(2), Gen.Const(4), Gen.Const(6))).Sample((one, other, poles) =>
        {
            var (small, large) = (Of(Math.Min(one, other), poles), Of(Math.Max(one, other), poles + 2));
            Assert.True(small.Frame <= large.Frame && small.Mass.Hazard <= large.Mass.Hazard && small.Mass.Capability <= large.Mass.Capability);
            Assert.True(small.Inertia.Hazard <= large.Inertia.Hazard && small.Inertia.Capability <= large.Inertia.Capability);
        });

    [Theory]
    [InlineData(0.2, 71)] // 0.18 kW is the most of a four-pole frame 63
    [InlineData(0.9, 90)] // 0.75 kW that of a frame 80
    [InlineData(0.03, 56)]
    public void A_power_between_two_outputs_takes_the_larger_frame(double kilowatts, double frameMm) =>
        Assert.Equal(frameMm, (double)Of(kilowatts, 4).Frame.Millimeters);

    /// <summary>1/2, 3/4, 1 and 2 hp go into the frames of 0.37, 0.55, 0.75 and 1.5 kW (common practice, no source).</summary>
    [Theory]
    [InlineData(0.5, 71)]
    [InlineData(0.75, 80)]
    [InlineData(1, 80)]
    [InlineData(2, 90)]
    public void Horsepower_stands_for_its_preferred_kilowatts(double horsepower, double frameMm) => Assert.Equal(
        frameMm, (double)MotorBuild.Of(Power.FromMechanicalHorsepower(horsepower), 4, Handbook).Frame.Millimeters);

    [Theory]
    [InlineData(3.5, 4, "at most 3 kW with 4 poles")]
    [InlineData(4, 8, "at most 3 kW with 8 poles")]
    [InlineData(0.75, 10, "2, 4, 6 or 8")]
    [InlineData(0, 4, "above 0")]
    public void What_lies_beyond_the_table_is_refused_with_what_is_known(double kilowatts, int poles, string accepted) =>
        Assert.Contains(accepted, Assert.Throws<PartException>(() => Of(kilowatts, poles)).Message, StringComparison.Ordinal);

    /// <summary>The rotor of the handbook's example lies within the pair of its rating, at the low end: the high one adds pulley and doubt.</summary>
    [Fact]
    public void The_example_rotor_of_the_handbook_is_the_one_that_is_scaled()
    {
        var rotor = Handbook.MotorFacts["example-0.75-kw-inertia"].Required().Value;
        var four = MotorBuild.UsualInertia(Power.FromKilowatts(0.75), 4);
        Assert.Equal(rotor, four.Capability.KilogramSquareMeters, 1e-12);
        Assert.Equal(2 * rotor, four.Hazard.KilogramSquareMeters, 1e-12);
    }

    /// <summary>At the same power torque goes with the poles, and so does the volume of the rotor: 1.5 times as much with six.</summary>
    [Fact]
    public void Poles_only_widen_the_pair_of_inertia()
    {
        double Ratio(int poles, Side side) =>
            MotorBuild.UsualInertia(Power.FromKilowatts(0.37), poles).On(side) / MotorBuild.UsualInertia(Power.FromKilowatts(0.37), 4).On(side);
        Assert.Equal((0.5, 1.0), (Ratio(2, Side.Capability), Ratio(2, Side.Hazard)));
        Assert.Equal((1.0, 1.5), (Ratio(6, Side.Capability), Ratio(6, Side.Hazard)));
        Assert.Equal((1.0, 2.0), (Ratio(8, Side.Capability), Ratio(8, Side.Hazard)));
    }

    [Fact]
    public void A_shaft_still_tells_the_smallest_frame_that_has_it()
    {
        Assert.Equal(100, Handbook.MotorFacts["shaft-28-mm"].Required().Value);
        Assert.Equal(132, Handbook.MotorFacts["shaft-38-mm"].Required().Value);
    }
}
