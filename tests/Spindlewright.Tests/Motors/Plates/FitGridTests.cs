using Spindlewright.Foundations.Tables;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors.Plates;

public class FitGridTests
{
    private static readonly IReadOnlyList<FittedRating> Grid = FitGrid.All(Handbook.FromEmbedded());

    [Fact]
    public void Every_rating_is_fitted_or_its_fit_says_what_it_misses()
    {
        Assert.Equal(432, Grid.Count);
        Assert.All(Grid, rating =>
        {
            Assert.All(rating.Fit.Targets, target => Assert.True(double.IsFinite(target.Reached), $"{rating}: {target}"));
            var missed = rating.Fit.Targets.Where(target => target is { Met: false, Assumed: false }).ToList();
            Assert.Equal(missed.Count == 0, rating.Fit.Verdict.Length == 0);
            Assert.All(missed, target => Assert.Contains(target.Quantity, rating.Fit.Verdict, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void Every_fitted_circuit_runs_at_ten_frequencies() => Assert.All(Grid, rating =>
    {
        var circuit = rating.Fit.Circuit;
        for (var a = 0.1; a <= 2; a += 0.2)
        {
            var phase = circuit.RatedLineVoltage / Math.Sqrt(3) * Math.Min(1, a);
            var (torque, slip) = CircuitSolver.PullOut(circuit, circuit.RatedFrequency * a, phase);
            Assert.True(torque > Torque.Zero && slip is > 0 and <= 1, $"{rating} at {a}");
        }
    });

    [Fact]
    public void The_table_of_residuals_is_the_one_that_is_committed() =>
        TestSupport.Repository.PageIsCurrent("docs/motor-fit-grid.md", FitGrid.Page(Grid));
}
