using System.Collections.Immutable;
using System.Globalization;

namespace Spindlewright.Foundations.Tables;

/// <summary>A printed factor against one argument, interpolated between printed points. Immutable.</summary>
/// <remarks>
/// The table is master: at a printed point its digits come back, between two points the line is straight on
/// logarithmic scales in both directions (a power law through the two), and outside the printed range there is no
/// answer. Printed values known to be misprints are not among the points.
/// </remarks>
public sealed class FactorTable
{
    private readonly ImmutableArray<(double X, double Y)> points;

    /// <summary>Makes a table of a factor.</summary>
    /// <param name="name">The factor, such as "feed factor".</param>
    /// <param name="argument">The argument with its unit, such as "feed in mm/rev".</param>
    /// <param name="points">At least two points, arguments ascending, all above 0.</param>
    /// <exception cref="PartException">Fewer than two points, out of order, or a value that is not above 0.</exception>
    public FactorTable(string name, string argument, IEnumerable<(double X, double Y)> points)
    {
        (Name, Argument) = (name, argument);
        this.points = [.. points];
        if (this.points.Length < 2)
            throw new PartException(name, "number of points", $"{this.points.Length}", "2 or more");
        foreach (var (x, y) in this.points)
        {
            Guard.Positive(x, name, argument);
            Guard.Positive(y, name, "factor");
        }
        for (var i = 1; i < this.points.Length; i++)
            if (this.points[i].X <= this.points[i - 1].X)
                throw new PartException(
                    name, argument, Text(this.points[i].X), $"above {Text(this.points[i - 1].X)}", "arguments ascend");
    }

    /// <summary>The factor's name.</summary>
    public string Name { get; }

    /// <summary>The argument with its unit.</summary>
    public string Argument { get; }

    /// <summary>The points, arguments ascending.</summary>
    public IReadOnlyList<(double X, double Y)> Points => points;

    /// <summary>The range of the argument, both ends included.</summary>
    public Interval Domain => new(points[0].X, points[^1].X);

    /// <summary>The factor at an argument.</summary>
    /// <param name="x">Within <see cref="Domain"/>.</param>
    /// <returns>The factor.</returns>
    /// <exception cref="PartException">Outside the printed range.</exception>
    public double At(double x)
    {
        Guard.Within(x, Domain.Least, Domain.Most, Name, Argument, "the printed range; nothing is extrapolated");
        var upper = 1;
        while (points[upper].X < x) upper++;
        var (low, high) = (points[upper - 1], points[upper]);
        if (x == low.X) return low.Y;
        if (x == high.X) return high.Y;
        var exponent = Math.Log(high.Y / low.Y) / Math.Log(high.X / low.X);
        return low.Y * Math.Pow(x / low.X, exponent);
    }

    /// <summary>The table without one printed point.</summary>
    /// <param name="x">Argument of the point.</param>
    /// <returns>A new table.</returns>
    /// <exception cref="PartException">No point stands there, or fewer than two would be left.</exception>
    public FactorTable Without(double x) =>
        points.Any(point => point.X == x)
            ? new(Name, Argument, points.Where(point => point.X != x))
            : throw new PartException(Name, Argument, Text(x), "a printed point");

    /// <summary>The table with every factor multiplied, for trials of how much a table matters.</summary>
    /// <param name="multiplier">Above 0.</param>
    /// <returns>A new table.</returns>
    /// <exception cref="PartException">The multiplier is not above 0.</exception>
    public FactorTable Scaled(double multiplier)
    {
        Guard.Positive(multiplier, Name, "multiplier");
        return new(Name, Argument, points.Select(point => (point.X, point.Y * multiplier)));
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
