using Spindlewright.Foundations;
using Spindlewright.Foundations.Reading;
using Spindlewright.Machines.Text;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Machines.Sections;

/// <summary>The section <c>[motor.circuit]</c>: an equivalent circuit, one phase, star-equivalent of the connection in use.</summary>
internal sealed class CircuitKeys
{
    private readonly KeySpec<ElectricResistance> r1 = Ohms("r1", "Stator resistance", "\"6.33 ohm\"", "stator resistance R1");
    private readonly KeySpec<ElectricResistance> x1 = Ohms("x1", "Stator leakage reactance at rated frequency", "\"4.77 ohm\"", "stator leakage reactance X1");
    private readonly KeySpec<ElectricResistance> r2 = Ohms("r2", "Rotor resistance referred to the stator", "\"5.20 ohm\"", "rotor resistance R2");
    private readonly KeySpec<ElectricResistance> x2 = Ohms("x2", "Rotor leakage reactance referred to the stator", "\"4.77 ohm\"", "rotor leakage reactance X2");
    private readonly KeySpec<ElectricResistance> xm = Ohms("xm", "Magnetising reactance at rated flux", "\"51.3 ohm\"", "magnetising reactance Xm");

    private readonly KeySpec<ElectricResistance> rfe = Key.Optional(
        "rfe", Forms.Quantity(QuantityKinds.Resistance), "Core-loss resistance across the magnetising branch", "\"900 ohm\"", "no core loss") with
    { Quantity = "core-loss resistance" };

    private readonly KeySpec<Temperature> temperature = Key.Required(
        "temperature", Forms.Quantity(QuantityKinds.Temperature), "Winding temperature at which the resistances were measured", "\"75 °C\"") with
    { Quantity = "temperature of the resistances" };

    internal CircuitKeys() => Spec = new(
        "circuit", "A measured equivalent circuit, one phase, star-equivalent of the connection in use",
        [r1, x1, r2, x2, xm, rfe, temperature]);

    internal SectionSpec Spec { get; }

    internal Sided<EquivalentCircuit> Read(
        Section section, ElectricPotential lineVoltage, Frequency frequency, int poles, Sided<Ratio> saturation) =>
        saturation.Map(share => new EquivalentCircuit(
            section.Get(r1)!.Value, section.Get(x1)!.Value, section.Get(r2)!.Value, section.Get(x2)!.Value,
            section.Get(xm)!.Value, lineVoltage, frequency, poles)
        {
            CoreLossResistance = section.Get(rfe),
            Saturation = share.DecimalFractions,
            ResistancesAt = section.Get(temperature)!.Value,
        });

    private static KeySpec<ElectricResistance> Ohms(string name, string meaning, string example, string quantity) =>
        Key.Required(name, Forms.Quantity(QuantityKinds.Resistance), meaning, example) with { Quantity = quantity };
}
