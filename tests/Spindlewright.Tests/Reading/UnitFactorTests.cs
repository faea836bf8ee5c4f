using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>Conversion factors against a printed table.</summary>
public class UnitFactorTests
{
    // NIST Special Publication 811 (2008), Appendix B.8, seven printed digits. The horsepower, foot poundal (which has
    // the digits of lb ft²) and °F rows were read in a transcription of that table (second hand); the others are from
    // memory. Tolerance: half a unit of the seventh digit.
    [Theory]
    [InlineData("power", "1 hp", 7.456999e2)]
    [InlineData("power", "1 PS", 7.354988e2)]
    [InlineData("torque", "1 lbf in", 1.129848e-1)]
    [InlineData("torque", "1 lbf ft", 1.355818e0)]
    [InlineData("torque", "1 ozf in", 7.061552e-3)]
    [InlineData("force", "1 lbf", 4.448222e0)]
    [InlineData("mass", "1 lb", 4.535924e-1)]
    [InlineData("mass", "1 oz", 2.834952e-2)]
    [InlineData("moment of inertia", "1 lb ft2", 4.214011e-2)]
    [InlineData("moment of inertia", "1 lb in2", 2.926397e-4)]
    [InlineData("mass per length", "1 lb/ft", 1.488164e0)]
    [InlineData("pressure or specific force", "1 psi", 6.894757e3)]
    [InlineData("pressure or specific force", "1 ksi", 6.894757e6)]
    [InlineData("rotational speed", "1 r/min", 1.047198e-1)]
    [InlineData("speed", "1 ft/min", 5.08e-3)]
    [InlineData("temperature rise", "1 °F", 5.555556e-1)]
    [InlineData("angle", "1 deg", 1.745329e-2)]
    public void A_factor_agrees_with_the_printed_table(string kind, string text, double printed)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(printed)) - 6);
        Assert.Equal(printed, AnyKind.Named(kind).BaseValue(text), 0.5 * unit);
    }

    // Fixed points of the scales: ice and steam at 1 atm by definition of the Fahrenheit and Celsius scales.
    [Theory]
    [InlineData("32 °F", 273.15)]
    [InlineData("212 °F", 373.15)]
    [InlineData("0 °C", 273.15)]
    [InlineData("-459.67 °F", 0)]
    public void A_temperature_scale_has_its_own_zero(string text, double kelvin) =>
        Assert.Equal(kelvin, AnyKind.Named("temperature").BaseValue(text), 1e-12);
}
