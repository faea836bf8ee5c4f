using UnitsNet;
using static Spindlewright.Foundations.Reading.UnitFactors;
using static Spindlewright.Foundations.Reading.Units;

namespace Spindlewright.Foundations.Reading;

public static partial class QuantityKinds
{
    private const double RadPerSInOneRpm = 2 * Math.PI / 60;

    /// <summary>Rotational speed; base unit radian per second.</summary>
    /// <remarks>
    /// Kept in r/min as typed. UnitsNet's own conversion to rad/s rounds 2π to 11 digits;
    /// <see cref="QuantityKind{T}.ToBase"/> of this kind does not.
    /// </remarks>
    public static QuantityKind<RotationalSpeed> RotationalSpeed { get; } = new(
        "rotational speed", "rad/s", UnitsNet.RotationalSpeed.FromRadiansPerSecond, ExactRadPerS,
        [
            new UnitRow<RotationalSpeed>(
                "r/min", RadPerSInOneRpm,
                ["r/min", "rpm", "RPM", "1/min", "/min", "rev/min", "min-1", "min^-1", "U/min"],
                UnitsNet.RotationalSpeed.FromRevolutionsPerMinute)
            { Definition = "2π/60 rad/s" },
            new UnitRow<RotationalSpeed>(
                "r/s", 2 * Math.PI, ["r/s", "rev/s"],
                UnitsNet.RotationalSpeed.FromRevolutionsPerSecond)
            { Definition = "2π rad/s" },
            Unit<RotationalSpeed>("rad/s", 1, UnitsNet.RotationalSpeed.FromRadiansPerSecond, "1 rad/s"),
        ],
        "r/min", "r/min");

    /// <summary>Torque; base unit newton metre.</summary>
    public static QuantityKind<Torque> Torque { get; } = new(
        "torque", "N·m", UnitsNet.Torque.FromNewtonMeters, torque => torque.NewtonMeters,
        [
            Product<Torque>("N", "m", 1, UnitsNet.Torque.FromNewtonMeters, "1 N × 1 m"),
            Product<Torque>("N", "cm", 0.01m, UnitsNet.Torque.FromNewtonCentimeters, "0.01 N·m"),
            Product<Torque>("kgf", "m", FreeFallMPerS2, UnitsNet.Torque.FromKilogramForceMeters, "9.80665 N·m")
                .NotAs("kg m", "kgm", "kg-m"),
            Product<Torque>("kgf", "cm", FreeFallMPerS2 / 100, UnitsNet.Torque.FromKilogramForceCentimeters,
                "0.0980665 N·m").NotAs("kg cm", "kgcm", "kg-cm"),
            Product<Torque>("lbf", "in", PoundForceN * InchM, UnitsNet.Torque.FromPoundForceInches,
                "1 lbf × 1 in, about 0.112985 N·m").Or("in", "lbf").Or("lb", "in").Or("in", "lb"),
            Product<Torque>("lbf", "ft", PoundForceN * FootM, null, "1 lbf × 1 ft, about 1.35582 N·m")
                .Or("ft", "lbf").Or("lb", "ft").Or("ft", "lb"),
            Product<Torque>("ozf", "in", OunceForceN * InchM, null, "1/16 lbf × 1 in, about 0.00706155 N·m")
                .Or("in", "ozf").Or("oz", "in").Or("in", "oz"),
        ],
        "N·m", "lbf·in, lbf·ft from 100",
        note: "`lb ft` and `oz in` are read as pound-force and ounce-force, as the trade writes them.");

    /// <summary>Mass moment of inertia J; base unit kilogram square metre.</summary>
    public static QuantityKind<MassMomentOfInertia> MomentOfInertia { get; } = new(
        "moment of inertia", "kg·m²", MassMomentOfInertia.FromKilogramSquareMeters, j => j.KilogramSquareMeters,
        [
            Product<MassMomentOfInertia>("kg", "m²", 1, MassMomentOfInertia.FromKilogramSquareMeters, "1 kg × 1 m²"),
            Product<MassMomentOfInertia>("kg", "cm²", 0.0001m, null, "0.0001 kg·m²"),
            Product<MassMomentOfInertia>("g", "cm²", 0.000_000_1m, null, "10⁻⁷ kg·m²"),
            Product<MassMomentOfInertia>("lb", "in²", PoundKg * InchM * InchM, null, "1 lb × 1 in²"),
            Product<MassMomentOfInertia>("lb", "ft²", PoundKg * FootM * FootM, null, "1 lb × 1 ft²"),
        ],
        "kg·cm², kg·m² from 0.01", "lb·in², lb·ft² from 0.1",
        note: "This is J. A flywheel effect GD² or WK² given as GD² is four times J: divide it by 4.");

