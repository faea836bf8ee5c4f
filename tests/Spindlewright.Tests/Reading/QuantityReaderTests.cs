using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>Good and bad spellings of values with units.</summary>
public class QuantityReaderTests
{
    // Base values are written out, not computed; definitions are those of docs/units.md.
    [Theory]
    [InlineData("power", "0.75 kW", 750)]
    [InlineData("power", "0.75kW", 750)]
    [InlineData("power", "  0.75 \t kW  ", 750)]
    [InlineData("power", "0.75\u00A0kW", 750)]
    [InlineData("power", ".75 kW", 750)]
    [InlineData("power", "+0.75 kW", 750)]
    [InlineData("power", "-0.75 kW", -750)]
    [InlineData("power", "\u22120.75 kW", -750)]
    [InlineData("power", "7.5e-1 kW", 750)]
    [InlineData("power", "7.5E2 W", 750)]
    [InlineData("power", "1 hp", 745.69987158227022)]
    [InlineData("power", "1 HP", 745.69987158227022)]
    [InlineData("power", "3/4 hp", 559.27490368670267)]
    [InlineData("power", "1 1/2 hp", 1118.5498073734053)]
    [InlineData("power", "1 PS", 735.49875)]
    [InlineData("voltage", "230V", 230)]
    [InlineData("voltage", "400 VAC", 400)]
    [InlineData("voltage", "0 V", 0)]
    [InlineData("current", "2.8 A", 2.8)]
    [InlineData("current", "30 mA", 0.03)]
    [InlineData("frequency", "50Hz", 50)]
    [InlineData("frequency", "8 kHz", 8000)]
    [InlineData("rotational speed", "1500 r/min", 157.07963267948966)]
    [InlineData("rotational speed", "1500rpm", 157.07963267948966)]
    [InlineData("rotational speed", "1500 RPM", 157.07963267948966)]
    [InlineData("rotational speed", "1500 1/min", 157.07963267948966)]
    [InlineData("rotational speed", "1500 1 / min", 157.07963267948966)]
    [InlineData("rotational speed", "31/min", 3.2463124087094526)]
    [InlineData("rotational speed", "1500/min", 157.07963267948966)]
    [InlineData("rotational speed", "1500 min⁻¹", 157.07963267948966)]
    [InlineData("rotational speed", "1500 rev per min", 157.07963267948966)]
    [InlineData("rotational speed", "2 rad/s", 2)]
    [InlineData("length", "71 mm", 0.071)]
    [InlineData("length", "7/8 in", 0.022225)]
    [InlineData("length", "7/8\"", 0.022225)]
    [InlineData("length", "1 1/4 in", 0.03175)]
    [InlineData("length", "1-1/4 in", 0.03175)]
    [InlineData("length", "-1 1/4 in", -0.03175)]
    [InlineData("length", ".250 inch", 0.00635)]
    [InlineData("length", "5 thou", 0.000127)]
    [InlineData("length", "3 µm", 3e-6)]
    [InlineData("length", "3 \u03BCm", 3e-6)]
    [InlineData("length", "3 um", 3e-6)]
    [InlineData("torque", "5 N m", 5)]
    [InlineData("torque", "5 Nm", 5)]
    [InlineData("torque", "5 N·m", 5)]
    [InlineData("torque", "5 N\u22C5m", 5)]
    [InlineData("torque", "5N.m", 5)]
    [InlineData("torque", "5 N-m", 5)]
    [InlineData("torque", "5 N*m", 5)]
    [InlineData("torque", "100 lbf in", 11.29848290276167)]
    [InlineData("torque", "100 lbf·in", 11.29848290276167)]
    [InlineData("torque", "100 in lbf", 11.29848290276167)]
    [InlineData("torque", "100 in-lb", 11.29848290276167)]
    [InlineData("torque", "10 lbf ft", 13.558179483314004)]
    [InlineData("torque", "10 ft·lb", 13.558179483314004)]
    [InlineData("torque", "1 kgf m", 9.80665)]
    [InlineData("force", "1.5 kN", 1500)]
    [InlineData("force", "1 lbf", 4.4482216152605)]
    [InlineData("force", "1 kp", 9.80665)]
    [InlineData("mass", "2 lb", 0.90718474)]
    [InlineData("mass", "8 oz", 0.226796185)]
    [InlineData("resistance", "9.5 ohm", 9.5)]
    [InlineData("resistance", "9.5 Ω", 9.5)]
    [InlineData("resistance", "9.5\u2126", 9.5)]
    [InlineData("resistance", "40 mΩ", 0.04)]
    [InlineData("reactance", "210 ohm", 210)]
    [InlineData("moment of inertia", "0.0018 kg m2", 0.0018)]
    [InlineData("moment of inertia", "0.0018 kg·m²", 0.0018)]
    [InlineData("moment of inertia", "0.0018 kg m^2", 0.0018)]
    [InlineData("moment of inertia", "18 kg cm2", 0.0018)]
    [InlineData("moment of inertia", "1 lb ft2", 0.042140110093804803)]
    [InlineData("moment of inertia", "1 lb in2", 2.9263965342920002e-4)]
    [InlineData("temperature", "20 °C", 293.15)]
    [InlineData("temperature", "20 degC", 293.15)]
    [InlineData("temperature", "20 º C", 293.15)]
    [InlineData("temperature", "20℃", 293.15)]
    [InlineData("temperature", "-40 °F", 233.15)]
    [InlineData("temperature rise", "80 K", 80)]
    [InlineData("temperature rise", "80 °C", 80)]
    [InlineData("temperature rise", "9 °F", 5)]
    [InlineData("time", "3 us", 3e-6)]
    [InlineData("time", "3 µs", 3e-6)]
    [InlineData("time", "30 min", 1800)]
    [InlineData("time", "1.5 h", 5400)]
    [InlineData("feed per revolution", "0.13 mm/rev", 0.00013)]
    [InlineData("feed per revolution", "0.005 in/rev", 0.000127)]
    [InlineData("feed per revolution", "0.005 ipr", 0.000127)]
    [InlineData("feed per revolution", "0.13 mm / rev", 0.00013)]
    [InlineData("ratio", "0.78", 0.78)]
    [InlineData("ratio", "78 %", 0.78)]
    [InlineData("ratio", "1.6 pu", 1.6)]
    [InlineData("speed", "30 m/min", 0.5)]
    [InlineData("speed", "100 ft/min", 0.508)]
    [InlineData("speed", "100 SFM", 0.508)]
    [InlineData("pressure or specific force", "2100 N/mm2", 2.1e9)]
    [InlineData("pressure or specific force", "1 psi", 6894.757293168361)]
    [InlineData("energy", "2 kWh", 7.2e6)]
    [InlineData("energy", "1 ft lbf", 1.3558179483314004)]
    [InlineData("angle", "180 °", 3.141592653589793)]
    [InlineData("angle", "118 deg", 2.0594885173533086)]
    [InlineData("hardness", "200", 200)]
    [InlineData("hardness", "200 HB", 200)]
    [InlineData("mass per length", "60 g/m", 0.06)]
    [InlineData("capacitance", "470 uF", 470e-6)]
    [InlineData("number", "1.7", 1.7)]
    public void A_good_spelling_is_read(string kindName, string text, double wantedBase)
    {
        var kind = AnyKind.Named(kindName);
        Assert.Null(kind.Fault(text));
        // Only rounding stands between the text and its base value; UnitsNet holds power to 15 decimal digits.
        Assert.Equal(wantedBase, kind.BaseValue(text), Math.Abs(wantedBase) * 5e-15);
    }

