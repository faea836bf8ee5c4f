using UnitsNet;
using static Spindlewright.Foundations.Reading.UnitFactors;
using static Spindlewright.Foundations.Reading.Units;

namespace Spindlewright.Foundations.Reading;

public static partial class QuantityKinds
{
    /// <summary>Power; base unit watt.</summary>
    public static QuantityKind<Power> Power { get; } = new(
        "power", "W", UnitsNet.Power.FromWatts, power => (double)power.Watts,
        [
            Unit<Power>("W", 1, UnitsNet.Power.FromWatts, "1 W").NotAs("watt", "watts"),
            Unit<Power>("kW", 1000, UnitsNet.Power.FromKilowatts, "1000 W").NotAs("kilowatt", "kilowatts"),
            Fractional<Power>("hp", HorsepowerW, null, "550 ft·lbf/s exactly, about 745.700 W", "HP")
                .NotAs("horsepower", "bhp"),
            Unit<Power>("PS", MetricHorsepowerW, UnitsNet.Power.FromMetricHorsepower,
                "75 kgf·m/s exactly, 735.49875 W", "CV", "cv"),
        ],
        "W, kW from 100", "W, hp from 20",
        note: "Plates of metric countries print HP, PS, CV or ch and mean 735.5 W; `hp` here is the 745.7 W one.");

    /// <summary>Apparent power; base unit volt ampere.</summary>
    public static QuantityKind<ElectricApparentPower> ApparentPower { get; } = new(
        "apparent power", "VA", ElectricApparentPower.FromVoltamperes, power => power.Voltamperes,
        [
            Unit<ElectricApparentPower>("VA", 1, ElectricApparentPower.FromVoltamperes, "1 V·A"),
            Unit<ElectricApparentPower>("kVA", 1000, ElectricApparentPower.FromKilovoltamperes, "1000 VA"),
        ],
        "VA, kVA from 1000", "VA, kVA from 1000");

    /// <summary>Energy; base unit joule.</summary>
    public static QuantityKind<Energy> Energy { get; } = new(
        "energy", "J", UnitsNet.Energy.FromJoules, energy => energy.Joules,
        [
            Unit<Energy>("J", 1, UnitsNet.Energy.FromJoules, "1 J").NotAs("joule", "joules"),
            Unit<Energy>("kJ", 1000, UnitsNet.Energy.FromKilojoules, "1000 J"),
            Unit<Energy>("Wh", 3600, UnitsNet.Energy.FromWattHours, "3600 J", "W h"),
            Unit<Energy>("kWh", 3_600_000, UnitsNet.Energy.FromKilowattHours, "3.6 MJ", "kW h"),
            Product<Energy>("ft", "lbf", FootM * PoundForceN, null, "1 ft × 1 lbf"),
        ],
        "J, kJ from 10000, kWh from 1e6", "ft·lbf, kWh from 1e6");

    /// <summary>Voltage; base unit volt.</summary>
    public static QuantityKind<ElectricPotential> Voltage { get; } = new(
        "voltage", "V", ElectricPotential.FromVolts, voltage => voltage.Volts,
        [
            Unit<ElectricPotential>("V", 1, ElectricPotential.FromVolts, "1 V", "VAC", "VDC", "Vac", "Vdc")
                .NotAs("volt", "volts"),
            Unit<ElectricPotential>("mV", 0.001m, ElectricPotential.FromMillivolts, "0.001 V"),
            Unit<ElectricPotential>("kV", 1000, ElectricPotential.FromKilovolts, "1000 V"),
        ],
        "V", "V");

    /// <summary>Current; base unit ampere.</summary>
    public static QuantityKind<ElectricCurrent> Current { get; } = new(
        "current", "A", ElectricCurrent.FromAmperes, current => current.Amperes,
        [
            Unit<ElectricCurrent>("A", 1, ElectricCurrent.FromAmperes, "1 A")
                .NotAs("amp", "amps", "ampere", "amperes"),
            Unit<ElectricCurrent>("mA", 0.001m, ElectricCurrent.FromMilliamperes, "0.001 A"),
            Unit<ElectricCurrent>("kA", 1000, ElectricCurrent.FromKiloamperes, "1000 A"),
        ],
        "mA, A from 0.1, kA from 10000", "mA, A from 0.1, kA from 10000");

    /// <summary>Frequency; base unit hertz.</summary>
    public static QuantityKind<Frequency> Frequency { get; } = new(
        "frequency", "Hz", UnitsNet.Frequency.FromHertz, frequency => frequency.Hertz,
        [
            Unit<Frequency>("Hz", 1, UnitsNet.Frequency.FromHertz, "1 Hz")
                .NotAs("hertz", "cycles", "cps", "c/s"),
            Unit<Frequency>("kHz", 1000, UnitsNet.Frequency.FromKilohertz, "1000 Hz"),
        ],
        "Hz, kHz from 1000", "Hz, kHz from 1000");

    /// <summary>Resistance; base unit ohm.</summary>
    public static QuantityKind<ElectricResistance> Resistance { get; } = Ohms("resistance");

    /// <summary>Reactance at rated frequency; base unit ohm.</summary>
    public static QuantityKind<ElectricResistance> Reactance { get; } = Ohms("reactance");

    /// <summary>Inductance; base unit henry.</summary>
    public static QuantityKind<ElectricInductance> Inductance { get; } = new(
        "inductance", "H", ElectricInductance.FromHenries, inductance => inductance.Henries,
        [
            Unit<ElectricInductance>("H", 1, ElectricInductance.FromHenries, "1 H").NotAs("henry", "henries"),
            Unit<ElectricInductance>("mH", 0.001m, ElectricInductance.FromMillihenries, "0.001 H"),
            Unit<ElectricInductance>("µH", 0.000_001m, ElectricInductance.FromMicrohenries, "10⁻⁶ H"),
        ],
        "µH, mH from 0.001, H from 1", "µH, mH from 0.001, H from 1");

    /// <summary>Capacitance; base unit farad.</summary>
    public static QuantityKind<ElectricCapacitance> Capacitance { get; } = new(
        "capacitance", "F", ElectricCapacitance.FromFarads, capacitance => capacitance.Farads,
        [
            Unit<ElectricCapacitance>("µF", 0.000_001m, ElectricCapacitance.FromMicrofarads, "10⁻⁶ F")
                .NotAs("mfd", "MFD"),
            Unit<ElectricCapacitance>("nF", 0.000_000_001m, ElectricCapacitance.FromNanofarads, "10⁻⁹ F"),
            Unit<ElectricCapacitance>("mF", 0.001m, ElectricCapacitance.FromMillifarads, "0.001 F"),
            Unit<ElectricCapacitance>("F", 1, ElectricCapacitance.FromFarads, "1 F"),
        ],
        "nF, µF from 1e-7", "nF, µF from 1e-7");

    private static QuantityKind<ElectricResistance> Ohms(string name) => new(
        name, "Ω", ElectricResistance.FromOhms, ohms => ohms.Ohms,
        [
            Unit<ElectricResistance>("Ω", 1, ElectricResistance.FromOhms, "1 Ω", "ohm", "ohms", "Ohm"),
            Unit<ElectricResistance>("mΩ", 0.001m, ElectricResistance.FromMilliohms, "0.001 Ω", "mohm"),
            Unit<ElectricResistance>("kΩ", 1000, ElectricResistance.FromKiloohms, "1000 Ω", "kohm"),
        ],
        "mΩ, Ω from 0.1, kΩ from 10000", "mΩ, Ω from 0.1, kΩ from 10000");
}
