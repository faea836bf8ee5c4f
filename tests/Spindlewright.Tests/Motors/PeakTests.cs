using CsCheck;
using Spindlewright.Foundations;

namespace Spindlewright.Tests.Motors;

/// <summary>The largest value of curves whose peak is known in closed form.</summary>
public class PeakTests
{
    [Fact]
    public void A_torque_curve_has_its_peak_at_the_breakdown_slip() =>
        // Kloss's formula, T/Tmax = 2 / (s/sm + sm/s): common practice, no source.
        Gen.Double[0.01, 0.99].Sample(breakdown =>
        {
            double Kloss(double slip) => slip == 0 ? 0 : 2 / (slip / breakdown + breakdown / slip);
            foreach (var (value, at) in new[] { Peak.Find(Kloss, 0, 1), Peak.FindHighest(Kloss, 0.001, 1) })
            {
                Assert.Equal(1, value, 1e-15);
                // At a smooth peak no closer place can be told by its values.
                Assert.Equal(breakdown, at, 1e-7);
            }
        });

    [Fact]
    public void A_corner_is_found_to_a_billionth_of_the_range() =>
        Gen.Select(Gen.Double[0.05, 0.95], Gen.Double[0.1, 10], Gen.Double[0.1, 10]).Sample((corner, up, down) =>
        {
            double Roof(double at) => at < corner ? up * (at - corner) : down * (corner - at);
            Assert.Equal(corner, Peak.Find(Roof, 0, 1).At, 2e-9);
            Assert.Equal(corner, Peak.FindHighest(Roof, 0.01, 1).At, 2e-9);
        });

    [Theory]
    [InlineData(1, 1)]
    [InlineData(-1, 0.01)]
    public void A_peak_at_an_end_stands_on_the_end(double slope, double end)
    {
        Assert.Equal((slope * end, end), Peak.Find(at => slope * at, 0.01, 1));
        Assert.Equal((slope * end, end), Peak.FindHighest(at => slope * at, 0.01, 1));
    }

    [Fact]
    public void The_higher_of_two_peaks_is_taken()
    {
        static double Two(double at) => Math.Exp(-Math.Pow(Math.Log(at / 0.03), 2)) + 1.01 * Math.Exp(-Math.Pow(Math.Log(at / 0.8), 2));
        Assert.Equal(0.8, Peak.FindHighest(Two, 0.005, 1).At, 0.01);
    }

    [Fact]
    public void A_smooth_peak_takes_few_points()
    {
        var count = 0;
        Peak.Find(slip => { count++; return slip / (slip * slip + 0.04); }, 0, 1);
        // 25 of the grid, three at the end, and what closing in takes: golden section took 43.
        Assert.InRange(count, 28, 28 + 30);
    }
}
