using CsCheck;
using Spindlewright.Foundations;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

public class RotorCageTests
{
    [Fact]
    public void A_single_cage_is_the_limit_of_a_vanishing_double_one() =>
        Gen.Select(RandomMotors.Circuits, Gen.Double[3, 120], Gen.Double[-1, 2]).Sample((circuit, hertz, slip) =>
        {
            var single = circuit with { Cage = RotorCage.SingleCage };
            var nearly = circuit with { Cage = new RotorCage(1 + 1e-9, 1e-9) };
            var (a, b) = (Torque(single, hertz, slip), Torque(nearly, hertz, slip));
            Assert.Equal(a, b, 1e-7 * (1e-9 + Math.Abs(a)));
        });

    [Fact]
    public void At_low_slip_frequency_a_double_cage_has_the_resistance_and_leakage_of_its_single_one_and_at_high_the_outer_ones()
    {
        var circuit = PublishedCircuits.Krause3Hp with { Cage = new RotorCage(3, 0.5) };
        var outer = new EquivalentCircuit(
            circuit.R1, circuit.X1, circuit.R2 * 3, circuit.X2 * 0.5, circuit.Xm, circuit.RatedLineVoltage,
            circuit.RatedFrequency, circuit.Poles);
        Assert.Equal(1, Torque(circuit, 60, 1e-4) / Torque(circuit with { Cage = RotorCage.SingleCage }, 60, 1e-4), 1e-6);
        Assert.Equal(1, Torque(circuit, 60, 500) / Torque(outer, 60, 500), 1e-3);
    }

    [Fact]
    public void The_rotor_resistance_at_a_slip_frequency_is_the_one_that_the_rotor_loss_shows() =>
        Gen.Select(RandomMotors.Circuits, Gen.Double[3, 120], Gen.Double[0.001, 2]).Sample((circuit, hertz, slip) =>
        {
            var point = CircuitSolver.Solve(
                circuit, Frequency.FromHertz(hertz), circuit.RatedLineVoltage / Math.Sqrt(3), slip);
            var current = point.RotorCurrent.Amperes;
            var shown = (double)point.RotorLoss.Watts / (3 * current * current);
            Assert.Equal(1, circuit.RotorResistanceAt(Frequency.FromHertz(slip * hertz)).Ohms / shown, 1e-9);
        });

    [Fact]
    public void Locked_rotor_torque_rises_with_the_resistance_of_the_outer_cage_while_the_running_side_stays()
    {
        var hp = PublishedCircuits.Krause3Hp;
        var single = new EquivalentCircuit(
            hp.R1, hp.X1, ElectricResistance.FromOhms(0.3), hp.X2, hp.Xm, hp.RatedLineVoltage, hp.RatedFrequency, hp.Poles);
        var circuit = single with { Cage = new RotorCage(3, 0.8) };
        Assert.True(Torque(circuit, 60, 1) > 1.5 * Torque(single, 60, 1));
        Assert.Equal(1, Torque(circuit, 60, 0.01) / Torque(single, 60, 0.01), 0.02);
    }

    [Fact]
    public void Heating_the_bars_stretches_the_slip_axis_and_leaves_the_largest_torque_at_held_flux() =>
        RandomMotors.Circuits.Select(Gen.Double[-20, 200]).Sample((circuit, celsius) =>
        {
            var heated = circuit.AtTemperature(Temperature.FromDegreesCelsius(celsius));
            Assert.Equal(1, RatedFlux.BreakdownNm(heated.Si) / RatedFlux.BreakdownNm(circuit.Si), 1e-9);
        });

    [Fact]
    public void The_breakdown_point_of_a_double_cage_is_the_highest_of_its_peaks() =>
        Gen.Select(RandomMotors.Circuits, Gen.Double[3, 120], Gen.Double[-4, 2]).Sample((circuit, hertz, logSlip) =>
        {
            var linear = circuit with { Saturation = 0 };
            var volts = ElectricPotential.FromVolts(200);
            var (torque, _) = CircuitSolver.Breakdown(linear, Frequency.FromHertz(hertz), volts);
            var there = CircuitSolver.Solve(linear, Frequency.FromHertz(hertz), volts, Math.Pow(10, logSlip)).AirGapTorque;
            Assert.True(there <= torque * (1 + 1e-12), $"{there} above {torque}");
        }, iter: 2000);

    [Theory]
    [InlineData(0.9, 0.1)]
    [InlineData(21, 0.1)]
    [InlineData(2, 0)]
    [InlineData(1, 0.2)]
    [InlineData(2, 0.96)]
    [InlineData(double.NaN, 0.2)]
    [InlineData(2, double.PositiveInfinity)]
    public void A_cage_that_cannot_be_is_refused_with_the_range(double rise, double fall) =>
        Assert.Contains("accepted:", Assert.Throws<PartException>(() => new RotorCage(rise, fall)).Message, StringComparison.Ordinal);

    private static double Torque(EquivalentCircuit circuit, double hertz, double slip) => CircuitSolver.Solve(
        circuit, Frequency.FromHertz(hertz), circuit.RatedLineVoltage / Math.Sqrt(3), slip).AirGapTorque.NewtonMeters;
}
