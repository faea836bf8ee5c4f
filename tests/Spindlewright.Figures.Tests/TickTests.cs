using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public class TickTests
{
    private static readonly Axis Log = new("speed", "r/min", AxisScale.Logarithmic);

    [Fact]
    public void Linear_ticks_are_round_and_within_the_range()
    {
        var ticks = Ticks.For(new("torque", "N m"), new(0, 55), 100, 11);
        Assert.Equal(["0", "10", "20", "30", "40", "50"], ticks.Major.Select(t => t.Label));
        Assert.Contains(ticks.Minor, m => Math.Abs(m - 2) < 1e-9);
        Assert.DoesNotContain(ticks.Minor, m => Math.Abs(m - 10) < 1e-9);
    }

    [Fact]
    public void Small_steps_are_labelled_with_the_digits_they_need() =>
        Assert.Equal(["0.00", "0.05", "0.10", "0.15", "0.20"],
            Ticks.For(new("feed", "mm/rev"), new(0, 0.2), 50, 11).Major.Select(t => t.Label));

    [Fact]
    public void Logarithmic_ticks_stand_at_every_digit_of_every_decade()
    {
        var ticks = Ticks.For(Log, new(50, 5000), 140, 13);
        double[] expected = [50, 60, 70, 80, 90, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 2000, 3000, 4000,
            5000];
        Assert.Equal(expected, ticks.Major.Select(t => t.Position).Concat(ticks.Minor).Order());
        Assert.Contains(ticks.Major, t => t.Label == "1000");
        Assert.Contains(600, ticks.Minor);
    }

    [Fact]
    public void Places_on_a_logarithmic_axis_follow_the_logarithm()
    {
        var map = new AxisMap(Log, new(10, 1000), 20, 120);
        Assert.Equal(70, map.Place(100), 9);
        Assert.Equal(20 + 50 * 0.30103, map.Place(20), 4); // lg 2 = 0.30103
    }

    [Fact]
    public void Many_decades_in_little_room_are_labelled_sparsely()
    {
        var ticks = Ticks.For(Log, new(1e-3, 1e9), 60, 13);
        Assert.InRange(ticks.Major.Count, 2, 6);
        Assert.All(ticks.Major, t => Assert.Equal(0, Math.Log10(t.Position) % 1, 9));
    }

    [Fact]
    public void Ticks_asked_for_by_name_are_the_only_ones()
    {
        var axis = new Axis("drill", "mm", ticks: [new(6, "6"), new(8.5, "8.5"), new(99, "99")],
            range: new Interval(0, 20));
        var ticks = Ticks.For(axis, axis.Range!.Value, 100, 13);
        Assert.Equal(["6", "8.5"], ticks.Major.Select(t => t.Label));
        Assert.Empty(ticks.Minor);
    }

    [Theory]
    [InlineData(12.34, 3, "12.3")]
    [InlineData(12.0, 3, "12")]
    [InlineData(2863.4, 3, "2863")]
    [InlineData(-0.05, 3, "−0.05")]
    [InlineData(12345, 3, "12\u202f345")]
    [InlineData(1234567.8, 3, "1\u202f234\u202f568")]
    [InlineData(0, 3, "0")]
    [InlineData(-1e-30, 3, "−1E−30")]
    [InlineData(double.NaN, 3, "no value")]
    public void Numbers_print_as_engineers_write_them(double value, int digits, string expected) =>
        Assert.Equal(expected, NumberText.Significant(value, digits));

    [Fact]
    public void Fitted_ranges_hold_all_marks_of_all_frames()
    {
        foreach (var figure in Specimens.All)
        {
            var (x, y) = (AxisRange.OfX(figure), AxisRange.OfY(figure));
            foreach (var p in figure.AllMarks.SelectMany(m => m.Extent))
            {
                Assert.True(double.IsNaN(p.X) || x.Contains(p.X), $"{figure.Id}: x {p.X} outside {x}");
                Assert.True(double.IsNaN(p.Y) || y.Contains(p.Y), $"{figure.Id}: y {p.Y} outside {y}");
            }
        }
    }

    [Fact]
    public void A_single_value_still_gets_a_range()
    {
        var figure = FigureRecordTests.Make(new Points(Role.Measured, [5], [0]));
        Assert.True(AxisRange.OfX(figure).Width > 0);
        Assert.True(AxisRange.OfY(figure).Width > 0);
    }
}
