using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Mains;

/// <summary>The wall socket: voltage between the conductors that feed the inverter, and its tolerance.</summary>
/// <remarks>
/// <see cref="Nominal"/> is what the socket is called; <see cref="Lowest"/> serves the question whether the machine
/// drills, <see cref="Highest"/> the question what a hand could meet.
/// </remarks>
public sealed record Supply
{
    private const string Part = "supply";

    /// <summary>Makes a supply.</summary>
    /// <param name="nominal">Nominal rms voltage, 90 V to 500 V.</param>
    /// <param name="lowest">Lowest rms voltage; not above nominal, not below half of it.</param>
    /// <param name="highest">Highest rms voltage; not below nominal, not above 1.3 times it.</param>
    /// <param name="frequency">Mains frequency, 45 Hz to 65 Hz.</param>
    /// <param name="phases">1 or 3.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public Supply(
        ElectricPotential nominal, ElectricPotential lowest, ElectricPotential highest, Frequency frequency, int phases)
    {
        Nominal = Guard.Within(
            nominal, ElectricPotential.FromVolts(90), ElectricPotential.FromVolts(500), Part, "voltage");
        Lowest = Guard.Within(lowest, nominal * 0.5, nominal, Part, "lowest voltage", "not above the nominal voltage");
        Highest = Guard.Within(
            highest, nominal, nominal * 1.3, Part, "highest voltage", "not below the nominal voltage");
        Frequency = Guard.Within(
            frequency, Frequency.FromHertz(45), Frequency.FromHertz(65), Part, "frequency", "public mains");
        Phases = phases is 1 or 3
            ? phases
            : throw new PartException(Part, "number of phases", $"{phases}", "1 or 3");
    }

    /// <summary>Nominal rms voltage.</summary>
    public ElectricPotential Nominal { get; }

    /// <summary>Lowest rms voltage to be expected.</summary>
    public ElectricPotential Lowest { get; }

    /// <summary>Highest rms voltage to be expected.</summary>
    public ElectricPotential Highest { get; }

    /// <summary>Mains frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>1 or 3.</summary>
    public int Phases { get; }

    /// <summary>The voltage that serves one side: lowest for capability, highest for hazard.</summary>
    /// <param name="side">The side.</param>
    /// <returns>An rms voltage.</returns>
    public ElectricPotential On(Side side) => side == Side.Capability ? Lowest : Highest;
}
