using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Belts;

/// <summary>Static tension of a belt from the force that pushes the middle of its span aside.</summary>
/// <param name="Force">Force across the span at its middle, above 0.</param>
/// <param name="Deflection">How far it moves there, above 0 and below an eighth of the span.</param>
/// <param name="Span">Free length between the pulleys.</param>
/// <param name="Spread">Uncertainty of force and of deflection as read, either way, 0 to 0.5.</param>
/// <remarks>
/// A string: P = 2 F0 sin α, tan α = 2 y / span, so F0 ≈ P span/(4 y); 16 P at the usual 1/64 of the span. The belt's own
/// stiffness is left out, so that a short stiff belt seems tighter than it is.
/// </remarks>
public sealed record BeltTension(Force Force, Length Deflection, Length Span, double Spread)
{
    private const string Part = "belt tension";

    /// <summary>Force at the middle.</summary>
    public Force Force { get; } = Guard.Positive(Force, Part, "deflection force");

    /// <summary>Deflection at the middle.</summary>
    public Length Deflection { get; } = Guard.Within(
        Guard.Positive(Deflection, Part, "deflection"), Length.Zero, Span / 8, Part, "deflection", "an eighth of the span at most");

    /// <summary>Free length.</summary>
    public Length Span { get; } = Guard.Positive(Span, Part, "span");

    /// <summary>Uncertainty of each reading.</summary>
    public double Spread { get; } = Guard.Within(Spread, 0, 0.5, Part, "spread of a reading");

    /// <summary>Static tension of one strand.</summary>
    public Force Static => Force / (2 * Math.Sin(Math.Atan(2 * (Deflection / Span))));

    /// <summary>Static tension with both readings off the same way: least and most.</summary>
    public (Force Least, Force Most) Range => (
        Static * ((1 - Spread) / (1 + Spread)), Static * ((1 + Spread) / (1 - Spread)));

    /// <summary>Force that a wanted static tension takes at a deflection of 1/64 of the span.</summary>
    /// <param name="wanted">Static tension of one strand.</param>
    /// <returns>Force at the middle of the span.</returns>
    public static Force ForceFor(Force wanted) => wanted * (2 * Math.Sin(Math.Atan(2.0 / 64)));
}
