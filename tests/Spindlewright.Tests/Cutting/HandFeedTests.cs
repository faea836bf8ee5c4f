using CsCheck;
using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Tests.Cutting;

public sealed class HandFeedTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();
    private static readonly TabulatedFactors Factors = new(Handbook.Drilling);
    private static readonly DrillCondition Sharp = new(0.18, 1);

    private static readonly Gen<(CuttingMaterial Material, Length Diameter, DrillCondition Drill, Force Thrust)> Cases =
        from index in Gen.Int[0, Handbook.Materials.Count - 1]
        from mm in Gen.Double[1.6, 60]
        from wear in Gen.Double[1, 1.5]
        from newtons in Gen.Double[50, 6000]
        select (CuttingMaterial.Of(Handbook.Materials[index], Handbook), Length.FromMillimeters(mm), new DrillCondition(0.18, wear), Force.FromNewtons(newtons));

    [Fact]
    public void The_feed_that_results_asks_the_thrust_that_is_there() => Cases.Sample(each =>
    {
        var fed = HandFeed.Of(Factors, each.Material, each.Diameter, each.Drill, each.Thrust);
        if (fed.Load is null) Assert.True(fed.LeastThrust > each.Thrust);
        else if (!fed.ReachesEndOfTable) Assert.Equal(each.Thrust.Newtons, fed.Load.Thrust.Newtons, 1e-3);
    });

    [Fact]
    public void More_thrust_never_feeds_less_and_a_pilot_hole_never_costs_feed() => Cases.Sample(each =>
    {
        double Feed(Force thrust, Length? pilot) =>
            HandFeed.Of(Factors, each.Material, each.Diameter, each.Drill, thrust, pilot).FeedPerRevolution?.Millimeters ?? 0;
        Assert.True(Feed(each.Thrust * 1.2, null) >= Feed(each.Thrust, null) - 1e-9);
        Assert.True(Feed(each.Thrust, each.Diameter * 0.3) >= Feed(each.Thrust, null) - 1e-9);
    });

    // Published folder: 1500 N in steel of 200 HB, sharp: about 0.13 mm/rev at 6 mm, 0.05 at 10, 0.02 at 13, none at 20.
    [Theory]
    [InlineData(6, 0.128, 0.003)]
    [InlineData(10, 0.054, 0.002)]
    [InlineData(13, 0.0245, 0.0015)]
    public void Fifteen_hundred_newtons_feed_so_much(double mm, double feed, double within) => Assert.Equal(
        feed,
        HandFeed.Of(Factors, CuttingMaterial.Of("medium-carbon-steel", Handbook), Length.FromMillimeters(mm), Sharp, Force.FromNewtons(1500))
            .FeedPerRevolution!.Value.Millimeters, within);

    [Fact]
    public void At_twenty_millimetres_the_same_thrust_feeds_nothing_without_a_pilot()
    {
        var steel = CuttingMaterial.Of("medium-carbon-steel", Handbook);
        HandFeed With(Length? pilot) => HandFeed.Of(Factors, steel, Length.FromMillimeters(20), Sharp, Force.FromNewtons(1500), pilot);
        Assert.Null(With(null).Load);
        Assert.True(With(Length.FromMillimeters(6)).FeedPerRevolution > Length.FromMillimeters(0.05));
    }

    [Fact]
    public void A_split_point_asks_less_thrust_and_hardly_less_torque()
    {
        var steel = CuttingMaterial.Of("medium-carbon-steel", Handbook);
        TwistDrillLoad Of(string point) => TwistDrillLoad.Of(
            Factors, steel, Length.FromMillimeters(10), Length.FromMillimeters(0.1), new(Handbook.DrillPoints[point].ChiselOverDiameter, 1.3));
        Assert.InRange(Of("split").Thrust / Of("standard").Thrust, 0.4, 0.7);
        Assert.InRange(Of("split").Torque / Of("standard").Torque, 0.9, 0.95);
    }

    [Fact]
    public void A_pilot_that_does_not_clear_the_chisel_edge_is_refused()
    {
        var error = Assert.Throws<PartException>(() => TwistDrillLoad.Of(
            Factors, CuttingMaterial.Of("mild-steel", Handbook), Length.FromMillimeters(20), Length.FromMillimeters(0.1), Sharp, Length.FromMillimeters(3)));
        Assert.Contains("clears the chisel edge", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lever_turns_pull_into_thrust_and_back()
    {
        var lever = new FeedLever(Length.FromMillimeters(200), Length.FromMillimeters(20), Force.FromNewtons(100), 0.8);
        Assert.Equal(800, lever.Thrust.Newtons, 9);
        Assert.Equal(100, lever.ArmFor(lever.Thrust).Newtons, 9);
        Assert.Throws<PartException>(() => new FeedLever(Length.Zero, Length.FromMillimeters(20), Force.FromNewtons(100)));
    }

    [Fact] // Half of the speed at n = 0.5 is four times the life: a common exercise.
    public void Tool_life_is_a_span_because_its_exponent_is_wide()
    {
        Assert.Equal(4, ToolLife.Ratio(0.5, 0.5), 12);
        var span = ToolLife.Range(0.8, Handbook.ToolMaterials["hss"].TaylorExponent);
        Assert.InRange(span.Least, 3, 3.1);
        Assert.InRange(span.Most, 16, 16.5);
        Assert.Equal(0.125, ToolLife.Exponent(0.8, ToolLife.Ratio(0.8, 0.125)), 12);
        Assert.Equal(new Interval(1, 1), ToolLife.Range(1, new(0.08, 0.2)));
    }

    // Common practice, no source: a 10 mm drill of high-speed steel in grey iron is charted near 800 r/min and often run nearer 725.
    [Fact]
    public void The_owners_line_stands_beside_the_handbooks()
    {
        var iron = CuttingMaterial.Of("grey-iron-class-30", Handbook);
        var charted = CuttingSpeed.SpindleSpeed(iron.MiddleSpeed, Length.FromMillimeters(10)).RevolutionsPerMinute;
        Assert.InRange(charted, 750, 850);
        Experience[] rows =
        [
            new("grey-iron-class-30", Length.FromMillimeters(10), RotationalSpeed.FromRevolutionsPerMinute(725)),
            new("mild-steel", Length.FromMillimeters(10), RotationalSpeed.FromRevolutionsPerMinute(900)),
        ];
        var line = ExperienceLine.Of(iron, rows)!;
        Assert.Equal(725 / charted, line.OverHandbook, 9);
        Assert.Single(line.Rows);
        Assert.Null(ExperienceLine.Of(CuttingMaterial.Of("brass", Handbook), rows));
    }
}
