using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Tests.Sampling;

public sealed class DistributionTests
{
    /// <summary>Abramowitz, Stegun, Handbook of Mathematical Functions (1964), table 26.5 and any table since: from memory.</summary>
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.9, 1.281551565545)]
    [InlineData(0.95, 1.644853626951)]
    [InlineData(0.975, 1.959963984540)]
    [InlineData(0.99, 2.326347874041)]
    [InlineData(0.999, 3.090232306168)]
    [InlineData(0.00001, -4.264890793923)]
    public void Normal_quantiles_are_those_of_the_tables(double share, double standard)
    {
        Assert.Equal(standard, new Distribution.Normal(0, 1).Quantile(share), 1e-11);
        Assert.Equal(230 + 4 * standard, new Distribution.Normal(230, 4).Quantile(share), 1e-9);
        // A lognormal number is the exponential of a normal one, by its definition.
        Assert.Equal(20 * Math.Pow(1.3, standard), new Distribution.Lognormal(20, 1.3).Quantile(share), 1e-8);
    }

    /// <summary>
    /// Areas of the triangle from 1 over 2 to 6: (x − 1)²/5 of it lies below an x up to 2, (6 − x)²/20 above one from 2 on.
    /// Own arithmetic.
    /// </summary>
    [Theory]
    [InlineData(0.05, 1.5)]
    [InlineData(0.2, 2)]
    [InlineData(0.3, 2.258342613226)]
    [InlineData(0.999, 5.858578643763)]
    public void Triangular_quantiles_are_those_of_the_areas(double share, double expected) =>
        Assert.Equal(expected, new Distribution.Triangular(1, 2, 6).Quantile(share), 1e-11);

    [Fact]
    public void A_truncated_normal_has_the_published_quartiles_of_the_half_normal()
    {
        // The median of |Z| is 0.6744897502 and its 95th percentile 1.9599639845: tables of the normal distribution.
        var half = new Distribution.Truncated(new Distribution.Normal(0, 1), 0, 40);
        Assert.Equal(0.674489750196, half.Quantile(0.5), 1e-10);
        Assert.Equal(1.959963984540, half.Quantile(0.95), 1e-10);
    }

    [Fact]
    public void Percentiles_come_back_and_lie_on_straight_lines_between()
    {
        var hand = new Distribution.Percentiles((0, 2), (5, 4), (50, 9), (95, 14), (100, 18));
        Assert.Equal(4, hand.Quantile(0.05), 1e-12);
        Assert.Equal(11.5, hand.Quantile(0.725), 1e-12);
        Assert.Equal(0.725, hand.ShareBelow(11.5), 1e-12);
        Assert.Equal([0, 1], new[] { hand.ShareBelow(1.9), hand.ShareBelow(18.1) });
    }

    [Fact]
    public void A_quantile_and_its_share_undo_each_other()
    {
        Distribution[] all =
        [
            new Distribution.Normal(5, 2), new Distribution.Lognormal(3, 1.4), new Distribution.Triangular(-1, 2, 3),
            new Distribution.Uniform(4, 9), new Distribution.Truncated(new Distribution.Normal(0, 1), -1, 2.5),
            new Distribution.Percentiles((0, 1), (20, 3), (70, 8), (100, 9)),
        ];
        Gen.Select(Gen.Int[0, all.Length - 1].Select(place => all[place]), Gen.Double[0.001, 0.999]).Sample((distribution, share) =>
            Assert.Equal(share, distribution.ShareBelow(distribution.Quantile(share)), 1e-9));
    }

    [Fact]
    public void Quantiles_never_fall_and_stay_within_the_ends()
    {
        var cut = new Distribution.Truncated(new Distribution.Lognormal(1, 1.5), 0.5, 2);
        Gen.Select(Gen.Double[1e-9, 1 - 1e-9], Gen.Double[1e-9, 1 - 1e-9]).Sample((a, b) =>
        {
            var (low, high) = (cut.Quantile(Math.Min(a, b)), cut.Quantile(Math.Max(a, b)));
            Assert.True(0.5 <= low && low <= high && high <= 2);
        });
    }

    [Fact]
    public void What_cannot_be_a_distribution_is_refused_with_the_value_and_what_is_accepted()
    {
        string Refusal(Action make) => Assert.Throws<PartException>(make).Message;
        Assert.Equal(
            "distribution: standard deviation is 0; accepted: a finite number above 0.",
            Refusal(() => _ = new Distribution.Normal(1, 0)));
        Assert.Equal("distribution: factor is 1; accepted: above 1.", Refusal(() => _ = new Distribution.Lognormal(1, 1)));
        Assert.Equal(
            "distribution: upper end is 3; accepted: above the lower end, 4.", Refusal(() => _ = new Distribution.Uniform(4, 3)));
        Assert.Contains("likeliest value is 9; accepted: 1 to 4", Refusal(() => _ = new Distribution.Triangular(1, 9, 4)));
        Assert.Contains("ends between which draws lie", Refusal(
            () => _ = new Distribution.Truncated(new Distribution.Uniform(0, 1), 2, 3)));
        Assert.Contains("the first 0 and the last 100", Refusal(() => _ = new Distribution.Percentiles((5, 1), (95, 2))));
        Assert.Contains("percentile is 50 with 1; accepted: a percentile above 40 with a value of 2 or more", Refusal(
            () => _ = new Distribution.Percentiles((0, 1), (40, 2), (50, 1), (100, 3))));
        Assert.Contains("share is 1; accepted: above 0 and below 1", Refusal(() => new Distribution.Fixed(1).Quantile(1)));
        Assert.Contains("mean is NaN", Refusal(() => _ = new Distribution.Normal(double.NaN, 1)));
    }
}
