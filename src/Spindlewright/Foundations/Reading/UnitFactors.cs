namespace Spindlewright.Foundations.Reading;

/// <summary>The exact definitions from which every conversion factor is made.</summary>
/// <remarks>
/// Decimal, so that products of definitions stay exact: the international yard and pound (1959), the standard
/// acceleration of free fall (1901), and the horsepower of 550 foot pounds-force a second. UnitsNet 5 rounds the
/// horsepower (745.69 W), the foot-pound and the pound square inch, so those are converted here.
/// </remarks>
internal static class UnitFactors
{
    public const decimal InchM = 0.0254m;
    public const decimal FootM = 12 * InchM;
    public const decimal PoundKg = 0.45359237m;
    public const decimal FreeFallMPerS2 = 9.80665m;
    public const decimal PoundForceN = PoundKg * FreeFallMPerS2;
    public const decimal OunceForceN = PoundForceN / 16;
    public const decimal HorsepowerW = 550 * FootM * PoundForceN;
    public const decimal MetricHorsepowerW = 75 * FreeFallMPerS2;
}
