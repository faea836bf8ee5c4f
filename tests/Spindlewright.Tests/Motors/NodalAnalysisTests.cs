using System.Numerics;
using CsCheck;
using MathNet.Numerics.LinearAlgebra.Complex;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

/// <summary>The same circuits by nodal analysis with a general complex linear solver, which knows nothing of motors.</summary>
public class NodalAnalysisTests
{
    // Two double-precision solutions of a well-conditioned circuit of six nodes.
    private const double Agreement = 1e-9;

    [Fact]
    public void Current_power_factor_and_torque_agree_with_nodal_analysis_at_every_slip_and_frequency() =>
        Gen.Select(RandomMotors.Circuits, Gen.Double[3, 120], Gen.OneOf(Gen.Double[-1, -0.001], Gen.Double[0.001, 1], Gen.Double[1, 2]))
            .Sample((given, hertz, slip) =>
            {
                var circuit = given with { Saturation = 0 };
                var phaseV = circuit.RatedLineVoltage.Volts / Math.Sqrt(3) * Math.Min(1, hertz / circuit.RatedFrequency.Hertz);
                var point = CircuitSolver.Solve(circuit, Frequency.FromHertz(hertz), ElectricPotential.FromVolts(phaseV), slip);
                var (current, torqueNm) = ByNodes(circuit, hertz, phaseV, slip);
                Assert.Equal(1, point.Current.Amperes / current.Magnitude, Agreement);
                Assert.Equal(current.Real / current.Magnitude, point.PowerFactor, Agreement);
                Assert.Equal(1, point.AirGapTorque.NewtonMeters / torqueNm, Agreement);
            });

    /// <summary>Stator current, and torque from the heat in the rotor's resistances.</summary>
    private static (Complex CurrentA, double TorqueNm) ByNodes(
        EquivalentCircuit circuit, double hertz, double phaseV, double slip)
    {
        var elements = CircuitElements.Of(circuit, hertz, slip);
        Complex Admittance(CircuitElement element) =>
            1 / (element.IsReactance ? new Complex(0, element.Ohms) : new Complex(element.Ohms, 0));
        var nodes = elements.Max(element => Math.Max(element.From, element.To));
        // The terminal's voltage is known: its column goes to the right-hand side.
        var matrix = new DenseMatrix(nodes - 1, nodes - 1);
        var right = new DenseVector(nodes - 1);
        foreach (var element in elements)
            foreach (var (here, there) in new[] { (element.From, element.To), (element.To, element.From) })
            {
                if (here <= CircuitElements.Terminal) continue;
                matrix[here - 2, here - 2] += Admittance(element);
                if (there == CircuitElements.Terminal) right[here - 2] += Admittance(element) * phaseV;
                else if (there > CircuitElements.Terminal) matrix[here - 2, there - 2] -= Admittance(element);
            }
        var solved = matrix.Solve(right);
        Complex Volts(int node) => node == 0 ? 0 : node == CircuitElements.Terminal ? phaseV : solved[node - 2];
        Complex Through(CircuitElement element) => (Volts(element.From) - Volts(element.To)) * Admittance(element);
        var gapW = elements.Where(element => element.Name.StartsWith("R2", StringComparison.Ordinal))
            .Sum(element => 3 * element.Ohms * Math.Pow(Through(element).Magnitude, 2));
        return (Through(elements[0]), gapW / (4 * Math.PI * hertz / circuit.Poles));
    }
}
