using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Tests.Motors;

/// <summary>Circuits of published machines that unit tests use by name; the full table is in data/.</summary>
internal static class PublishedCircuits
{
    /// <summary>Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery 2nd ed., Table 4.10-1, 3 hp (second hand).</summary>
    internal static EquivalentCircuit Krause3Hp { get; } = new(
        RandomMotors.Ohms(0.435), RandomMotors.Ohms(0.754), RandomMotors.Ohms(0.816), RandomMotors.Ohms(0.754),
        RandomMotors.Ohms(26.13), ElectricPotential.FromVolts(220), Frequency.FromHertz(60), 4);
}
