using MathNet.Numerics.Distributions;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Hands;

/// <summary>Torque that the hands of a population can put on a round body, normal across people.</summary>
/// <param name="Mean">Mean at the best diameter.</param>
/// <param name="StandardDeviation">Across people.</param>
/// <param name="Sample">Who was measured.</param>
/// <param name="Provenance">How the figure reached us.</param>
/// <param name="Source">Reference key.</param>
public sealed record HandStrength(
    Torque Mean, Torque StandardDeviation, string Sample, Provenance Provenance, string Source)
{
    private const string Part = "hand";

    /// <summary>Mean at the best diameter.</summary>
    public Torque Mean { get; } = Guard.Positive(Mean, Part, "mean torque");

    /// <summary>Across people.</summary>
    public Torque StandardDeviation { get; } = Guard.NotNegative(StandardDeviation, Part, "standard deviation of torque");

    /// <summary>Hands of grown men on a cylindrical handle, the largest sample in the handbook.</summary>
    /// <param name="handbook">Tables.</param>
    /// <returns>The sample; the handle's diameter is not stated and is taken as the best one, 50 mm (own choice).</returns>
    public static HandStrength OfHandbook(Handbook handbook)
    {
        var row = handbook.Hand["torque-cylinder"];
        return new(
            Torque.FromNewtonMeters(row.Mean!.Value), Torque.FromNewtonMeters(row.StandardDeviation!.Value), row.Sample,
            row.Citation.Provenance, row.Citation.Source);
    }

    /// <summary>Hand torque of a percentile on a body of a diameter.</summary>
    /// <param name="percentile">1 to 99; 5 is a weak hand of the sample, 95 a strong one.</param>
    /// <param name="diameter">Diameter of the body held, 5 mm to 250 mm.</param>
    /// <param name="hands">1, or 2 for the upper figure of two hands (twice one; own choice, no source).</param>
    /// <returns>Torque, never below 0.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    /// <remarks>(mean + z·sd)·s(D)·hands. The percentile by the normal law is own arithmetic, not the source's.</remarks>
    public Torque At(double percentile, Length diameter, int hands = 1)
    {
        Guard.Within(percentile, 1, 99, Part, "percentile");
        if (hands is not (1 or 2)) throw new PartException(Part, "number of hands", $"{hands}", "1 or 2");
        var best = Mean + StandardDeviation * Normal.InvCDF(0, 1, percentile / 100);
        return Torque.FromNewtonMeters(Math.Max(0, best.NewtonMeters) * HandDiameter.Factor(diameter) * hands);
    }
}

/// <summary>How hand torque goes with the diameter of a smooth cylinder.</summary>
/// <remarks>
/// Replogle, Proc. HFS 27(5):412–416 (1983), 20 people, 9.5 to 88.9 mm (second hand): in proportion to D² up to 25 mm,
/// then rising to a maximum near 50 mm with T(50) = 1.5 T(25). The straight line between and the level line above
/// 50 mm are own choice.
/// </remarks>
public static class HandDiameter
{
    /// <summary>Diameters that were tested, in mm.</summary>
    public static Interval TestedMm { get; } = Interval.Of(9.5, 88.9);

    /// <summary>Torque over the torque at the best diameter, 50 mm.</summary>
    /// <param name="diameter">5 mm to 250 mm.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="PartException">The diameter is out of range.</exception>
    public static double Factor(Length diameter)
    {
        var mm = Guard.Within(
            diameter, Length.FromMillimeters(5), Length.FromMillimeters(250), "hand", "diameter held").Millimeters;
        const double AtQuarter = 2.0 / 3;
        if (mm <= 25) return AtQuarter * (mm / 25) * (mm / 25);
        return mm >= 50 ? 1 : AtQuarter + (1 - AtQuarter) * (mm - 25) / 25;
    }
}
