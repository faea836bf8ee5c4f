using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>Finds drills that can be bought.</summary>
public static class DrillSizes
{
    /// <summary>The drill nearest to a diameter.</summary>
    /// <param name="handbook">Tables.</param>
    /// <param name="diameter">Within the span of the series.</param>
    /// <param name="series">metric, fractional, number or letter; all of them where none is named.</param>
    /// <returns>The drill; the smaller of two equally near.</returns>
    /// <exception cref="PartException">The diameter is off the span of the series.</exception>
    /// <exception cref="UnknownRowException">No such series.</exception>
    public static DrillSizeRow Nearest(Handbook handbook, Length diameter, params IReadOnlyCollection<string> series)
    {
        var rows = Of(handbook, series);
        Guard.Within(
            diameter, rows[0].Diameter.ToUnit(UnitsNet.Units.LengthUnit.Millimeter), rows[^1].Diameter, "drill size", "diameter",
            "the span of the series");
        return rows.MinBy(row => Math.Abs((row.Diameter - diameter).Millimeters))!;
    }

    /// <summary>All drills of some series by diameter.</summary>
    /// <param name="handbook">Tables.</param>
    /// <param name="series">metric, fractional, number or letter; all of them where none is named.</param>
    /// <returns>Smallest first.</returns>
    /// <exception cref="UnknownRowException">No such series.</exception>
    public static IReadOnlyList<DrillSizeRow> Of(Handbook handbook, params IReadOnlyCollection<string> series)
    {
        var known = handbook.DrillSizes.Select(row => row.Series).Distinct().ToList();
        if (series.FirstOrDefault(name => !known.Contains(name)) is { } unknown)
            throw new UnknownRowException("series of drill sizes", unknown, known);
        return [.. handbook.DrillSizes.Where(row => series.Count == 0 || series.Contains(row.Series)).OrderBy(row => row.Diameter)];
    }
}
