using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;

namespace Spindlewright.Tests.Tables;

public sealed class FactorTableTests
{
    private static readonly DrillingFactors Drilling = Handbook.FromEmbedded().Drilling;

    [Theory] // Machinery's Handbook, 31st ed., Tables 7 to 9: the printed digits come back.
    [InlineData("drilling-feed-metric", "feed_factor", 0.20, 0.276)]
    [InlineData("drilling-feed-inch", "feed_factor", 0.008, 0.021)]
    [InlineData("drilling-diameter-metric", "thrust_factor", 10.0 + 1, 6.81)]
    [InlineData("drilling-diameter-metric", "torque_factor", 1.60, 2.33)]
    [InlineData("drilling-diameter-metric", "torque_factor", 76, 2429)]
    [InlineData("drilling-diameter-inch", "thrust_factor", 0.875, 0.899)]
    [InlineData("drilling-diameter-inch", "torque_factor", 0.875, 0.786)]
    [InlineData("drilling-chisel", "torque_factor_a", 0.18, 1.085)]
    [InlineData("drilling-chisel", "thrust_factor_b", 0.03, 1.100)]
    [InlineData("drilling-chisel", "thrust_factor_j", 0.40, 0.160)]
    public void A_printed_point_gives_its_printed_digits(string table, string column, double at, double printed) =>
        Assert.Equal(printed, Drilling.Of(table, column).At(at));

    [Fact]
    public void Known_misprints_are_kept_in_the_table_and_left_out_of_interpolation()
    {
        var misprints = Drilling.Printed.SelectMany(table => table).Where(row => row.Misprint.Length > 0).ToArray();
        Assert.Equal(2, misprints.Length);
        foreach (var row in misprints)
        {
            var table = Drilling.Printed.Single(printed => printed.Contains(row)).Name;
            var found = Drilling.Of(table, row.Misprint).At(row.Argument);
            Assert.InRange(found / row.ClosedForm!.Value, 0.995, 1.005);
            Assert.True(row.Factors[row.Misprint] / found > 1.015);
            Assert.NotEmpty(row.Citation.Note);
        }
    }

    [Fact]
    public void Outside_the_printed_range_there_is_no_answer()
    {
        foreach (var x in new[] { 0.009, 1.26, 0, -1, double.NaN, double.PositiveInfinity })
        {
            var error = Assert.Throws<PartException>(() => Drilling.FeedMetric.At(x));
            Assert.Contains("0.01 to 1.25", error.Message, StringComparison.Ordinal);
            Assert.Contains("feed in mm/rev", error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Between_printed_points_a_factor_rises_with_its_argument()
    {
        FactorTable[] rising =
            [Drilling.FeedMetric, Drilling.FeedInch, Drilling.ThrustMetric, Drilling.TorqueMetric, Drilling.ThrustInch,
                Drilling.TorqueInch, Drilling.ChiselTorqueA, Drilling.ChiselThrustB, Drilling.ChiselThrustJ];
        foreach (var table in rising)
            Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Sample((a, b) =>
            {
                var (low, high) = (Math.Min(a, b), Math.Max(a, b));
                return table.At(In(table, low)) <= table.At(In(table, high)) * (1 + 1e-12);
            });
    }

    [Fact]
    public void A_table_that_is_a_power_law_is_reproduced_exactly_between_its_points()
    {
        var table = new FactorTable("law", "x", [(1, 2), (4, 2 * Math.Pow(4, 1.8)), (9, 2 * Math.Pow(9, 1.8))]);
        Gen.Double[1, 9].Sample(x => Math.Abs(table.At(x) / (2 * Math.Pow(x, 1.8)) - 1) < 1e-12);
    }

    [Fact]
    public void A_table_refuses_points_out_of_order_and_values_not_above_zero()
    {
        Assert.Throws<PartException>(() => new FactorTable("t", "x", [(1, 1)]));
        Assert.Throws<PartException>(() => new FactorTable("t", "x", [(1, 1), (1, 2)]));
        Assert.Throws<PartException>(() => new FactorTable("t", "x", [(1, 1), (2, 0)]));
        Assert.Throws<PartException>(() => new FactorTable("t", "x", [(double.NaN, 1), (2, 1)]));
        Assert.Throws<PartException>(() => Drilling.FeedMetric.Without(0.21));
    }

    [Fact]
    public void Scaling_a_table_scales_what_it_gives() =>
        Assert.Equal(2 * Drilling.FeedMetric.At(0.17), Drilling.FeedMetric.Scaled(2).At(0.17), 12);

    private static double In(FactorTable table, double share) => Math.Clamp(
        table.Domain.Least * Math.Pow(table.Domain.Most / table.Domain.Least, share), table.Domain.Least,
        table.Domain.Most);
}
