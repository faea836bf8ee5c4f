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

    /// <summary>Loop resistance where none is given: a long final circuit. Own choice.</summary>
    public static ElectricResistance UsualLoopResistance { get; } = ElectricResistance.FromOhms(0.5);

    /// <summary>Loop inductance where none is given. Own choice.</summary>
    public static ElectricInductance UsualLoopInductance { get; } = ElectricInductance.FromMillihenries(0.4);

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

    /// <summary>Resistance of the loop from the transformer to the socket and back, 1 mΩ to 100 Ω.</summary>
    public ElectricResistance LoopResistance
    {
        get;
        init => field = InputLimits.LoopResistance(value, Part);
    } = UsualLoopResistance;

    /// <summary>Inductance of the same loop, 10 µH to 100 mH.</summary>
    public ElectricInductance LoopInductance
    {
        get;
        init => field = InputLimits.LoopInductance(value, Part);
    } = UsualLoopInductance;

    /// <summary>Rated current of the fuse or plug that feeds the inverter, 1 A to 125 A; null where it was not given.</summary>
    public ElectricCurrent? Fuse
    {
        get;
        init => field = value is { } given
            ? Guard.Within(given, ElectricCurrent.FromAmperes(1), ElectricCurrent.FromAmperes(125), Part, "fuse")
            : null;
    }

    /// <summary>The voltage that serves one side: lowest for capability, highest for hazard.</summary>
    /// <param name="side">The side.</param>
    /// <returns>An rms voltage.</returns>
    public ElectricPotential On(Side side) => side == Side.Capability ? Lowest : Highest;
}
