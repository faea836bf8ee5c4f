using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Hazards;

/// <summary>What a turning body winds on before it stands still.</summary>
/// <param name="Turns">Turns of the body.</param>
/// <param name="Length">Length wound on.</param>
/// <param name="RollDiameter">Diameter of the roll at the end.</param>
public sealed record WoundOn(double Turns, Length Length, Length RollDiameter);

/// <summary>Wrap-in: turns and length wound on in a reaction time and a stop, and how hard a winding holds.</summary>
/// <remarks>
/// Own derivation. At n turns the roll of layers of thickness t has the diameter d + 2·n·t; L = ∫ π(d + 2·t·x) dx = π·n·(d + n·t).
/// A stop in the time ts at an even rate turns half as far as the full speed would.
/// </remarks>
public static class WrapIn
{
    private const string Part = "wrap-in";

    /// <summary>Turns, length and roll.</summary>
    /// <param name="diameter">Diameter of the bare body, above 0.</param>
    /// <param name="speed">Its speed, 0 or more.</param>
    /// <param name="reaction">From the first touch to the stop command, 0 or more.</param>
    /// <param name="stop">From the stop command to standstill, at an even rate; 0 or more.</param>
    /// <param name="layer">Thickness of what is wound; 0 leaves the growth of the roll out.</param>
    /// <returns>What is wound on.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static WoundOn Of(Length diameter, RotationalSpeed speed, Duration reaction, Duration stop, Length layer)
    {
        var turns = Guard.NotNegative(speed, Part, "speed").RevolutionsPerSecond
            * (Guard.NotNegative(reaction, Part, "reaction time").Seconds + Guard.NotNegative(stop, Part, "stop time").Seconds / 2);
        var (bare, thick) = (Guard.Positive(diameter, Part, "diameter").Meters, Guard.NotNegative(layer, Part, "thickness of a layer").Meters);
        return new(turns, Length.FromMeters(Math.PI * turns * (bare + turns * thick)), Length.FromMeters(bare + 2 * turns * thick));
    }

    /// <summary>Time in which a length is wound on where nobody stops the spindle.</summary>
    /// <param name="length">The length, above 0.</param>
    /// <param name="diameter">Diameter of the bare body, above 0.</param>
    /// <param name="speed">Its speed, above 0.</param>
    /// <param name="layer">Thickness of what is wound, 0 or more.</param>
    /// <returns>The root of π·n·(d + n·t) = L, over the speed.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Duration TimeFor(Length length, Length diameter, RotationalSpeed speed, Length layer)
    {
        var (bare, thick) = (Guard.Positive(diameter, Part, "diameter").Meters, Guard.NotNegative(layer, Part, "thickness of a layer").Meters);
        var overPi = Guard.Positive(length, Part, "length").Meters / Math.PI;
        // Written so that nothing cancels where the layer is thin.
        var turns = 2 * overPi / (bare + Math.Sqrt(bare * bare + 4 * thick * overPi));
        return Duration.FromSeconds(turns / Guard.Positive(speed, Part, "speed").RevolutionsPerSecond);
    }

    /// <summary>Pull at the one end of a winding over the hold at the other: exp(2π·μ·n).</summary>
    /// <param name="friction">Coefficient of friction, 0 or more.</param>
    /// <param name="turns">Turns, 0 or more.</param>
    /// <returns>The ratio, 1 or more.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double CapstanRatio(double friction, double turns) =>
        Math.Exp(2 * Math.PI * Guard.Within(friction, 0, 5, Part, "friction") * Guard.Within(turns, 0, 1e6, Part, "turns"));
}
