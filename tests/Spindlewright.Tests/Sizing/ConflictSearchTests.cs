using CsCheck;
using Spindlewright.Studies.Sizing;

namespace Spindlewright.Tests.Sizing;

/// <summary>Which requirements conflict, against the definition.</summary>
public sealed class ConflictSearchTests
{
    private static readonly Gen<bool[][]> Tables =
        from requirements in Gen.Int[1, 7]
        from rows in Gen.Bool.Array[requirements].Array[1, 12]
        select rows;

    [Fact]
    public void A_conflict_is_met_by_nobody_and_each_smaller_part_of_it_by_somebody() => Tables.Sample(rows =>
    {
        foreach (var together in Search(rows).Smallest())
        {
            Assert.DoesNotContain(rows, row => together.All(requirement => row[requirement]));
            foreach (var left in together)
                Assert.Contains(rows, row => together.Where(requirement => requirement != left).All(requirement => row[requirement]));
        }
    });

    [Fact]
    public void There_is_a_conflict_exactly_where_nobody_meets_all() => Tables.Sample(rows =>
        Assert.Equal(!rows.Any(row => row.All(met => met)), Search(rows).Smallest().Count > 0));

    [Fact]
    public void Every_conflict_of_up_to_three_is_found() => Tables.Sample(rows =>
    {
        var found = Search(rows).Smallest();
        var count = rows[0].Length;
        for (var one = 0; one < count; one++)
            for (var other = one; other < count; other++)
                for (var third = other; third < count; third++)
                {
                    int[] together = [.. new[] { one, other, third }.Distinct()];
                    if (rows.Any(row => together.All(requirement => row[requirement]))) continue;
                    Assert.Contains(found, smaller => smaller.All(together.Contains));
                }
    });

    [Fact]
    public void The_nearest_sets_are_the_largest_that_somebody_meets() => Tables.Sample(rows =>
    {
        var most = rows.Max(row => row.Count(met => met));
        foreach (var set in Search(rows).Nearest)
        {
            Assert.Equal(most, set.Count);
            Assert.Contains(rows, row => set.All(requirement => row[requirement]));
        }
        Assert.NotEmpty(Search(rows).Nearest);
    });

    private static ConflictSearch Search(bool[][] rows) => new(rows.Length, rows[0].Length, (row, requirement) => rows[row][requirement]);
}
