using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Belts;

/// <summary>An open belt over two pulleys: length, wrap, span.</summary>
/// <param name="Pair">The pulleys, by datum diameters.</param>
/// <param name="CentreDistance">Between their axes, more than half the sum of the diameters.</param>
public sealed record BeltLayout(PulleyPair Pair, Length CentreDistance)
{
    private const string Part = "belt layout";

    /// <summary>Between the axes.</summary>
    public Length CentreDistance { get; } = Guard.Within(
        CentreDistance, (Pair.Driving + Pair.Driven) / 2, Length.FromMillimeters(5000), Part, "centre distance",
        "the pulleys do not touch");

    /// <summary>Angle of contact on the smaller pulley: π − 2 asin((D − d)/2C).</summary>
    public Angle WrapOfSmaller => Angle.FromRadians(Math.PI - 2 * LeanRad);

    /// <summary>Angle of contact on the larger pulley.</summary>
    public Angle WrapOfLarger => Angle.FromRadians(Math.PI + 2 * LeanRad);

    /// <summary>Free length between the pulleys.</summary>
    public Length Span => CentreDistance * Math.Cos(LeanRad);

    /// <summary>Datum length of the belt: 2 C cos α + D (π/2 + α) + d (π/2 − α), sin α = (D − d)/2C.</summary>
    public Length DatumLength => 2 * Span + Larger * (Math.PI / 2 + LeanRad) + Smaller * (Math.PI / 2 - LeanRad);

    private Length Smaller => UnitMath.Min(Pair.Driving, Pair.Driven);

    private Length Larger => UnitMath.Max(Pair.Driving, Pair.Driven);

    private double LeanRad => Math.Asin((Larger - Smaller) / (2 * CentreDistance));

    /// <summary>Angle of contact on the driving pulley.</summary>
    public Angle WrapOfDriving => Pair.Driving <= Pair.Driven ? WrapOfSmaller : WrapOfLarger;

    /// <summary>Angle of contact on the driven pulley.</summary>
    public Angle WrapOfDriven => Pair.Driving <= Pair.Driven ? WrapOfLarger : WrapOfSmaller;

    /// <summary>The layout in which a belt of a given length is taut.</summary>
    /// <param name="pair">The pulleys.</param>
    /// <param name="datumLength">Datum length of the belt.</param>
    /// <returns>The layout.</returns>
    /// <exception cref="PartException">The belt is too short for the pulleys or longer than 5 m between axes allows.</exception>
    public static BeltLayout ForLength(PulleyPair pair, Length datumLength)
    {
        var (least, most) = ((pair.Driving + pair.Driven) / 2, Length.FromMillimeters(5000));
        double Excess(double mm) => (new BeltLayout(pair, Length.FromMillimeters(mm)).DatumLength - datumLength).Millimeters;
        Guard.Within(
            datumLength, new BeltLayout(pair, least * 1.000001).DatumLength.ToUnit(UnitsNet.Units.LengthUnit.Millimeter),
            new BeltLayout(pair, most).DatumLength, Part, "belt length", "it goes round both pulleys");
        return new(pair, Length.FromMillimeters(Brent.FindRoot(Excess, least.Millimeters * 1.000001, most.Millimeters, 1e-9)));
    }
}
