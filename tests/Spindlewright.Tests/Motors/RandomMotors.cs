using CsCheck;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

/// <summary>Random motors of every sensible and some odd proportions, for properties.</summary>
internal static class RandomMotors
{
    private static readonly Gen<int> Poles = Gen.OneOf(Gen.Const(2), Gen.Const(4), Gen.Const(6), Gen.Const(8));

    /// <summary>Single cages, and double ones from a shallow bar to a starting cage.</summary>
    internal static Gen<RotorCage> Cages { get; } = Gen.OneOf(
        Gen.Const(RotorCage.SingleCage),
        Gen.Select(Gen.Double[1.05, 8], Gen.Double[0.02, 0.9], (rise, fall) => new RotorCage(rise, fall)));

    /// <summary>Circuits by per-unit parameters over the ranges of 50 W to 50 kW machines and beyond.</summary>
    internal static Gen<EquivalentCircuit> Circuits { get; } =
        from ohm in Gen.Double[0.1, 200]
        from r1 in Gen.Double[0.005, 0.2]
        from x1 in Gen.Double[0.01, 0.25]
        from r2 in Gen.Double[0.005, 0.2]
        from x2 in Gen.Double[0.01, 0.25]
        from xm in Gen.Double[0.8, 5]
        from core in Gen.Double[8, 100]
        from saturation in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 0.8])
        from cage in Cages
        from poles in Poles
        from hertz in Gen.OneOf(Gen.Const(50.0), Gen.Const(60.0))
        from volts in Gen.OneOf(Gen.Const(115.0), Gen.Const(230.0), Gen.Const(400.0))
        select new EquivalentCircuit(
            Ohms(r1 * ohm), Ohms(x1 * ohm), Ohms(r2 * ohm), Ohms(x2 * ohm), Ohms(xm * ohm),
            ElectricPotential.FromVolts(volts), Frequency.FromHertz(hertz), poles)
        {
            CoreLossResistance = Ohms(core * ohm),
            Saturation = saturation,
            Cage = cage,
        };

    internal static ElectricResistance Ohms(double value) => ElectricResistance.FromOhms(value);
}
