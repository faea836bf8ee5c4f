using CsCheck;
using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Hands;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Mains;
using Spindlewright.Motors;
using Spindlewright.Spindles;
using Spindlewright.Tests.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Studies;

/// <summary>Machines for tests: one with hand-computed torques, and random ones.</summary>
internal static class Presses
{
    /// <summary>
    /// A 0.55 kW six-pole circuit of our own fit (star-equivalent, 400 V 50 Hz) without drop, at efficiency 1, behind a
    /// three-phase supply that holds 400 V; the torques in the tests were computed by hand from these parameters.
    /// </summary>
    internal static DrillPress HandComputed(double ratio, Duration reaction)
    {
        var circuit = new EquivalentCircuit(
            RandomMotors.Ohms(19.0), RandomMotors.Ohms(14.3), RandomMotors.Ohms(15.6), RandomMotors.Ohms(14.3),
            RandomMotors.Ohms(154), ElectricPotential.FromVolts(400), Frequency.FromHertz(50), 6);
        var supply = new Supply(
            ElectricPotential.FromVolts(400), ElectricPotential.FromVolts(400), ElectricPotential.FromVolts(400),
            Frequency.FromHertz(50), 3);
        var curve = new StraightCurve(ElectricPotential.FromVolts(400), Frequency.FromHertz(50), ElectricPotential.Zero);
        return Press(circuit, supply, curve, 0, Sided.Same(1.0), 1, 100, ratio, reaction);
    }

    /// <summary>
    /// The hand-computed circuit with what is uncertain about a real one: supply ±10 %, winding 20 °C to 120 °C (the project's usual
    /// span), belt 0.9 to 1, and a dead-time drop of none to 12.7 V a phase: (4/π)·540 V·3 µs·8 kHz/√2 and 1 V of devices (own arithmetic).
    /// </summary>
    internal static DrillPress Observed()
    {
        var fitted = HandComputed(1000.0 / 245, Duration.FromSeconds(1.5));
        var supply = new Supply(
            ElectricPotential.FromVolts(400), ElectricPotential.FromVolts(360), ElectricPotential.FromVolts(440), Frequency.FromHertz(50), 3);
        var press = Press(
            fitted.Motor.Circuit.Hazard with { ResistancesAt = Temperature.FromDegreesCelsius(75) }, supply, fitted.Inverter.Curve, 12.7,
            new Sided<double>(0.9, 1), 1, 100, 1000.0 / 245, Duration.FromSeconds(1.5));
        var winding = (Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(120));
        return new(press.Title, supply, press.Inverter, press.Motor with { Winding = winding }, press.Belts, press.Spindle) { Person = press.Person };
    }

    /// <summary>
    /// A two-pole motor whose locked-rotor torque, the larger of cold and hot, rises to 22.75 Hz where the cold winding gives its
    /// most, dips by a hundredth at 27.5 Hz, and rises again to 34 Hz with the hot one; pull-out torque rises all the way.
    /// </summary>
    internal static DrillPress TwiceRising(Duration reaction)
    {
        var circuit = new EquivalentCircuit(
            RandomMotors.Ohms(5.31), RandomMotors.Ohms(12.03), RandomMotors.Ohms(9.01), RandomMotors.Ohms(15.01),
            RandomMotors.Ohms(164.18), ElectricPotential.FromVolts(230), Frequency.FromHertz(50), 2)
        {
            CoreLossResistance = RandomMotors.Ohms(1661.3),
            Saturation = 0.575,
            Cage = new RotorCage(4.97, 0.474),
            ResistancesAt = Temperature.FromDegreesCelsius(75),
        };
        var volts = ElectricPotential.FromVolts(230);
        var curve = new StraightCurve(volts, Frequency.FromHertz(50), ElectricPotential.Zero);
        return Press(
            circuit, new Supply(volts, volts, volts, Frequency.FromHertz(50), 1), curve, 5.7, Sided.Same(1.0), 11, 66, 12, reaction);
    }

    /// <summary>The machines that come with the project.</summary>
    internal static IReadOnlyList<DrillPress> Demo { get; } =
    [
        .. Directory.GetFiles(TestSupport.Repository.File("data/machines"), "*.toml").Order(StringComparer.Ordinal)
            .Select(path => MachineFile.ReadFile(path, Foundations.Tables.Handbook.FromEmbedded()).Press!),
    ];

    /// <summary>Machines with random circuits, supplies, curves, drops, efficiencies and ratios.</summary>
    internal static Gen<DrillPress> Random { get; } =
        from circuit in RandomMotors.Circuits
        from low in Gen.Double[0.85, 1]
        from high in Gen.Double[1, 1.15]
        from loaded in Gen.Double[0.9, 1]
        from boost in Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 0.3])
        from offset in Gen.Double[0, 0.15]
        from useOffset in Gen.Bool
        from dropV in Gen.Double[0, 8]
        from efficiency in Gen.Double[0.7, 1]
        from lowest in Gen.Double[2, 15]
        from highest in Gen.Double[50, 120]
        from ratio in Gen.Double[0.3, 12]
        let volts = circuit.RatedLineVoltage
        let supply = new Supply(volts, volts * low, volts * high, Frequency.FromHertz(50), 1)
        let curve = useOffset
            ? (VoltsPerHertzCurve)new OffsetCurve(volts, circuit.RatedFrequency, circuit.RatedFrequency * offset)
            : new StraightCurve(volts, circuit.RatedFrequency, volts * boost)
        select Press(
            circuit with { ResistancesAt = Temperature.FromDegreesCelsius(75) }, supply, curve, dropV,
            new Sided<double>(loaded * efficiency, 1), lowest, highest, ratio, Duration.FromSeconds(1.5));

    private static DrillPress Press(
        EquivalentCircuit circuit, Supply supply, VoltsPerHertzCurve curve, double dropV, Sided<double> efficiency,
        double lowestHz, double highestHz, double ratio, Duration reaction)
    {
        var cold = dropV == 0 ? circuit.ResistancesAt : Temperature.FromDegreesCelsius(10);
        var hot = dropV == 0 ? circuit.ResistancesAt : Temperature.FromDegreesCelsius(130);
        var motor = new MachineMotor
        {
            Circuit = Sided.Same(circuit),
            Connection = Connection.Star,
            RatedPower = Power.FromWatts(550),
            RatedSpeed = circuit.SynchronousSpeed * 0.93,
            RatedCurrent = ElectricCurrent.FromAmperes(1.6),
            Winding = (cold, hot),
        };
        return new(
            "a test machine", supply,
            new Inverter(
                ElectricCurrent.FromAmperes(7), 1.5, Frequency.FromHertz(lowestHz), Frequency.FromHertz(highestHz), curve,
                new DcLink(false, new Sided<double>(efficiency.Capability, 1), Modulation.SpaceVector),
                new Sided<ElectricPotential>(ElectricPotential.FromVolts(dropV), ElectricPotential.Zero), true),
            motor, [new BeltPosition("1", ratio, efficiency)],
            new Spindle(Length.FromMillimeters(50), null, Sided.Same(Torque.Zero)))
        { Person = new Person(5, 95, reaction) };
    }
}
