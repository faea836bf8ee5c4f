using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Hands;

/// <summary>The hands and the reaction that the study compares with.</summary>
/// <param name="WeakPercentile">Percentile of the weak hand, 1 to 50.</param>
/// <param name="StrongPercentile">Percentile of the strong hand, 50 to 99.</param>
/// <param name="LongestReaction">The longest reaction time considered, 0.15 s to 10 s.</param>
public sealed record Person(double WeakPercentile, double StrongPercentile, Duration LongestReaction)
{
    private const string Part = "person";

    /// <summary>Percentile of the weak hand.</summary>
    public double WeakPercentile { get; } = Guard.Within(WeakPercentile, 1, 50, Part, "percentile of the weak hand");

    /// <summary>Percentile of the strong hand.</summary>
    public double StrongPercentile { get; } =
        Guard.Within(StrongPercentile, 50, 99, Part, "percentile of the strong hand");

    /// <summary>The longest reaction time considered.</summary>
    public Duration LongestReaction { get; } = Guard.Within(
        LongestReaction, Duration.FromSeconds(0.15), Duration.FromSeconds(10), Part, "longest reaction time");

    /// <summary>Spindle speed at which one whole turn passes in the longest reaction time.</summary>
    public RotationalSpeed OneTurnSpeed => RotationalSpeed.FromRevolutionsPerSecond(1 / LongestReaction.Seconds);
}

/// <summary>Force at the surface of a turning body: F = 2 T / d.</summary>
public static class SurfaceForce
{
    /// <summary>Tangential force.</summary>
    /// <param name="torque">Torque on the body.</param>
    /// <param name="diameter">Diameter of the body, above 0.</param>
    /// <returns>2 T / d.</returns>
    /// <exception cref="PartException">The diameter is not above 0.</exception>
    public static Force Of(Torque torque, Length diameter) =>
        Force.FromNewtons(2 * torque.NewtonMeters / Guard.Positive(diameter, "surface", "diameter").Meters);
}
