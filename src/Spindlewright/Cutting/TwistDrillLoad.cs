using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>How a twist drill is ground and how worn it is.</summary>
/// <param name="ChiselOverDiameter">Chisel-edge length over diameter: 0.18 standard, 0.03 split point.</param>
/// <param name="Wear">W: 1.0 sharp, 1.3 normal drilling, 1.5 very dull or hard to machine.</param>
public sealed record DrillCondition(double ChiselOverDiameter, double Wear)
{
    private const string Part = "drill";

    /// <summary>Standard point, normal wear.</summary>
    public static DrillCondition Usual { get; } = new(0.18, 1.3);

    /// <summary>Chisel-edge length over diameter.</summary>
    public double ChiselOverDiameter { get; } =
        Guard.Within(ChiselOverDiameter, 0.03, 0.4, Part, "chisel-edge length over diameter", "the handbook's table");

    /// <summary>Wear factor W.</summary>
    public double Wear { get; } = Guard.Within(Wear, 1, 2, Part, "wear factor");
}

/// <summary>Thrust, torque and power of a twist drill by the handbook method, with its factors.</summary>
/// <remarks>
/// T[N] = 0.05029 Kd Ff FT B W + 0.006895 Kd D² J W; M[N·m] = 2.5145·10⁻⁵ Kd Ff FM A W; P = M ω; D and f in mm.
/// The constants are those of the inch form turned exactly; the handbook prints 0.05, 0.007 and 0.000025.
/// Source: Machinery's Handbook 31st ed. pp. 1152–1153.
/// </remarks>
public sealed record TwistDrillLoad
{
    private const string Part = "drill load";

    /// <summary>Least diameter of the handbook's table.</summary>
    public static Length LeastDiameter { get; } = Length.FromMillimeters(1.6);

    /// <summary>Largest diameter of the handbook's table.</summary>
    public static Length MostDiameter { get; } = Length.FromMillimeters(76);

    /// <summary>Least feed a revolution of the handbook's table.</summary>
    public static Length LeastFeed { get; } = Length.FromMillimeters(0.01);

    /// <summary>Largest feed a revolution of the handbook's table.</summary>
    public static Length MostFeed { get; } = Length.FromMillimeters(1.25);

    /// <summary>Largest pilot over drill diameter that the pilot formula is used for; above it the lips are too narrow. Own choice.</summary>
    public const double MostPilotOverDiameter = 0.995;

    /// <summary>Drill diameter.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Feed per revolution.</summary>
    public required Length FeedPerRevolution { get; init; }

    /// <summary>Ff.</summary>
    public required double FeedFactor { get; init; }

    /// <summary>FT.</summary>
    public required double ThrustDiameterFactor { get; init; }

    /// <summary>FM.</summary>
    public required double TorqueDiameterFactor { get; init; }

    /// <summary>A, B and J; with a pilot hole its brackets and no J.</summary>
    public required ChiselFactors Chisel { get; init; }

    /// <summary>Diameter of the pilot hole; null for none.</summary>
    public Length? Pilot { get; init; }

    /// <summary>Thrust along the spindle.</summary>
    public required Force Thrust { get; init; }

    /// <summary>Cutting torque.</summary>
    public required Torque Torque { get; init; }

    /// <summary>Power at the drill for a spindle speed.</summary>
    /// <param name="spindle">Spindle speed.</param>
    /// <returns>Torque times angular speed.</returns>
    public Power Power(RotationalSpeed spindle) =>
        UnitsNet.Power.FromWatts(Torque.NewtonMeters * spindle.RadiansPerSecond);

    /// <summary>Power at the motor for a spindle speed.</summary>
    /// <param name="spindle">Spindle speed.</param>
    /// <param name="efficiency">E of the machine: 0.9 for a direct belt, above 0 and up to 1.</param>
    /// <returns>Power at the drill over E.</returns>
    /// <exception cref="PartException">The efficiency is out of range.</exception>
    public Power MotorPower(RotationalSpeed spindle, double efficiency) =>
        UnitsNet.Power.FromWatts(
            (double)Power(spindle).Watts
            / Guard.Within(Guard.Positive(efficiency, Part, "machine efficiency"), 0, 1, Part, "machine efficiency"));

