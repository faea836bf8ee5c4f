using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>Chisel-edge factors of the handbook method at one ratio of chisel-edge length to diameter.</summary>
/// <param name="Torque">A.</param>
/// <param name="Thrust">B.</param>
/// <param name="Indentation">J, of the thrust that the chisel edge adds by pressing.</param>
public readonly record struct ChiselFactors(double Torque, double Thrust, double Indentation);

/// <summary>The factors of the handbook method for thrust and torque of a twist drill.</summary>
/// <remarks>Machinery's Handbook 31st ed. pp. 1152–1153. The tables are master; closed forms are within 0.5 %.</remarks>
public interface IDrillFactors
{
    /// <summary>Feed factor Ff.</summary>
    /// <param name="perRevolution">Feed per revolution, above 0.</param>
    /// <returns>Ff of the metric form.</returns>
    double Feed(Length perRevolution);

    /// <summary>Diameter factor of thrust FT.</summary>
    /// <param name="diameter">Drill diameter, above 0.</param>
    /// <returns>FT of the metric form.</returns>
    double ThrustDiameter(Length diameter);

    /// <summary>Diameter factor of torque FM.</summary>
    /// <param name="diameter">Drill diameter, above 0.</param>
    /// <returns>FM of the metric form.</returns>
    double TorqueDiameter(Length diameter);

    /// <summary>Chisel-edge factors.</summary>
    /// <param name="chiselOverDiameter">Chisel-edge length over drill diameter: 0.18 standard, 0.03 split point.</param>
    /// <returns>A, B and J.</returns>
    ChiselFactors Chisel(double chiselOverDiameter);
}

/// <summary>The closed forms behind the tables (Shaw and Oxford, Trans. ASME 79, 1957).</summary>
/// <remarks>
/// Ff = f^0.8; FT = D^0.8; FM = D^1.8 (f and D in mm); A = (1 − c²)/(1 + c)^0.2 + 3.2 c^1.8;
/// B = (1 − c)/(1 + c)^0.2 + 2.2 c^0.8; J = c². Within 0.5 % (feed, diameter), 0.006 (A), 0.013 (B), 0.003 (J) of the
/// printed tables, two misprints apart.
/// </remarks>
public sealed class ClosedFormFactors : IDrillFactors
{
    private const string Part = "drill factors";

    /// <inheritdoc/>
    public double Feed(Length perRevolution) =>
        Math.Pow(Guard.Positive(perRevolution, Part, "feed per revolution").Millimeters, 0.8);

    /// <inheritdoc/>
    public double ThrustDiameter(Length diameter) =>
        Math.Pow(Guard.Positive(diameter, Part, "diameter").Millimeters, 0.8);

    /// <inheritdoc/>
    public double TorqueDiameter(Length diameter) =>
        Math.Pow(Guard.Positive(diameter, Part, "diameter").Millimeters, 1.8);

    /// <inheritdoc/>
    public ChiselFactors Chisel(double chiselOverDiameter)
    {
        var c = Guard.Within(chiselOverDiameter, 0.01, 0.5, Part, "chisel-edge length over diameter");
        return new(
            (1 - c * c) / Math.Pow(1 + c, 0.2) + 3.2 * Math.Pow(c, 1.8),
            (1 - c) / Math.Pow(1 + c, 0.2) + 2.2 * Math.Pow(c, 0.8),
            c * c);
    }
}
