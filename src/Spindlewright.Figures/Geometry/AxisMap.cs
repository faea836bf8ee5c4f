using Spindlewright.Foundations;

namespace Spindlewright.Figures.Geometry;

/// <summary>Takes a value of an axis to a place on paper.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Range">What it spans.</param>
/// <param name="FromMm">Where its lower end lies.</param>
/// <param name="ToMm">Where its upper end lies.</param>
internal sealed record AxisMap(Axis Axis, Interval Range, double FromMm, double ToMm)
{
    /// <summary>Place of a value, mm; NaN stays NaN.</summary>
    public double Place(double value)
    {
        var part = Axis.Scale == AxisScale.Logarithmic
            ? Math.Log(value / Range.Least) / Math.Log(Range.Most / Range.Least)
            : (value - Range.Least) / Range.Width;
        return FromMm + part * (ToMm - FromMm);
    }

    /// <summary>True where the value lies within the range.</summary>
    public bool Shows(double value) => Range.Contains(value);
}