    /// <summary>Computes the load.</summary>
    /// <param name="factors">Tables or closed forms.</param>
    /// <param name="material">The work.</param>
    /// <param name="diameter">1.6 mm to 76 mm, the span of the tables.</param>
    /// <param name="feedPerRevolution">0.01 mm to 1.25 mm, the span of the tables.</param>
    /// <param name="condition">Point and wear.</param>
    /// <param name="pilot">Diameter of the pilot hole, at least as wide as the chisel edge; null for none.</param>
    /// <returns>The load.</returns>
    /// <exception cref="PartException">A value is off the tables, or the pilot does not clear the chisel edge.</exception>
    /// <remarks>
    /// With a pilot hole, k = pilot / diameter: A = (1 − k²)/(1 + k)^0.2, B = (1 − k)/(1 + k)^0.2, J = 0 (Shaw and Oxford,
    /// Trans. ASME 79, 1957, from memory).
    /// </remarks>
    public static TwistDrillLoad Of(
        IDrillFactors factors, CuttingMaterial material, Length diameter, Length feedPerRevolution,
        DrillCondition condition, Length? pilot = null)
    {
        Guard.Within(diameter, LeastDiameter, MostDiameter, Part, "diameter", "the handbook's table");
        Guard.Within(feedPerRevolution, LeastFeed, MostFeed, Part, "feed per revolution", "the handbook's table");
        var (feed, thrustD, torqueD) =
            (factors.Feed(feedPerRevolution), factors.ThrustDiameter(diameter), factors.TorqueDiameter(diameter));
        var chisel = pilot is { } hole
            ? PilotFactors(hole, diameter, condition)
            : factors.Chisel(condition.ChiselOverDiameter);
        var (mm, wear) = (diameter.Millimeters, condition.Wear);
        var thrustN = material.ThrustFactor.Value * wear
            * (InchForm.ThrustN * feed * thrustD * chisel.Thrust + InchForm.IndentationN * mm * mm * chisel.Indentation);
        return new()
        {
            Diameter = diameter,
            FeedPerRevolution = feedPerRevolution,
            FeedFactor = feed,
            ThrustDiameterFactor = thrustD,
            TorqueDiameterFactor = torqueD,
            Chisel = chisel,
            Pilot = pilot,
            Thrust = Force.FromNewtons(thrustN),
            Torque = UnitsNet.Torque.FromNewtonMeters(
                InchForm.TorqueNm * material.TorqueFactor.Value * feed * torqueD * chisel.Torque * wear),
        };
    }

    private static ChiselFactors PilotFactors(Length pilot, Length diameter, DrillCondition condition)
    {
        Guard.Within(
            pilot, diameter * condition.ChiselOverDiameter, diameter * MostPilotOverDiameter, Part, "pilot hole",
            "it clears the chisel edge and leaves the lips something to cut");
        var k = pilot / diameter;
        var narrowing = Math.Pow(1 + k, 0.2);
        return new((1 - k * k) / narrowing, (1 - k) / narrowing, 0);
    }

    /// <summary>
    /// The constants 2, 1 and 1 of the inch form in newtons and newton-metres for feeds and diameters in millimetres.
    /// </summary>
    private static class InchForm
    {
        private const double PoundForceN = 4.4482216152605;
        private const double InchMm = 25.4;

        // Ff·FT carries in^0.8 · in^0.8 = in^1.6, Ff·FM carries in^2.6, D² carries in².
        internal static readonly double ThrustN = 2 * PoundForceN / Math.Pow(InchMm, 1.6);
        internal static readonly double IndentationN = PoundForceN / (InchMm * InchMm);
        internal static readonly double TorqueNm = PoundForceN * InchMm / 1000 / Math.Pow(InchMm, 2.6);
    }
}
