using Spindlewright.Foundations;
using Spindlewright.Foundations.Sampling;

namespace Spindlewright.Machines;

/// <summary>One figure of a machine that is uncertain.</summary>
/// <param name="Name">Its name, the key of the machine file's section [uncertain].</param>
/// <param name="Meaning">What it is, a few words.</param>
/// <param name="Unit">Unit of the distribution; empty for a plain number.</param>
/// <param name="Distribution">How it is spread.</param>
/// <param name="Provenance">Where the spread comes from.</param>
/// <param name="Source">Key into <c>data/references.json</c>; empty for the user's own.</param>
/// <param name="Note">Why this spread.</param>
public sealed record VariedInput(
    string Name, string Meaning, string Unit, Distribution Distribution, Provenance Provenance, string Source, string Note);

/// <summary>Spreads that the owner gives in place of the usual ones, and how many samples to draw.</summary>
/// <param name="Spreads">Distribution of each input given, by name; units as in <see cref="VariedInput"/>.</param>
/// <param name="Samples">Number of samples, 200 to 1,000,000.</param>
public sealed record OwnUncertainty(IReadOnlyDictionary<string, Distribution> Spreads, int Samples)
{
    /// <summary>Samples drawn where the machine file does not say.</summary>
    public const int UsualSamples = 2000;

    /// <summary>Nothing of the owner's own.</summary>
    public static OwnUncertainty None { get; } = new(new Dictionary<string, Distribution>(), UsualSamples);

    /// <summary>Number of samples.</summary>
    public int Samples { get; } = (int)Guard.Within(Samples, 200, 1_000_000, "uncertainty", "number of samples");
}

/// <summary>The names of what is uncertain about a machine.</summary>
public static class UncertainFigures
{
    /// <summary>Supply voltage, V.</summary>
    public const string SupplyVoltage = "supply_voltage";

    /// <summary>Mean DC-link voltage under load over its no-load peak.</summary>
    public const string LoadedLink = "loaded_link";

    /// <summary>Drop of dead time and devices a phase, V.</summary>
    public const string PhaseDrop = "phase_drop";

    /// <summary>Temperature of winding and bars, °C.</summary>
    public const string WindingTemperature = "winding_temperature";

    /// <summary>How far the circuit lies from the one of the low defaults (0) to the one of the high defaults (1).</summary>
    public const string MotorCircuit = "motor_circuit";

    /// <summary>Rotor resistance over that of the circuit.</summary>
    public const string RotorResistance = "rotor_resistance";

    /// <summary>Rotor resistance of a double cage at standstill over that of the circuit; locked-rotor torque goes with it.</summary>
    public const string StandstillResistance = "standstill_resistance";

    /// <summary>Leakage reactances over those of the circuit.</summary>
    public const string Leakage = "leakage";

    /// <summary>How far belt efficiency lies from the low (0) to the high (1) figure of the belt position.</summary>
    public const string BeltEfficiency = "belt_efficiency";

    /// <summary>Drag of the spindle's bearings, N·m.</summary>
    public const string SpindleFriction = "spindle_friction";

    /// <summary>How far the torque at which the belt slips lies from that of low (0) to that of high (1) tension and friction.</summary>
    public const string BeltTension = "belt_tension";

    /// <summary>Cutting torque over that of the handbook's coefficients.</summary>
    public const string CuttingTorque = "cutting_torque";

    /// <summary>Hand torque of the population at the best diameter, N·m.</summary>
    public const string HandTorque = "hand_torque";
}
