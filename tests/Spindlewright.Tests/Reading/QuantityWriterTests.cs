using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>How values are displayed.</summary>
public class QuantityWriterTests
{
    [Theory]
    [InlineData("power", 750, "0.75 kW", "1.006 hp")]
    [InlineData("power", 42.3456, "42.35 W", "0.05679 hp")]
    [InlineData("power", 99.999, "0.1 kW", "0.1341 hp")]
    [InlineData("voltage", 230, "230 V", "230 V")]
    [InlineData("voltage", 0, "0 V", "0 V")]
    [InlineData("torque", 5.0344, "5.034 N·m", "44.56 lbf·in")]
    [InlineData("torque", -5.0344, "-5.034 N·m", "-44.56 lbf·in")]
    [InlineData("length", 0.0127, "12.7 mm", "0.5 in")]
    [InlineData("length", 0, "0 mm", "0 in")]
    [InlineData("rotational speed", 148.702, "1420 r/min", "1420 r/min")]
    [InlineData("speed", 0.5, "30 m/min", "98.43 ft/min")]
    [InlineData("speed", 12, "12 m/s", "2362 ft/min")]
    [InlineData("temperature", 293.15, "20 °C", "68 °F")]
    [InlineData("temperature rise", 80, "80 K", "144 °F")]
    [InlineData("feed per revolution", 0.00013, "0.13 mm/rev", "0.005118 in/rev")]
    [InlineData("moment of inertia", 0.0018, "18 kg·cm²", "6.151 lb·in²")]
    [InlineData("time", 0.000003, "3 µs", "3 µs")]
    [InlineData("time", 1800, "30 min", "30 min")]
    [InlineData("time", 0, "0 s", "0 s")]
    [InlineData("ratio", 0.78, "0.78", "0.78")]
    [InlineData("hardness", 200, "200 HB", "200 HB")]
    [InlineData("capacitance", 0.00047, "470 µF", "470 µF")]
    public void A_value_is_shown_in_the_unit_that_suits_its_size(
        string kind, double baseValue, string metric, string inch)
    {
        Assert.Equal(metric, AnyKind.Named(kind).Write(baseValue, MeasureSystem.Metric));
        Assert.Equal(inch, AnyKind.Named(kind).Write(baseValue, MeasureSystem.Inch));
    }

    [Theory]
    [InlineData(0, 4, "0")]
    [InlineData(1234.56, 4, "1235")]
    [InlineData(123456, 4, "123500")]
    [InlineData(0.00012345, 3, "0.000123")]
    [InlineData(1.2e-7, 4, "1.2e-7")]
    [InlineData(3.4e20, 4, "3.4e20")]
    [InlineData(0.1 + 0.2, 15, "0.3")]
    [InlineData(double.NaN, 4, "not a number")]
    [InlineData(double.PositiveInfinity, 4, "unlimited")]
    public void A_number_keeps_so_many_digits_and_no_needless_zero(double value, int digits, string wanted) =>
        Assert.Equal(wanted, QuantityWriter.Number(value, digits));
}
