using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>How far the link rises when a turning machine is slowed down and its energy has nowhere to go.</summary>
/// <remarks>½·C·(V² − V0²) = ½·J·ω² less what motor and inverter lose meanwhile. Own derivation.</remarks>
public static class LinkRise
{
    private const string Part = "link";

    /// <summary>Link voltage after it took in an energy.</summary>
    /// <param name="before">Link voltage before, above 0.</param>
    /// <param name="capacitance">Of the whole link, above 0.</param>
    /// <param name="energy">Energy that comes back, 0 or more.</param>
    /// <returns>√(V0² + 2·E/C).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static ElectricPotential After(ElectricPotential before, ElectricCapacitance capacitance, Energy energy)
    {
        var volts = Guard.Positive(before, Part, "link voltage").Volts;
        var joules = Guard.NotNegative(energy, Part, "energy").Joules;
        return ElectricPotential.FromVolts(Math.Sqrt(
            volts * volts + 2 * joules / Guard.Positive(capacitance, Part, "capacitance").Farads));
    }

    /// <summary>Energy that the link takes in between two voltages.</summary>
    /// <param name="capacitance">Of the whole link, above 0.</param>
    /// <param name="from">Lower voltage.</param>
    /// <param name="to">Upper voltage.</param>
    /// <returns>½·C·(V² − V0²); 0 where the upper is not above the lower.</returns>
    public static Energy Room(ElectricCapacitance capacitance, ElectricPotential from, ElectricPotential to) =>
        Energy.FromJoules(Math.Max(0, capacitance.Farads / 2 * (to.Volts * to.Volts - from.Volts * from.Volts)));
}
