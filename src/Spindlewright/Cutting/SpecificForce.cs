using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>Specific cutting force of a work material, kc = kc1.1 h^−mc.</summary>
/// <param name="Kc11">kc at a chip 1 mm thick and 1 mm wide, above 0.</param>
/// <param name="ExponentMc">mc, 0 to 0.6.</param>
/// <remarks>
/// Constants of turning (VDI 3323): margins, chisel edge and rubbing of a drill are not in them, so that they give too little
/// torque in drilling. The second opinion beside the handbook method, never a replacement.
/// </remarks>
public sealed record SpecificForce(Pressure Kc11, double ExponentMc)
{
    private const string Part = "specific cutting force";
    private static readonly double StandardHalfPointRad = Angle.FromDegrees(59).Radians;

    /// <summary>kc at a chip 1 mm thick and 1 mm wide.</summary>
    public Pressure Kc11 { get; } = Guard.Positive(Kc11, Part, "kc1.1");

    /// <summary>Exponent mc.</summary>
    public double ExponentMc { get; } = Guard.Within(ExponentMc, 0, 0.6, Part, "exponent mc");

    /// <summary>kc at a chip thickness.</summary>
    /// <param name="chipThickness">h, above 0.</param>
    /// <returns>Force over area of cut.</returns>
    /// <exception cref="PartException">The thickness is not above 0.</exception>
    public Pressure At(Length chipThickness) =>
        Kc11 * Math.Pow(Guard.Positive(chipThickness, Part, "chip thickness").Millimeters, -ExponentMc);

    /// <summary>Thickness of the chip at the lip of a drill of 118°.</summary>
    /// <param name="feedPerRevolution">Feed a revolution.</param>
    /// <returns>h = (f/2) sin 59°.</returns>
    public static Length DrillChip(Length feedPerRevolution) => feedPerRevolution / 2 * Math.Sin(StandardHalfPointRad);

    /// <summary>Torque that removing a volume a revolution takes.</summary>
    /// <param name="chipThickness">h, above 0.</param>
    /// <param name="perRevolution">Volume removed a revolution.</param>
    /// <returns>M = kc V/(2π): for a drill kc f d²/8.</returns>
    public Torque TorqueFor(Length chipThickness, Volume perRevolution) =>
        Torque.FromNewtonMeters(At(chipThickness).Pascals * perRevolution.CubicMeters / (2 * Math.PI));
}

/// <summary>Volumes of metal that a tool removes.</summary>
/// <remarks>π/4 (D² − d²) f a revolution; times the spindle speed, the removal rate.</remarks>
public static class Removal
{
    private const string Part = "removal";

    /// <summary>Volume removed a revolution.</summary>
    /// <param name="diameter">Outside diameter of the cut, above 0.</param>
    /// <param name="inside">Diameter that is a hole already, or stays as a core; 0 for none.</param>
    /// <param name="feedPerRevolution">Above 0.</param>
    /// <returns>The volume.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Volume PerRevolution(Length diameter, Length inside, Length feedPerRevolution)
    {
        var outer = Guard.Positive(diameter, Part, "diameter").Meters;
        Guard.Positive(feedPerRevolution, Part, "feed per revolution");
        var inner = Guard.Within(inside, Length.Zero, diameter, Part, "inside diameter", "the hole lies within the cut").Meters;
        return Volume.FromCubicMeters(Math.PI / 4 * (outer * outer - inner * inner) * feedPerRevolution.Meters);
    }

    /// <summary>Removal rate.</summary>
    /// <param name="perRevolution">Volume a revolution.</param>
    /// <param name="spindle">Spindle speed.</param>
    /// <returns>Volume over time.</returns>
    public static VolumeFlow Rate(Volume perRevolution, RotationalSpeed spindle) =>
        VolumeFlow.FromCubicMetersPerSecond(perRevolution.CubicMeters * spindle.RevolutionsPerSecond);
}
