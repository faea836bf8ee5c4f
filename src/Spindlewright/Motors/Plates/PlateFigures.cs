using UnitsNet;

namespace Spindlewright.Motors.Plates;

/// <summary>What is known of a motor: figures of its plate and figures measured on it, any of which may be missing.</summary>
/// <remarks>
/// Not to be confused with <see cref="Nameplate"/>, which is a whole rated point. <see cref="PlateCompletion"/> makes
/// the one from the other and says which defaults went in.
/// </remarks>
public sealed record PlateFigures
{
    /// <summary>Rated line voltage of <see cref="Connection"/>.</summary>
    public required ElectricPotential LineVoltage { get; init; }

    /// <summary>The connection that voltage and currents belong to.</summary>
    public required Connection Connection { get; init; }

    /// <summary>Rated frequency.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Rated shaft power; null where it must come from the frame.</summary>
    public Power? Power { get; init; }

    /// <summary>Number of poles; null where a speed gives it.</summary>
    public int? Poles { get; init; }

    /// <summary>Rated (full-load) speed.</summary>
    public RotationalSpeed? Speed { get; init; }

    /// <summary>Rated line current.</summary>
    public ElectricCurrent? Current { get; init; }

    /// <summary>Power factor at rated load.</summary>
    public double? PowerFactor { get; init; }

    /// <summary>Efficiency at rated load, 0 to 1.</summary>
    public double? Efficiency { get; init; }

    /// <summary>Breakdown torque over rated torque.</summary>
    public double? BreakdownTorque { get; init; }

    /// <summary>Locked-rotor torque over rated torque.</summary>
    public double? LockedRotorTorque { get; init; }

    /// <summary>Locked-rotor current over rated current.</summary>
    public double? LockedRotorCurrent { get; init; }

    /// <summary>Line current at no load, rated voltage and frequency.</summary>
    public ElectricCurrent? NoLoadCurrent { get; init; }

    /// <summary>Speed at no load, rated voltage and frequency: it tells the poles.</summary>
    public RotationalSpeed? NoLoadSpeed { get; init; }

    /// <summary>Resistance between two terminals as connected.</summary>
    public ElectricResistance? WindingResistance { get; init; }

    /// <summary>Winding temperature at which the resistance was measured.</summary>
    public Temperature WindingMeasuredAt { get; init; } = Temperature.FromDegreesCelsius(20);

    /// <summary>Shaft height of the frame: foot to shaft axis, such as 71 mm.</summary>
    public Length? FrameSize { get; init; }

    /// <summary>Shaft diameter, such as 14 mm.</summary>
    public Length? ShaftDiameter { get; init; }
}

/// <summary>A default that stands in for a figure of a plate.</summary>
/// <param name="Figure">The figure, as the machine file names it.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Capability">The value, with unit, that serves "will it drill".</param>
/// <param name="Hazard">The value, with unit, that serves "what could a hand meet".</param>
/// <param name="Provenance">How the pair reached us.</param>
/// <param name="Source">Reference key.</param>
/// <param name="Reason">Why this pair.</param>
public sealed record PlateDefault(
    string Figure, string Meaning, string Capability, string Hazard, Foundations.Provenance Provenance, string Source,
    string Reason);