    [Theory]
    // the decimal mark and thousands
    [InlineData("power", "1,5 kW", 2, "write 1.5")]
    [InlineData("power", "1,500 W", 2, "write 1.500 or 1500")]
    [InlineData("power", "1,234,567 W", 2, "write 1234567")]
    [InlineData("power", "1,234.5 W", 2, "write 1234.5")]
    [InlineData("power", "1.234,5 W", 6, "write 1234.5")]
    [InlineData("power", "1.234.567 W", 6, "write 1234567")]
    [InlineData("power", ",5 kW", 1, "write 0.5")]
    [InlineData("power", "5. kW", 2, "write 5")]
    [InlineData("rotational speed", "1 500 r/min", 2, "write 1500")]
    [InlineData("rotational speed", "1 500/min", 2, "write 1500")]
    [InlineData("rotational speed", "1\u202F500 r/min", 2, "write 1500")]
    [InlineData("rotational speed", "1'500 r/min", 2, "write 1500")]
    [InlineData("rotational speed", "1_500 r/min", 2, "write 1500")]
    // no finite number
    [InlineData("power", "NaN W", 1, "finite")]
    [InlineData("power", "nan", 1, "finite")]
    [InlineData("power", "inf W", 1, "finite")]
    [InlineData("power", "-Infinity W", 2, "finite")]
    [InlineData("power", "∞ W", 1, "finite")]
    [InlineData("power", "1e999 W", 1, "too large")]
    [InlineData("power", "1e-999 W", 1, "too small")]
    [InlineData("power", "", 1, "empty")]
    [InlineData("power", "   ", 1, "empty")]
    [InlineData("power", null, 1, "empty")]
    [InlineData("power", "kW", 1, "a number comes first")]
    [InlineData("power", "-", 2, "a number is missing")]
    [InlineData("power", "~230 W", 1, "a number comes first")]
    [InlineData("power", "٣ kW", 1, "digits are 0 to 9")]
    [InlineData("power", "1e2.5 W", 4, "whole number")]
    [InlineData("power", "1.5×10^3 W", 4, "1.5e3")]
    // one value only
    [InlineData("voltage", "220-240 V", 4, "not a range")]
    [InlineData("voltage", "220–240 V", 4, "not a range")]
    [InlineData("voltage", "220..240 V", 4, "not a range")]
    [InlineData("voltage", "230/400 V", 1, "write one decimal number")]
    [InlineData("length", "5 ft 3 in", 3, "after ft stands '3 in'")]
    [InlineData("power", "0.75 kW (1 hp)", 6, "after kW stands '(1 hp)'")]
    // fractions
    [InlineData("length", "1/2 mm", 1, "fractions are read with in, ft only")]
    [InlineData("length", "1/0 in", 3, "lower number above 0")]
    [InlineData("length", "½ in", 1, "with a slash")]
    [InlineData("length", "1½ in", 2, "with a slash")]
    [InlineData("length", "1.5/2 in", 4, "whole numbers")]
    [InlineData("ratio", "1/2", 1, "fractions are not read here")]
    // units
    [InlineData("power", "0.75", 5, "write 0.75 W or 0.75 kW")]
    [InlineData("power", "0.75 KW", 6, "write kW")]
    [InlineData("power", "0.75 kw", 6, "write kW")]
    [InlineData("power", "0.75 Hp", 6, "write hp")]
    [InlineData("power", "750 watts", 5, "write W")]
    [InlineData("power", "5 mm", 3, "mm is a length; a power is wanted")]
    [InlineData("power", "5 VA", 3, "VA is an apparent power; a power is wanted")]
    [InlineData("power", "0.75 kkW", 6, "did you mean kW?")]
    [InlineData("power", "0.75 xyzzy", 6, "is no unit of a power")]
    [InlineData("energy", "5 N m", 3, "N m is a torque; an energy is wanted")]
    [InlineData("torque", "5 kg m", 3, "write kgf·m")]
    [InlineData("force", "5 kg", 3, "write kgf")]
    [InlineData("force", "5 lb", 3, "write lbf")]
    [InlineData("time", "5 m", 3, "write min")]
    [InlineData("temperature", "20 C", 4, "write °C")]
    [InlineData("temperature", "20", 3, "write 20 °C or 20 K")]
    [InlineData("feed per revolution", "0.1 mm", 5, "write mm/rev")]
    [InlineData("hardness", "30 HRC", 4, "is no unit of a hardness")]
    [InlineData("frequency", "50 hz", 4, "write Hz")]
    [InlineData("rotational speed", "1420 rmp", 6, "did you mean rpm?")]
    public void A_bad_spelling_is_refused_with_the_place_and_the_way_to_write_it(
        string kindName, string? text, int column, string says)
    {
        var fault = AnyKind.Named(kindName).Fault(text);
        Assert.NotNull(fault);
        Assert.Contains(says, fault.What, StringComparison.Ordinal);
        Assert.Equal(column, fault.Column);
        Assert.StartsWith("a", fault.Accepted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5 mW")]
    [InlineData("5 MW")]
    public void A_milliwatt_is_never_read_as_a_megawatt_nor_either_as_anything(string text) =>
        Assert.NotNull(AnyKind.Named("power").Fault(text));

    [Fact]
    public void The_message_names_text_place_fault_and_what_is_accepted()
    {
        var error = Assert.Throws<QuantityFormatException>(() => QuantityReader.Read("5 mm", QuantityKinds.Power));
        Assert.Equal(
            "'5 mm' cannot be read: column 3: mm is a length; a power is wanted; accepted: a power in W, kW, hp, PS.",
            error.Message);
    }

    [Fact]
    public void A_value_keeps_the_unit_it_was_typed_in()
    {
        Assert.Equal("0.75 kW", QuantityReader.Read("0.75 kW", QuantityKinds.Power).ToString("G6", null));
        Assert.Equal(1420, QuantityReader.Read("1420 r/min", QuantityKinds.RotationalSpeed).RevolutionsPerMinute);
    }

    [Fact]
    public void A_column_counts_a_character_outside_the_basic_plane_once()
    {
        var fault = AnyKind.Named("power").Fault("5 😀");
        Assert.Equal(3, fault!.Column);
        Assert.Contains("😀", fault.What, StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_of_a_bad_value_do_not_reach_the_message()
    {
        var fault = AnyKind.Named("power").Fault("5 \u001b[31mkW\u202E\0");
        Assert.DoesNotContain('\u001b', fault!.ToString());
        Assert.DoesNotContain('\u202E', fault.ToString());
        Assert.DoesNotContain('\0', fault.ToString());
    }
}
