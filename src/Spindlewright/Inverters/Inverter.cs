using Spindlewright.Foundations;
using Spindlewright.Mains;
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
        LowestFrequency = CheckedLowest(lowestFrequency, curve);
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
    public Frequency LowestFrequency { get; private init; }

    /// <summary>Highest output frequency.</summary>
    public Frequency HighestFrequency { get; }

    /// <summary>The V/f law.</summary>
    public VoltsPerHertzCurve Curve { get; private init; }

    /// <summary>Rectifier, capacitor and modulation.</summary>
    public DcLink Link { get; }

    /// <summary>Rms volts taken from each phase, by side; a machine file never credits it on the hazard side.</summary>
    public Sided<ElectricPotential> PhaseDrop { get; }

    /// <summary>True where the output voltage rises and falls with the supply.</summary>
    public bool OutputFollowsLink { get; }

    /// <summary>
    /// Share of the rated slip frequency that slip compensation adds at rated torque, 0 (off) to 1.5; in proportion below.
    /// </summary>
    /// <remarks>It moves speeds; no hazard credits or debits it, because the bound holds at every frequency.</remarks>
    public double SlipCompensation
    {
        get;
        init => field = Guard.Within(value, 0, 1.5, Part, "slip compensation", "of the rated slip");
    }

    /// <summary>Ramps; the usual ones unless said otherwise.</summary>
    public Ramps Ramps { get; init; } = Ramps.Usual;

    /// <summary>
    /// Capacitance of the link, of each of the two capacitors of a doubler, 5 µF to 0.1 F; null where it is not known.
    /// </summary>
    public ElectricCapacitance? LinkCapacitance
    {
        get;
        init => field = value is { } given ? InputLimits.LinkCapacitance(given, Part) : null;
    }

    /// <summary>Resistance that limits the charging of the link, up to 10 kΩ; null where it is not known.</summary>
    public ElectricResistance? ChargingResistance
    {
        get;
        init => field = value is { } given
            ? Guard.Within(given, ElectricResistance.Zero, ElectricResistance.FromOhms(10_000), Part, "charging resistance")
            : null;
    }

    /// <summary>What the inverter itself loses, by side: the capability side the more.</summary>
    public Sided<InverterLosses> Losses { get; init; } = InverterLosses.Usual;

    /// <summary>Link voltage at which it trips on deceleration, 200 V to 1000 V; null where it is not known.</summary>
    public ElectricPotential? LinkTrip
    {
        get;
        init => field = value is { } given
            ? Guard.Within(given, ElectricPotential.FromVolts(200), ElectricPotential.FromVolts(1000), Part, "link trip voltage")
            : null;
    }

    /// <summary>The same inverter set to another V/f law.</summary>
    /// <param name="curve">The law.</param>
    /// <returns>A new inverter.</returns>
    /// <exception cref="PartException">The law does not go with the frequency limits.</exception>
    public Inverter WithCurve(VoltsPerHertzCurve curve) =>
        this with { Curve = curve, LowestFrequency = CheckedLowest(LowestFrequency, curve) };

    /// <summary>The same make of inverter in another size, on another link.</summary>
    /// <param name="ratedCurrent">Rated output current, 0.2 A to 200 A.</param>
    /// <param name="link">Its link under the motor that it feeds.</param>
    /// <returns>A new inverter; a link capacitance that was given holds for its own size alone.</returns>
    /// <exception cref="PartException">The rated current is out of range.</exception>
    public Inverter OfSize(ElectricCurrent ratedCurrent, DcLink link) =>
        Made(ratedCurrent, LowestFrequency, HighestFrequency, Curve, link) with
        {
            LinkCapacitance = ratedCurrent.Amperes == RatedCurrent.Amperes ? LinkCapacitance : null,
        };

    /// <summary>The same inverter set otherwise.</summary>
    /// <param name="lowest">Lowest output frequency, 0.5 Hz or more.</param>
    /// <param name="highest">Highest output frequency, up to 400 Hz.</param>
    /// <param name="curve">The V/f law.</param>
    /// <returns>A new inverter.</returns>
    /// <exception cref="PartException">The settings do not go together.</exception>
    public Inverter Set(Frequency lowest, Frequency highest, VoltsPerHertzCurve curve) =>
        Made(RatedCurrent, lowest, highest, curve, Link);

    private Inverter Made(ElectricCurrent ratedCurrent, Frequency lowest, Frequency highest, VoltsPerHertzCurve curve, DcLink link) =>
        new(ratedCurrent, CurrentLimit, lowest, highest, curve, link, PhaseDrop, OutputFollowsLink)
        {
            SlipCompensation = SlipCompensation,
            Ramps = Ramps,
            LinkCapacitance = LinkCapacitance,
            ChargingResistance = ChargingResistance,
            Losses = Losses,
            LinkTrip = LinkTrip,
        };

    /// <summary>The current at which the inverter limits.</summary>
    public ElectricCurrent LimitingCurrent => RatedCurrent * CurrentLimit;

    private static Frequency CheckedLowest(Frequency lowest, VoltsPerHertzCurve curve) => Guard.Within(
        lowest, Frequency.FromHertz(0.5), curve.BaseFrequency, Part, "lowest frequency", "not above the base frequency");
}
