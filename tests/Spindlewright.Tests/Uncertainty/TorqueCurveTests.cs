using Spindlewright.Studies.Uncertainty;

namespace Spindlewright.Tests.Uncertainty;

/// <summary>Torque of a draw over frequency, on curves whose rise is known.</summary>
public class TorqueCurveTests
{
    private const double LowestHz = 5, TopHz = 50;

    /// <summary>A parabola with its peak at 30 Hz, which lies inside a cell: nodes stand at 29.6 and 31.0 Hz.</summary>
    [Theory]
    [InlineData(5, true)]
    [InlineData(20, true)]
    [InlineData(29.9, true)]
    [InlineData(30.1, false)]
    [InlineData(31.2, false)]
    [InlineData(45, false)]
    [InlineData(double.PositiveInfinity, false)]
    public void A_smooth_peak_ends_the_rise_where_it_stands(double hertz, bool risen) =>
        Assert.Equal(risen, HasRisen(at => 100 - (at - 30) * (at - 30), hertz));

    /// <summary>Up to 20 Hz, down to 30 Hz, up again beyond the first top from 40 Hz on.</summary>
    [Theory]
    [InlineData(19, true)]
    [InlineData(25, false)]
    [InlineData(35, false)]
    [InlineData(49, false)]
    public void What_has_dipped_has_not_risen_all_the_way(double hertz, bool risen) =>
        Assert.Equal(risen, HasRisen(at => at < 20 ? at : at < 30 ? 40 - at : at - 20 + (at - 30) * 0.1, hertz));

    [Fact]
    public void At_the_lowest_frequency_nothing_has_fallen_yet() => Assert.True(HasRisen(at => -at, LowestHz));

    private static bool HasRisen(Func<double, double> torque, double to)
    {
        var hertz = new double[TorqueCurve.Points];
        var ceilingAt = TorqueCurve.Frequencies(hertz, LowestHz, TopHz, TopHz);
        return new TorqueCurve(hertz, [.. hertz.Select(torque)], ceilingAt).HasRisenTo(to);
    }
}
