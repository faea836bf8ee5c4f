using Spindlewright.Foundations;
using CsCheck;
using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>The nearest known name.</summary>
public class NearestNameTests
{
    // Worked pairs of the optimal string alignment distance: "CA"/"ABC" is the one that tells it (3) from the
    // unrestricted Damerau–Levenshtein distance (2); "kitten"/"sitting" is the customary example (3).
    [Theory]
    [InlineData("CA", "ABC", 3)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("pwoer", "power", 1)]
    [InlineData("power", "power", 0)]
    [InlineData("", "abc", 3)]
    public void The_distance_counts_edits_and_swaps(string left, string right, int wanted) =>
        Assert.Equal(wanted, NearestName.Distance(left, right));

    [Theory]
    [InlineData("pwoer", "power")]
    [InlineData("Power", "power")]
    [InlineData("rated_curent", "rated_current")]
    [InlineData("colour", null)]
    [InlineData("", null)]
    public void A_near_name_is_found_and_a_far_one_is_not(string typed, string? wanted) =>
        Assert.Equal(wanted, NearestName.Of(typed, ["power", "poles", "rated_current", "voltage"]));

    [Fact]
    public void The_distance_is_symmetric_and_bounded_by_the_longer_name() =>
        Gen.Select(Gen.String[0, 12], Gen.String[0, 12]).Sample((left, right) =>
        {
            var distance = NearestName.Distance(left, right);
            return distance == NearestName.Distance(right, left)
                && distance <= Math.Max(left.Length, right.Length)
                && distance >= Math.Abs(left.Length - right.Length)
                && (distance == 0) == (left == right);
        }, iter: 2000, threads: 1);
}
