namespace Spindlewright.Foundations.Reading;

/// <summary>Every kind of quantity that people type, with its units: the one table of spellings.</summary>
/// <remarks>
/// Letter case counts, since mW and MW differ by a thousand million; abbreviations of words (hp, rpm) may also stand in
/// capitals. <see cref="UnitsPage"/> prints the table.
/// </remarks>
public static partial class QuantityKinds
{
    private static readonly Lazy<IReadOnlyList<QuantityKind>> Listed = new(InOrder);

    /// <summary>All kinds, in the order of the reference page.</summary>
    public static IReadOnlyList<QuantityKind> All => Listed.Value;

    private static QuantityKind[] InOrder() =>
    [
        Power, ApparentPower, Energy,
        Voltage, Current, Frequency, Resistance, Reactance, Inductance, Capacitance,
        RotationalSpeed, Torque, MomentOfInertia, Force, Mass, MassPerLength, Pressure,
        Length, Angle, Speed, FeedPerRevolution, Hardness,
        Temperature, TemperatureRise, Duration, Ratio, Number,
    ];
}
