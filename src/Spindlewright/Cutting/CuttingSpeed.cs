using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>Cutting speed and spindle speed.</summary>
/// <remarks>v = π D n. Source: definition.</remarks>
public static class CuttingSpeed
{
    private const string Part = "cutting speed";

    /// <summary>Spindle speed that gives a cutting speed at the outside of a tool.</summary>
    /// <param name="cuttingSpeed">Above 0.</param>
    /// <param name="diameter">Tool diameter, above 0.</param>
    /// <returns>Spindle speed.</returns>
    /// <exception cref="PartException">A value is not above 0.</exception>
    public static RotationalSpeed SpindleSpeed(Speed cuttingSpeed, Length diameter)
    {
        Guard.Positive(cuttingSpeed, Part, "cutting speed");
        Guard.Positive(diameter, Part, "diameter");
        return RotationalSpeed.FromRevolutionsPerSecond(cuttingSpeed.MetersPerSecond / (Math.PI * diameter.Meters));
    }

    /// <summary>Cutting speed at the outside of a tool.</summary>
    /// <param name="spindle">Spindle speed.</param>
    /// <param name="diameter">Tool diameter, above 0.</param>
    /// <returns>Cutting speed.</returns>
    /// <exception cref="PartException">The diameter is not above 0.</exception>
    public static Speed Of(RotationalSpeed spindle, Length diameter)
    {
        Guard.Positive(diameter, Part, "diameter");
        return Speed.FromMetersPerSecond(Math.PI * diameter.Meters * spindle.RevolutionsPerSecond);
    }
}
