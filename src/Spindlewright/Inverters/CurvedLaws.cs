using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>
/// A quadratic law, as units offer for fans and pumps: V = V0 + (Vb − V0)·(f/fb)². On a drill it starves the slow end.
/// </summary>
/// <remarks>
/// Volts per hertz are V0/f + (Vb − V0)·f/fb², a sum of two convex functions and hence convex: the largest stands at an end
/// of any range, never inside, so the bound's search over bends and ends misses nothing.
/// </remarks>
public sealed record QuadraticCurve : VoltsPerHertzCurve
{
    private readonly double boostVolts;

    /// <summary>Makes the law.</summary>
    /// <param name="baseVoltage">Line voltage at base frequency, 20 V to 690 V.</param>
    /// <param name="baseFrequency">10 Hz to 400 Hz.</param>
    /// <param name="boost">Line voltage at 0 Hz, 0 to 30 % of the base voltage.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public QuadraticCurve(ElectricPotential baseVoltage, Frequency baseFrequency, ElectricPotential boost)
        : base(baseVoltage, baseFrequency)
    {
        Boost = CheckedBoost(boost, baseVoltage);
        boostVolts = Boost.Volts;
    }

    /// <summary>Line voltage at 0 Hz.</summary>
    public ElectricPotential Boost { get; }

    /// <inheritdoc/>
    public override string Name => Boost.Volts > 0 ? "quadratic with boost" : "quadratic";

    internal override IEnumerable<double> BendsHz => [BaseFrequency.Hertz];

    private protected override double BelowBaseVolts(double frequencyHz)
    {
        var ratio = frequencyHz / BaseHz;
        return boostVolts + (BaseVolts - boostVolts) * ratio * ratio;
    }
}

/// <summary>A point of a multi-point law.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Voltage">Line voltage there.</param>
public readonly record struct CurvePoint(Frequency Frequency, ElectricPotential Voltage);

/// <summary>Straight pieces through given points, from a boost at 0 Hz to the base point.</summary>
/// <remarks>
/// On a piece V = a + b·f, so volts per hertz a/f + b rise or fall all the way: the largest stands at a bend or an end.
/// </remarks>
public sealed record MultiPointCurve : VoltsPerHertzCurve
{
    /// <summary>Most points between 0 Hz and base frequency.</summary>
    public const int MostPoints = 10;

    private readonly double[] hertz;
    private readonly double[] volts;

    /// <summary>Makes the law.</summary>
    /// <param name="baseVoltage">Line voltage at base frequency, 20 V to 690 V.</param>
    /// <param name="baseFrequency">10 Hz to 400 Hz.</param>
    /// <param name="boost">Line voltage at 0 Hz, 0 to 30 % of the base voltage.</param>
    /// <param name="points">
    /// One to ten points between 0 Hz and base frequency, frequencies rising and voltages not falling, none above the base
    /// voltage.
    /// </param>
    /// <exception cref="PartException">A value is out of range or out of order.</exception>
    public MultiPointCurve(
        ElectricPotential baseVoltage, Frequency baseFrequency, ElectricPotential boost, IReadOnlyList<CurvePoint> points)
        : base(baseVoltage, baseFrequency)
    {
        Boost = CheckedBoost(boost, baseVoltage);
        if (points.Count is < 1 or > MostPoints)
            throw new PartException(Part, "points of the V/f law", $"{points.Count}", $"1 to {MostPoints}");
        hertz = [0, .. points.Select(point => point.Frequency.Hertz), BaseFrequency.Hertz];
        volts = [Boost.Volts, .. points.Select(point => point.Voltage.Volts), BaseVoltage.Volts];
        for (var i = 1; i < hertz.Length; i++)
            if (!(hertz[i] > hertz[i - 1]) || !(volts[i] >= volts[i - 1]))
                throw new PartException(
                    Part, "points of the V/f law",
                    FormattableString.Invariant($"{volts[i]:0.#} V at {hertz[i]:0.##} Hz after {volts[i - 1]:0.#} V at {hertz[i - 1]:0.##} Hz"),
                    "frequencies that rise and voltages that do not fall, from 0 Hz to the base point");
    }

    /// <summary>Line voltage at 0 Hz.</summary>
    public ElectricPotential Boost { get; }

    /// <summary>The points between 0 Hz and the base point.</summary>
    public IReadOnlyList<CurvePoint> Points => [.. hertz.Zip(volts).Skip(1).SkipLast(1).Select(
        pair => new CurvePoint(Frequency.FromHertz(pair.First), ElectricPotential.FromVolts(pair.Second)))];

    /// <inheritdoc/>
    public override string Name => "multi-point";

    internal override IEnumerable<double> BendsHz => hertz.Skip(1);

    /// <summary>Equal where all points are.</summary>
    /// <param name="other">Another law.</param>
    /// <returns>Whether they are the same law.</returns>
    public bool Equals(MultiPointCurve? other) =>
        other is not null && hertz.SequenceEqual(other.hertz) && volts.SequenceEqual(other.volts);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(hertz.Length, hertz[1], volts[1], BaseVoltage, BaseFrequency);

    private protected override double BelowBaseVolts(double frequencyHz)
    {
        var i = 1;
        while (frequencyHz > hertz[i]) i++;
        return volts[i - 1] + (volts[i] - volts[i - 1]) * (frequencyHz - hertz[i - 1]) / (hertz[i] - hertz[i - 1]);
    }
}
