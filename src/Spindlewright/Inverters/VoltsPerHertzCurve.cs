using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>The law by which an inverter sets its fundamental output voltage from its output frequency.</summary>
/// <remarks>
/// Voltages are rms, line to line, before the ceiling of the DC link and before the drops of the output stage.
/// Above <see cref="BaseFrequency"/> every law holds <see cref="BaseVoltage"/>.
/// </remarks>
public abstract record VoltsPerHertzCurve
{
    private protected const string Part = "inverter";

    private protected VoltsPerHertzCurve(ElectricPotential baseVoltage, Frequency baseFrequency)
    {
        BaseVoltage = Guard.Within(
            baseVoltage, ElectricPotential.FromVolts(20), ElectricPotential.FromVolts(690), Part, "base voltage");
        BaseFrequency = Guard.Within(
            baseFrequency, Frequency.FromHertz(10), Frequency.FromHertz(400), Part, "base frequency");
        (BaseVolts, BaseHz) = (BaseVoltage.Volts, BaseFrequency.Hertz);
    }

    /// <summary>Line voltage at and above the base frequency.</summary>
    public ElectricPotential BaseVoltage { get; }

    /// <summary>Where the law reaches <see cref="BaseVoltage"/>.</summary>
    public Frequency BaseFrequency { get; }

    /// <summary>One or two words that name the law.</summary>
    public abstract string Name { get; }

    /// <summary>Line voltage at a frequency, before ceiling and drops.</summary>
    /// <param name="frequency">Output frequency above 0.</param>
    /// <returns>Rms line voltage, 0 or more.</returns>
    public ElectricPotential LineVoltage(Frequency frequency) =>
        ElectricPotential.FromVolts(LineVolts(Guard.Positive(frequency, Part, "frequency").Hertz));

    /// <summary>Frequencies where the law bends; the largest volts per hertz stand at one of them or at an end.</summary>
    internal abstract IEnumerable<double> BendsHz { get; }

    /// <summary>The lowest frequency at which the law reaches a line voltage; the base frequency where it never does below.</summary>
    internal double HertzReaching(double lineVolts)
    {
        const int Halvings = 60;
        if (BaseVolts <= lineVolts) return BaseHz;
        // Every law rises to its base point, so halving finds the place.
        var (below, above) = (0.0, BaseHz);
        for (var step = 0; step < Halvings; step++)
        {
            var middle = (below + above) / 2;
            if (LineVolts(middle) < lineVolts) below = middle;
            else above = middle;
        }
        return above;
    }

    // A law is asked millions of times a study: its figures stand ready as plain numbers.
    private protected double BaseVolts { get; }

    private protected double BaseHz { get; }

    internal double LineVolts(double frequencyHz) => frequencyHz >= BaseHz ? BaseVolts : BelowBaseVolts(frequencyHz);

    private protected abstract double BelowBaseVolts(double frequencyHz);

    private protected static ElectricPotential CheckedBoost(ElectricPotential boost, ElectricPotential baseVoltage) =>
        Guard.Within(
            boost, ElectricPotential.Zero, baseVoltage * 0.3, Part, "boost",
            "more than 30 % of the base voltage at 0 Hz is a fault of setting, not a boost");
}

/// <summary>A straight line from a boost voltage at 0 Hz to the base point: V = Vb + (V0 − Vb)·f/f0.</summary>
public sealed record StraightCurve : VoltsPerHertzCurve
{
    private readonly double boostVolts;

    /// <summary>Makes the law.</summary>
    /// <param name="baseVoltage">Line voltage at base frequency, 20 V to 690 V.</param>
    /// <param name="baseFrequency">10 Hz to 400 Hz.</param>
    /// <param name="boost">Line voltage added at 0 Hz, 0 to 30 % of the base voltage.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public StraightCurve(ElectricPotential baseVoltage, Frequency baseFrequency, ElectricPotential boost)
        : base(baseVoltage, baseFrequency)
    {
        Boost = CheckedBoost(boost, baseVoltage);
        boostVolts = Boost.Volts;
    }

    /// <summary>Line voltage at 0 Hz.</summary>
    public ElectricPotential Boost { get; }

    /// <inheritdoc/>
    public override string Name => Boost.Volts > 0 ? "straight with boost" : "straight";

    internal override IEnumerable<double> BendsHz => [BaseFrequency.Hertz];

    private protected override double BelowBaseVolts(double frequencyHz) =>
        boostVolts + (BaseVolts - boostVolts) * frequencyHz / BaseHz;
}

/// <summary>
/// Less than proportional at the slow end: no voltage below an offset frequency, then a straight line to the base
/// point, as inexpensive units behave with boost set to zero (common practice, no source).
/// </summary>
public sealed record OffsetCurve : VoltsPerHertzCurve
{
    private readonly double offsetHz;

    /// <summary>Makes the law.</summary>
    /// <param name="baseVoltage">Line voltage at base frequency, 20 V to 690 V.</param>
    /// <param name="baseFrequency">10 Hz to 400 Hz.</param>
    /// <param name="offset">Frequency at which the line meets zero volts, 0 to 20 % of the base frequency.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public OffsetCurve(ElectricPotential baseVoltage, Frequency baseFrequency, Frequency offset)
        : base(baseVoltage, baseFrequency)
    {
        Offset = Guard.Within(offset, Frequency.Zero, baseFrequency * 0.2, Part, "offset frequency");
        offsetHz = Offset.Hertz;
    }

    /// <summary>Frequency at which the line meets zero volts.</summary>
    public Frequency Offset { get; }

    /// <inheritdoc/>
    public override string Name => "offset";

    internal override IEnumerable<double> BendsHz => [Offset.Hertz, BaseFrequency.Hertz];

    private protected override double BelowBaseVolts(double frequencyHz) =>
        Math.Max(0, BaseVolts * (frequencyHz - offsetHz) / (BaseHz - offsetHz));
}
