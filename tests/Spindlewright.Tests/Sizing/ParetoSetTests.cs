using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Studies.Sizing;

namespace Spindlewright.Tests.Sizing;

/// <summary>The Pareto set against its definition, tried pair by pair.</summary>
public sealed class ParetoSetTests
{
    // Few values, so that ties and equals are frequent; infinite and undetermined measures among them.
    private static readonly Gen<double[][]> Small =
        from measures in Gen.Int[1, 5]
        from rows in Gen.Frequency((8, Gen.Int[0, 4].Select(whole => (double)whole)), (1, Gen.Const(double.PositiveInfinity)), (1, Gen.Const(double.NaN)))
            .Array[measures].Array[0, 24]
        select rows;

    [Fact]
    public void It_is_the_set_that_comparing_every_pair_leaves() => Small.Sample(rows =>
    {
        var beatenBy = ParetoSet.BeatenBy(rows);
        for (var row = 0; row < rows.Length; row++)
        {
            // The definition, written apart from the code under test: no worse anywhere, better somewhere, all determined.
            var beaten = rows.Any(other => !other.Concat(rows[row]).Any(double.IsNaN)
                && Enumerable.Range(0, other.Length).All(at => other[at] <= rows[row][at]) && Enumerable.Range(0, other.Length).Any(at => other[at] < rows[row][at]));
            Assert.Equal(beaten, beatenBy[row] >= 0);
        }
    });

    [Fact]
    public void Who_beats_another_stays_itself() => Small.Sample(rows =>
    {
        var beatenBy = ParetoSet.BeatenBy(rows);
        foreach (var by in beatenBy.Where(by => by >= 0)) Assert.Equal(-1, beatenBy[by]);
    });

    [Fact]
    public void A_row_that_is_beaten_changes_nothing() => Small.Where(rows => rows.Any(row => !row.Any(double.IsNaN))).Sample(rows =>
    {
        var before = Staying(rows);
        var worse = rows.First(row => !row.Any(double.IsNaN)).Select(cost => cost + 1).ToArray();
        // Infinite costs are as bad as can be: only a row with a finite one can be made worse.
        if (worse.All(double.IsInfinity)) return;
        Assert.Equal(before, Staying([.. rows, worse]));
    });

    [Fact]
    public void Neither_units_nor_order_matter() => Gen.Select(Small, Gen.Double[0.01, 100].Array[5], Gen.Int).Sample((rows, factors, seed) =>
    {
        var order = Enumerable.Range(0, rows.Length).OrderBy(row => HashCode.Combine(seed, row)).ToArray();
        var changed = order.Select(row => rows[row].Select((cost, at) => cost * factors[at]).ToArray()).ToArray();
        var beatenBy = ParetoSet.BeatenBy(changed);
        Assert.Equal(Staying(rows), (int[])[.. order.Where((_, place) => beatenBy[place] < 0).Order()]);
    });

    [Fact]
    public void Rows_of_unequal_length_are_refused() =>
        Assert.Equal("number of measures", Assert.Throws<PartException>(() => ParetoSet.BeatenBy([[1, 2], [1]])).Quantity);

    private static int[] Staying(double[][] rows) => [.. ParetoSet.BeatenBy(rows).Index().Where(each => each.Item < 0).Select(each => each.Index)];
}
