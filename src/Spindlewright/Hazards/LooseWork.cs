using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Hazards;

/// <summary>A rectangular plate that the tool may take round.</summary>
/// <param name="Length">Its long side, 10 mm to 3 m.</param>
/// <param name="Width">Its other side, 5 mm to 3 m.</param>
/// <param name="Thickness">0.2 mm to 500 mm.</param>
/// <param name="Offset">From the hole's centre to the nearer short edge, on the middle line; 0 to half the long side.</param>
/// <param name="KilogramsPerCubicMetre">Density, 100 to 25 000 kg/m³.</param>
public sealed record LoosePlate(Length Length, Length Width, Length Thickness, Length Offset, double KilogramsPerCubicMetre)
{
    private const string Part = "loose work";
    private static readonly Length Most = Length.FromMeters(3);

    /// <summary>Its long side.</summary>
    public Length Length { get; } = Guard.Within(Length, Length.FromMillimeters(10), Most, Part, "length");

    /// <summary>Its other side.</summary>
    public Length Width { get; } = Guard.Within(Width, Length.FromMillimeters(5), Most, Part, "width");

    /// <summary>Its thickness.</summary>
    public Length Thickness { get; } = Guard.Within(Thickness, Length.FromMillimeters(0.2), Length.FromMillimeters(500), Part, "thickness");

    /// <summary>From the hole's centre to the nearer short edge.</summary>
    public Length Offset { get; } = Guard.Within(Offset, Length.Zero, Length / 2, Part, "offset");

    /// <summary>Density.</summary>
    public double KilogramsPerCubicMetre { get; } = Guard.Within(KilogramsPerCubicMetre, 100, 25_000, Part, "density");

    /// <summary>Mass; the hole is left in.</summary>
    public Mass Mass => Mass.FromKilograms(KilogramsPerCubicMetre * Length.Meters * Width.Meters * Thickness.Meters);

    /// <summary>Moment of inertia about the hole: m·(l² + w²)/12 + m·(l/2 − e)².</summary>
    public MassMomentOfInertia Inertia
    {
        get
        {
            var (l, w, arm) = (Length.Meters, Width.Meters, Length.Meters / 2 - Offset.Meters);
            return MassMomentOfInertia.FromKilogramSquareMeters(Mass.Kilograms * ((l * l + w * w) / 12 + arm * arm));
        }
    }

    /// <summary>From the hole to the farthest corner.</summary>
    public Length EdgeRadius => Length.FromMeters(double.Hypot(Length.Meters - Offset.Meters, Width.Meters / 2));

    /// <summary>Speed of the farthest corner where the plate turns with the spindle.</summary>
    /// <param name="spindle">Spindle speed.</param>
    /// <returns>ω times the edge radius.</returns>
    public Speed EdgeSpeed(RotationalSpeed spindle) => Speed.FromMetersPerSecond(spindle.RadiansPerSecond * EdgeRadius.Meters);
}

/// <summary>What holds a workpiece against a torque.</summary>
public static class Holding
{
    private const string Part = "holding";

    /// <summary>Force on a stop pin or bar.</summary>
    /// <param name="torque">0 or more.</param>
    /// <param name="distance">From the spindle's axis to the line of the force, above 0.</param>
    /// <returns>T/a.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Force AtPin(Torque torque, Length distance) => Force.FromNewtons(
        Guard.NotNegative(torque, Part, "torque").NewtonMeters / Guard.Positive(distance, Part, "distance").Meters);

    /// <summary>Least distance of a stop that is to bear no more than a force.</summary>
    /// <param name="torque">0 or more.</param>
    /// <param name="force">Above 0.</param>
    /// <returns>T/F.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Length PinDistance(Torque torque, Force force) => Length.FromMeters(
        Guard.NotNegative(torque, Part, "torque").NewtonMeters / Guard.Positive(force, Part, "force").Newtons);

    /// <summary>Clamping force, all clamps together, that holds by friction alone.</summary>
    /// <param name="torque">0 or more.</param>
    /// <param name="distance">Mean distance of the clamps from the spindle's axis, above 0.</param>
    /// <param name="friction">Between work and table or clamp, one face counted, 0.02 to 1.</param>
    /// <returns>T/(μ·a).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Force ByFriction(Torque torque, Length distance, double friction) =>
        AtPin(torque, distance) / Guard.Within(friction, 0.02, 1, Part, "friction");
}
