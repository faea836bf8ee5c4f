using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors;

/// <summary>
/// The per-phase T circuit of an induction motor, referred to the stator and star-equivalent, with its mechanical
/// and stray losses.
/// </summary>
/// <remarks>
/// <para>
/// Reactances stand at the rated frequency and go with it. The core branch lies across the magnetising branch.
/// A delta winding enters with a third of its phase impedances and the line voltage of the delta connection.
/// </para>
/// <para>
/// A T circuit has one redundant parameter: compare two circuits by their parameters only where the split X1/X2 is
/// stated, otherwise by current, power factor and torque over slip and frequency.
/// </para>
/// </remarks>
public sealed record EquivalentCircuit
{
    private const string Part = "motor circuit";

    /// <summary>Makes a circuit.</summary>
    /// <param name="r1">Stator resistance a phase, above 0.</param>
    /// <param name="x1">Stator leakage reactance at rated frequency, 0 or more.</param>
    /// <param name="r2">Rotor resistance referred to the stator, above 0.</param>
    /// <param name="x2">Rotor leakage reactance at rated frequency, 0 or more; x1 + x2 above 0.</param>
    /// <param name="xm">Magnetising reactance at rated frequency and rated flux, above 0.</param>
    /// <param name="ratedLineVoltage">Line voltage for which the circuit stands.</param>
    /// <param name="ratedFrequency">Frequency at which the reactances stand.</param>
    /// <param name="poles">Even, 2 to 24.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public EquivalentCircuit(
        ElectricResistance r1, ElectricResistance x1, ElectricResistance r2, ElectricResistance x2,
        ElectricResistance xm, ElectricPotential ratedLineVoltage, Frequency ratedFrequency, int poles)
    {
        R1 = Guard.Positive(r1, Part, "stator resistance R1");
        X1 = Guard.NotNegative(x1, Part, "stator leakage reactance X1");
        R2 = Guard.Positive(r2, Part, "rotor resistance R2");
        X2 = Guard.NotNegative(x2, Part, "rotor leakage reactance X2");
        Guard.Positive(x1 + x2, Part, "sum of the leakage reactances X1 + X2");
        Xm = Guard.Positive(xm, Part, "magnetising reactance Xm");
        RatedLineVoltage = Guard.Positive(ratedLineVoltage, Part, "rated line voltage");
        RatedFrequency = Guard.Positive(ratedFrequency, Part, "rated frequency");
        Poles = CheckedPoles(poles);
    }

    /// <summary>Stator resistance a phase.</summary>
    public ElectricResistance R1 { get; private init; }

    /// <summary>Stator leakage reactance a phase at rated frequency.</summary>
    public ElectricResistance X1 { get; private init; }

    /// <summary>Rotor resistance a phase, referred to the stator.</summary>
    public ElectricResistance R2 { get; private init; }

    /// <summary>Rotor leakage reactance a phase at rated frequency, referred to the stator.</summary>
    public ElectricResistance X2 { get; private init; }

    /// <summary>Magnetising reactance a phase at rated frequency and rated flux.</summary>
    public ElectricResistance Xm { get; private init; }

    /// <summary>Line voltage for which the circuit stands; sets the rated flux.</summary>
    public ElectricPotential RatedLineVoltage { get; private init; }

    /// <summary>Frequency at which the reactances stand.</summary>
    public Frequency RatedFrequency { get; }

    /// <summary>Number of poles, even.</summary>
    public int Poles { get; private init; }

    /// <summary>Core-loss resistance across the magnetising branch at rated frequency; null for no core loss.</summary>
    public ElectricResistance? CoreLossResistance
    {
        get;
        init => field = value is { } given ? Guard.Positive(given, Part, "core-loss resistance") : null;
    }

    /// <summary>Power of frequency by which core loss goes at constant flux, 1 (hysteresis) to 2 (eddy currents).</summary>
    public double CoreLossExponent
    {
        get;
        init => field = Guard.Within(value, 1, 2, Part, "core-loss exponent");
    } = 1.5;

    /// <summary>
    /// Share of the magnetising current at rated flux that stands on the seventh power of flux, 0 to 0.9.
    /// At 0 the magnetising reactance is constant.
    /// </summary>
    /// <remarks>i(φ) = (φ/Xm)·[1 + σ(φ⁶ − 1)], φ the air-gap volts per hertz over their rated no-load value.</remarks>
    public double Saturation
    {
        get;
        init => field = Guard.Within(value, 0, 0.9, Part, "saturation");
    }

    /// <summary>How <see cref="R2"/> and <see cref="X2"/>, which stand for low slip frequency, change with it.</summary>
    public RotorCage Cage { get; init; } = RotorCage.SingleCage;

    /// <summary>Friction and windage.</summary>
    public RotationalLoss Rotational { get; init; } = RotationalLoss.None;

    /// <summary>Stray-load loss.</summary>
    public StrayLoadLoss Stray { get; init; } = StrayLoadLoss.None;

    /// <summary>Temperature of winding and bars at which the resistances stand.</summary>
    public Temperature ResistancesAt
    {
        get;
        init => field = Guard.Within(
            value, Temperature.FromDegreesCelsius(-40), Temperature.FromDegreesCelsius(250), Part,
            "temperature of the resistances");
    } = Temperature.FromDegreesCelsius(20);

    /// <summary>Synchronous speed at rated frequency, 120 f / poles; never the rated (full-load) speed.</summary>
    public RotationalSpeed SynchronousSpeed => SynchronousSpeedAt(RatedFrequency);

    /// <summary>Synchronous speed at a frequency.</summary>
    /// <param name="frequency">Supply frequency.</param>
    /// <returns>120 f / poles.</returns>
    public RotationalSpeed SynchronousSpeedAt(Frequency frequency) =>
        RotationalSpeed.FromRevolutionsPerMinute(120 * frequency.Hertz / Poles);

    /// <summary>The same motor with winding and bars at another temperature.</summary>
    /// <param name="temperature">−40 °C to 250 °C.</param>
    /// <returns>R1 scaled as copper, (234.5 + t) / (234.5 + t0); R2 as aluminium, (225 + t) / (225 + t0).</returns>
    /// <remarks>Inferred zero-resistance temperatures of IEC 60034-1 and IEEE Std 112, from memory.</remarks>
    public EquivalentCircuit AtTemperature(Temperature temperature)
    {
        var (to, from) = (temperature.DegreesCelsius, ResistancesAt.DegreesCelsius);
        return this with
        {
            R1 = R1 * ((234.5 + to) / (234.5 + from)),
            R2 = R2 * ((225 + to) / (225 + from)),
            ResistancesAt = temperature,
        };
    }

    /// <summary>The same windings rejoined: every impedance and the rated voltage go over.</summary>
    /// <param name="from">How they are joined now.</param>
    /// <param name="to">How they are to be joined.</param>
    /// <returns>Star to delta: impedances over 3, voltage over √3. Delta to star: the reverse.</returns>
    public EquivalentCircuit Rejoined(Connection from, Connection to)
    {
        if (from == to) return this;
        var impedance = to == Connection.Delta ? 1.0 / 3 : 3;
        return WithImpedancesTimes(impedance) with
        {
            RatedLineVoltage = RatedLineVoltage * Math.Sqrt(impedance),
            Stray = Stray.ForCurrentsTimes(Math.Sqrt(1 / impedance)),
        };
    }

    /// <summary>A motor of another size whose circuit is the same in per unit.</summary>
    /// <param name="times">Its power over this one's, above 0.</param>
    /// <returns>Impedances over the factor, losses and currents times it, at the same voltage.</returns>
    /// <exception cref="PartException">The factor is not above 0.</exception>
    /// <remarks>Own choice: real sizes differ in per unit too, and a smaller motor has more resistance.</remarks>
    public EquivalentCircuit OfPower(double times)
    {
        Guard.Positive(times, Part, "power over power");
        Power Times(Power loss) => Power.FromWatts((double)loss.Watts * times);
        return WithImpedancesTimes(1 / times) with
        {
            Rotational = new(Times(Rotational.Reference), Rotational.At, Rotational.Exponent),
            Stray = new(Times(Stray.Reference), Stray.AtCurrent * times, Stray.AtSpeed) { SpeedExponent = Stray.SpeedExponent },
        };
    }

    /// <summary>A motor of another number of poles with the same circuit, and so the same power.</summary>
    /// <param name="poles">Even, 2 to 24.</param>
    /// <returns>Torques go with the number of poles, speeds against it.</returns>
    /// <exception cref="PartException">The number is not one of those.</exception>
    /// <remarks>Own choice: real motors of more poles have less magnetising reactance.</remarks>
    public EquivalentCircuit WithPoles(int poles)
    {
        var slower = (double)Poles / poles;
        return this with
        {
            Poles = CheckedPoles(poles),
            Rotational = new(Rotational.Reference, Rotational.At * slower, Rotational.Exponent),
            Stray = new(Stray.Reference, Stray.AtCurrent, Stray.AtSpeed * slower) { SpeedExponent = Stray.SpeedExponent },
        };
    }

    private EquivalentCircuit WithImpedancesTimes(double factor) => this with
    {
        R1 = R1 * factor,
        X1 = X1 * factor,
        R2 = R2 * factor,
        X2 = X2 * factor,
        Xm = Xm * factor,
        CoreLossResistance = CoreLossResistance * factor,
    };

    private static int CheckedPoles(int poles) => poles is >= 2 and <= 24 && poles % 2 == 0
        ? poles
        : throw new PartException(Part, "number of poles", $"{poles}", "an even number from 2 to 24");

    /// <summary>Rotor resistance at a slip frequency: R2 of a single cage, and what a double one makes of it.</summary>
    /// <param name="slipFrequency">Slip times output frequency, 0 or more; the output frequency itself at standstill.</param>
    /// <returns>Referred to the stator, a phase.</returns>
    public ElectricResistance RotorResistanceAt(Frequency slipFrequency) =>
        ElectricResistance.FromOhms(Si.RotorOhm(Guard.NotNegative(slipFrequency, Part, "slip frequency") / RatedFrequency));

    /// <summary>Resistance between two terminals at the temperature of the resistances: twice R1 of the star.</summary>
    public ElectricResistance TerminalResistance => R1 * 2;

    internal double RatedPhaseVolts => RatedLineVoltage.Volts / Math.Sqrt(3);

    internal CircuitSi Si => new(
        R1.Ohms, X1.Ohms, R2.Ohms, X2.Ohms, Xm.Ohms, 1 / (CoreLossResistance?.Ohms ?? double.PositiveInfinity),
        RatedFrequency.Hertz, Poles, RatedLineVoltage.Volts / Math.Sqrt(3), Saturation, CoreLossExponent,
        Cage.Rise - 1, Cage.LeakageFall);
}
