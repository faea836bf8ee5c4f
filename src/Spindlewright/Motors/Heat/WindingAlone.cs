using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors.Heat;

/// <summary>A copper winding that keeps all of its heat: the quick end of what a stalled motor does.</summary>
/// <remarks>
/// <para>J²·t = K²·ln((t2 + β)/(t1 + β)), K = 226 A·√s/mm², β = 234.5 K: the adiabatic law of IEC 60949, which also
/// underlies the factors k of IEC 60364-5-54 (from memory). J is the current density in the copper.</para>
/// <para>Holds for seconds. Iron and frame take no part, so that the time is a least one; <see cref="ThermalBody"/>, in which
/// everything takes part at once, gives a longest one.</para>
/// </remarks>
public static class WindingAlone
{
    private const string Part = "stalled winding";
    private const double CopperAmperesRootSecondsPerMm2 = 226;
    private const double CopperZeroResistanceK = 234.5;

    /// <summary>Time in which a constant current heats the winding from one temperature to another.</summary>
    /// <param name="density">Current density, above 0.</param>
    /// <param name="from">At the start, above −200 °C.</param>
    /// <param name="to">At the end; 0 s where it is not above the start.</param>
    /// <returns>The time.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Duration TimeTo(ElectricCurrentDensity density, Temperature from, Temperature to)
    {
        var amperesPerMm2 = Guard.Positive(density, Part, "current density").AmperesPerSquareMeter * 1e-6;
        var most = Temperature.FromDegreesCelsius(1000);
        Guard.Within(from, Temperature.FromDegreesCelsius(-200), most, Part, "temperature at the start");
        Guard.Within(to, Temperature.FromDegreesCelsius(-200), most, Part, "temperature at the end");
        if (to <= from) return Duration.Zero;
        var factor = AdiabaticFactor(from, to) / amperesPerMm2;
        return Duration.FromSeconds(factor * factor);
    }

    /// <summary>The factor k of a conductor between two temperatures: k = J·√t.</summary>
    /// <param name="from">Temperature at the start.</param>
    /// <param name="to">Temperature at the end, above the start.</param>
    /// <returns>Ampere root seconds a square millimetre.</returns>
    internal static double AdiabaticFactor(Temperature from, Temperature to) =>
        CopperAmperesRootSecondsPerMm2 * Math.Sqrt(Math.Log(
            (to.DegreesCelsius + CopperZeroResistanceK) / (from.DegreesCelsius + CopperZeroResistanceK)));
}