    /// <summary>Force; base unit newton.</summary>
    public static QuantityKind<Force> Force { get; } = new(
        "force", "N", UnitsNet.Force.FromNewtons, force => force.Newtons,
        [
            Unit<Force>("N", 1, UnitsNet.Force.FromNewtons, "1 N").NotAs("newton", "newtons"),
            Unit<Force>("daN", 10, UnitsNet.Force.FromDecanewtons, "10 N"),
            Unit<Force>("kN", 1000, UnitsNet.Force.FromKilonewtons, "1000 N"),
            Unit<Force>("kgf", FreeFallMPerS2, UnitsNet.Force.FromKilogramsForce, "9.80665 N", "kp").NotAs("kg"),
            Fractional<Force>("lbf", PoundForceN, UnitsNet.Force.FromPoundsForce, "0.45359237 kgf, about 4.44822 N")
                .NotAs("lb", "lbs"),
        ],
        "N, kN from 10000", "lbf");

    /// <summary>Mass; base unit kilogram.</summary>
    public static QuantityKind<Mass> Mass { get; } = new(
        "mass", "kg", UnitsNet.Mass.FromKilograms, mass => mass.Kilograms,
        [
            Unit<Mass>("kg", 1, UnitsNet.Mass.FromKilograms, "1 kg").NotAs("kilo", "kilos"),
            Unit<Mass>("g", 0.001m, UnitsNet.Mass.FromGrams, "0.001 kg").NotAs("gr", "gm"),
            Fractional<Mass>("lb", PoundKg, UnitsNet.Mass.FromPounds, "0.45359237 kg", "lbs", "lb."),
            Fractional<Mass>("oz", PoundKg / 16, UnitsNet.Mass.FromOunces, "1/16 lb", "oz."),
        ],
        "g, kg from 1", "oz, lb from 0.4");

    /// <summary>Mass per length, of a belt; base unit kilogram per metre.</summary>
    public static QuantityKind<LinearDensity> MassPerLength { get; } = new(
        "mass per length", "kg/m", LinearDensity.FromKilogramsPerMeter, density => density.KilogramsPerMeter,
        [
            Unit<LinearDensity>("kg/m", 1, LinearDensity.FromKilogramsPerMeter, "1 kg/m"),
            Unit<LinearDensity>("g/m", 0.001m, LinearDensity.FromGramsPerMeter, "0.001 kg/m"),
            Unit<LinearDensity>("lb/ft", PoundKg / FootM, null, "1 lb / 1 ft"),
        ],
        "kg/m", "lb/ft");

    /// <summary>Pressure, stress and specific cutting force; base unit pascal.</summary>
    public static QuantityKind<Pressure> Pressure { get; } = new(
        "pressure or specific force", "Pa", UnitsNet.Pressure.FromPascals, pressure => pressure.Pascals,
        [
            Unit<Pressure>("N/mm²", 1_000_000, UnitsNet.Pressure.FromNewtonsPerSquareMillimeter, "1 MPa"),
            Unit<Pressure>("MPa", 1_000_000, UnitsNet.Pressure.FromMegapascals, "10⁶ Pa"),
            Unit<Pressure>("GPa", 1_000_000_000, UnitsNet.Pressure.FromGigapascals, "10⁹ Pa"),
            Unit<Pressure>("kPa", 1000, UnitsNet.Pressure.FromKilopascals, "1000 Pa"),
            Unit<Pressure>("Pa", 1, UnitsNet.Pressure.FromPascals, "1 Pa"),
            Unit<Pressure>("bar", 100_000, UnitsNet.Pressure.FromBars, "10⁵ Pa"),
            Unit<Pressure>("psi", PoundForceN / (InchM * InchM), UnitsNet.Pressure.FromPoundsForcePerSquareInch,
                "1 lbf/in²", "lbf/in²"),
            Unit<Pressure>("ksi", 1000 * PoundForceN / (InchM * InchM), null, "1000 psi"),
        ],
        "N/mm²", "psi, ksi from 1e8");

    private static double ExactRadPerS(RotationalSpeed speed) => speed.Unit switch
    {
        UnitsNet.Units.RotationalSpeedUnit.RevolutionPerMinute => speed.Value * RadPerSInOneRpm,
        UnitsNet.Units.RotationalSpeedUnit.RevolutionPerSecond => speed.Value * 2 * Math.PI,
        _ => speed.RadiansPerSecond,
    };
}
