using UnitsNet;
using static Spindlewright.Foundations.Reading.UnitFactors;
using static Spindlewright.Foundations.Reading.Units;

namespace Spindlewright.Foundations.Reading;

public static partial class QuantityKinds
{
    /// <summary>Length; base unit metre.</summary>
    public static QuantityKind<Length> Length { get; } = new(
        "length", "m", UnitsNet.Length.FromMeters, length => length.Meters,
        [
            Unit<Length>("mm", 0.001m, UnitsNet.Length.FromMillimeters, "0.001 m"),
            Unit<Length>("cm", 0.01m, UnitsNet.Length.FromCentimeters, "0.01 m"),
            Unit<Length>("m", 1, UnitsNet.Length.FromMeters, "1 m").NotAs("metre", "meter", "metres", "meters"),
            Unit<Length>("µm", 0.000_001m, UnitsNet.Length.FromMicrometers, "10⁻⁶ m").NotAs("micron", "microns"),
            Fractional<Length>("in", InchM, UnitsNet.Length.FromInches, "25.4 mm", "in.", "inch", "inches", "\""),
            Fractional<Length>("ft", FootM, UnitsNet.Length.FromFeet, "12 in", "ft.").NotAs("foot", "feet", "'"),
            Unit<Length>("thou", InchM / 1000, UnitsNet.Length.FromMils, "0.001 in").NotAs("mil", "mils"),
        ],
        "µm, mm from 1e-5, m from 10", "thou, in from 0.0005, ft from 10");

    /// <summary>Plane angle; base unit radian.</summary>
    public static QuantityKind<Angle> Angle { get; } = new(
        "angle", "rad", UnitsNet.Angle.FromRadians, angle => angle.Radians,
        [
            new UnitRow<Angle>("°", Math.PI / 180, ["°", "deg"], UnitsNet.Angle.FromDegrees)
            { Definition = "π/180 rad", Mistaken = ["degree", "degrees"] },
            Unit<Angle>("rad", 1, UnitsNet.Angle.FromRadians, "1 rad"),
        ],
        "°", "°");

    /// <summary>Cutting speed, belt speed and other speeds along a line; base unit metre per second.</summary>
    public static QuantityKind<Speed> Speed { get; } = new(
        "speed", "m/s", UnitsNet.Speed.FromMetersPerSecond, speed => speed.MetersPerSecond,
        [
            Unit<Speed>("m/min", 1m / 60, UnitsNet.Speed.FromMetersPerMinutes, "1/60 m/s"),
            Unit<Speed>("m/s", 1, UnitsNet.Speed.FromMetersPerSecond, "1 m/s"),
            Unit<Speed>("mm/s", 0.001m, UnitsNet.Speed.FromMillimetersPerSecond, "0.001 m/s"),
            Unit<Speed>("mm/min", 0.001m / 60, UnitsNet.Speed.FromMillimetersPerMinutes, "0.001/60 m/s"),
            Unit<Speed>("ft/min", FootM / 60, UnitsNet.Speed.FromFeetPerMinute, "0.00508 m/s",
                "fpm", "FPM", "sfm", "SFM", "sfpm", "SFPM"),
            Unit<Speed>("ft/s", FootM, UnitsNet.Speed.FromFeetPerSecond, "0.3048 m/s"),
            Unit<Speed>("in/min", InchM / 60, null, "0.0254/60 m/s", "ipm", "IPM"),
        ],
        "m/min, m/s from 5", "ft/min");

    /// <summary>Feed per revolution, as a length advanced in one turn; base unit metre per revolution.</summary>
    public static QuantityKind<Length> FeedPerRevolution { get; } = new(
        "feed per revolution", "m/rev", UnitsNet.Length.FromMeters, feed => feed.Meters,
        [
            Unit<Length>("mm/rev", 0.001m, UnitsNet.Length.FromMillimeters, "0.001 m in one turn", "mm/r", "mm/turn")
                .NotAs("mm"),
            Fractional<Length>("in/rev", InchM, UnitsNet.Length.FromInches, "25.4 mm in one turn",
                "in/r", "in/turn", "ipr", "IPR").NotAs("in"),
        ],
        "mm/rev", "in/rev");

