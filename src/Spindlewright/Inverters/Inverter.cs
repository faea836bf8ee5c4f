using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>The inverter as it is set.</summary>
public sealed record Inverter
{
    private const string Part = "inverter";

    /// <summary>Makes an inverter.</summary>
    /// <param name="ratedCurrent">Rated output current, 0.2 A to 200 A.</param>
    /// <param name="currentLimit">Current limit over the <em>inverter's</em> rated current, 0.2 to 3.</param>
    /// <param name="lowestFrequency">Lowest output frequency that the settings allow, 0.5 Hz or more.</param>
    /// <param name="highestFrequency">Highest output frequency that the settings allow, up to 400 Hz.</param>
    /// <param name="curve">The V/f law.</param>
    /// <param name="link">Rectifier, capacitor and modulation.</param>
    /// <param name="phaseDrop">Rms volts that the output stage takes from each phase, 0 to 20 V.</param>
    /// <param name="outputFollowsLink">
    /// True where the output voltage rises and falls with the supply, as it does without voltage regulation.
    /// </param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public Inverter(
        ElectricCurrent ratedCurrent,
        double currentLimit,
        Frequency lowestFrequency,
        Frequency highestFrequency,
        VoltsPerHertzCurve curve,
        DcLink link,
        Sided<ElectricPotential> phaseDrop,
        bool outputFollowsLink)
    {
        RatedCurrent = Guard.Within(
            ratedCurrent, ElectricCurrent.FromAmperes(0.2), ElectricCurrent.FromAmperes(200), Part, "rated current");
        CurrentLimit = Guard.Within(currentLimit, 0.2, 3, Part, "current limit", "of the inverter's rated current");
        Curve = curve;
        LowestFrequency = Guard.Within(
            lowestFrequency, Frequency.FromHertz(0.5), curve.BaseFrequency, Part, "lowest frequency",
            "not above the base frequency");
        HighestFrequency = Guard.Within(
            highestFrequency, lowestFrequency, Frequency.FromHertz(400), Part, "highest frequency",
            "not below the lowest frequency");
        Link = link;
        PhaseDrop = phaseDrop.Map(drop => Guard.Within(
            drop, ElectricPotential.Zero, ElectricPotential.FromVolts(20), Part, "phase drop"));
        OutputFollowsLink = outputFollowsLink;
    }

    /// <summary>Rated output current.</summary>
    public ElectricCurrent RatedCurrent { get; }

    /// <summary>Current limit over the inverter's rated current.</summary>
    public double CurrentLimit { get; }

    /// <summary>Lowest output frequency; no result is given below it.</summary>
    public Frequency LowestFrequency { get; }

    /// <summary>Highest output frequency.</summary>
    public Frequency HighestFrequency { get; }

    /// <summary>The V/f law.</summary>
    public VoltsPerHertzCurve Curve { get; }

    /// <summary>Rectifier, capacitor and modulation.</summary>
    public DcLink Link { get; }

    /// <summary>Rms volts taken from each phase, by side; 0 on the hazard side unless the user gave it.</summary>
    public Sided<ElectricPotential> PhaseDrop { get; }

    /// <summary>True where the output voltage rises and falls with the supply.</summary>
    public bool OutputFollowsLink { get; }

    /// <summary>The same inverter set to another V/f law.</summary>
    /// <param name="curve">The law.</param>
    /// <returns>A new inverter.</returns>
    /// <exception cref="PartException">The law does not go with the frequency limits.</exception>
    public Inverter WithCurve(VoltsPerHertzCurve curve) => new(
        RatedCurrent, CurrentLimit, LowestFrequency, HighestFrequency, curve, Link, PhaseDrop, OutputFollowsLink);

    /// <summary>The current at which the inverter limits.</summary>
    public ElectricCurrent LimitingCurrent => RatedCurrent * CurrentLimit;
}