    /// <summary>Brinell hardness, a plain number.</summary>
    public static QuantityKind<double> Hardness { get; } = new(
        "hardness", "HB", number => (double)number, number => number,
        [
            Unit<double>("HB", 1, number => (double)number, "Brinell hardness number", "HBW", "HBS", "BHN"),
        ],
        "HB", "HB", bareAllowed: true,
        note: "Brinell only; HRC, HRB and HV are other scales and are not converted.");

    /// <summary>Temperature; base unit kelvin.</summary>
    public static QuantityKind<Temperature> Temperature { get; } = new(
        "temperature", "K", UnitsNet.Temperature.FromKelvins, temperature => temperature.Kelvins,
        [
            Unit<Temperature>("°C", 1, UnitsNet.Temperature.FromDegreesCelsius, "0 °C is 273.15 K", "degC", "deg C")
                .NotAs("C", "celsius", "°") with { Zero = 273.15 },
            Unit<Temperature>("K", 1, UnitsNet.Temperature.FromKelvins, "1 K").NotAs("kelvin", "°K"),
            Unit<Temperature>("°F", 5m / 9, UnitsNet.Temperature.FromDegreesFahrenheit, "32 °F is 0 °C",
                "degF", "deg F").NotAs("F", "fahrenheit") with { Zero = 459.67 * 5 / 9 },
        ],
        "°C", "°F");

    /// <summary>Temperature rise, a difference; base unit kelvin.</summary>
    public static QuantityKind<TemperatureDelta> TemperatureRise { get; } = new(
        "temperature rise", "K", TemperatureDelta.FromKelvins, rise => rise.Kelvins,
        [
            Unit<TemperatureDelta>("K", 1, TemperatureDelta.FromKelvins, "1 K").NotAs("kelvin", "°K"),
            Unit<TemperatureDelta>("°C", 1, TemperatureDelta.FromDegreesCelsius, "1 K", "degC", "deg C")
                .NotAs("C", "celsius"),
            Unit<TemperatureDelta>("°F", 5m / 9, TemperatureDelta.FromDegreesFahrenheit, "5/9 K", "degF", "deg F")
                .NotAs("F", "fahrenheit"),
        ],
        "K", "°F");

    /// <summary>Time; base unit second.</summary>
    public static QuantityKind<Duration> Duration { get; } = new(
        "time", "s", UnitsNet.Duration.FromSeconds, time => time.Seconds,
        [
            Unit<Duration>("s", 1, UnitsNet.Duration.FromSeconds, "1 s", "sec").NotAs("second", "seconds", "secs"),
            Unit<Duration>("ms", 0.001m, UnitsNet.Duration.FromMilliseconds, "0.001 s").NotAs("msec"),
            Unit<Duration>("µs", 0.000_001m, UnitsNet.Duration.FromMicroseconds, "10⁻⁶ s"),
            Unit<Duration>("min", 60, UnitsNet.Duration.FromMinutes, "60 s").NotAs("minute", "minutes", "mins", "m"),
            Unit<Duration>("h", 3600, UnitsNet.Duration.FromHours, "3600 s").NotAs("hour", "hours", "hr", "hrs"),
        ],
        "µs, ms from 0.001, s from 0.1, min from 300, h from 7200",
        "µs, ms from 0.001, s from 0.1, min from 300, h from 7200");

    /// <summary>Share, efficiency, slip, power factor: a number without dimension; base unit one.</summary>
    public static QuantityKind<Ratio> Ratio { get; } = new(
        "ratio", "", UnitsNet.Ratio.FromDecimalFractions, ratio => ratio.DecimalFractions,
        [
            Unit<Ratio>("", 1, UnitsNet.Ratio.FromDecimalFractions, "one"),
            Unit<Ratio>("%", 0.01m, UnitsNet.Ratio.FromPercent, "0.01").NotAs("percent", "pct"),
            Unit<Ratio>("pu", 1, UnitsNet.Ratio.FromDecimalFractions, "per unit: times the rated value", "p.u."),
        ],
        "", "", bareAllowed: true,
        note: "A plain number is the ratio itself: write 0.78 or `78 %`, not 78.");

    /// <summary>A plain number, such as an exponent.</summary>
    public static QuantityKind<double> Number { get; } = new(
        "number", "", number => (double)number, number => number,
        [Unit<double>("", 1, number => (double)number, "one")],
        "", "", bareAllowed: true);
}
