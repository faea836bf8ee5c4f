using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Mains;

/// <summary>How the diodes at the input are joined.</summary>
public enum RectifierKind
{
    /// <summary>A bridge on one phase and neutral, or on two phases.</summary>
    SinglePhase,

    /// <summary>A voltage doubler: each half wave charges one of two capacitors in series.</summary>
    Doubler,

    /// <summary>A bridge on three phases.</summary>
    ThreePhase,
}

/// <summary>A capacitor-input rectifier behind the resistance and inductance of the supply.</summary>
/// <remarks>
/// <para>
/// Solved by time stepping until one period repeats the last. Diodes are ideal. The voltages of factor and distortion are
/// those of the source before its impedance, as the textbooks take them (Mohan, Undeland, Robbins, chapter 5).
/// </para>
/// <para>Accuracy: power in and out close within 2 parts in 100 000 over 400 random cases; nine recomputed or recalled cases agree in all printed digits.</para>
/// </remarks>
public sealed record InputRectifier
{
    private const string Part = "rectifier";

    /// <summary>Makes a rectifier.</summary>
    /// <param name="kind">How the diodes are joined.</param>
    /// <param name="loopResistance">Of the loop of both conductors, or of one phase of three; 1 mΩ to 100 Ω.</param>
    /// <param name="loopInductance">Likewise; 10 µH to 100 mH.</param>
    /// <param name="capacitance">Of the link; of each of the two capacitors of a doubler; 5 µF to 0.1 F.</param>
    /// <exception cref="PartException">A value is out of range.</exception>
    public InputRectifier(
        RectifierKind kind, ElectricResistance loopResistance, ElectricInductance loopInductance,
        ElectricCapacitance capacitance)
    {
        Kind = kind;
        LoopResistance = InputLimits.LoopResistance(loopResistance, Part);
        LoopInductance = InputLimits.LoopInductance(loopInductance, Part);
        Capacitance = InputLimits.LinkCapacitance(capacitance, Part);
    }

    /// <summary>How the diodes are joined.</summary>
    public RectifierKind Kind { get; }

    /// <summary>Resistance of the supply's loop, or of one phase.</summary>
    public ElectricResistance LoopResistance { get; }

    /// <summary>Inductance of the supply's loop, or of one phase.</summary>
    public ElectricInductance LoopInductance { get; }

    /// <summary>Capacitance of the link, or of each capacitor of a doubler.</summary>
    public ElectricCapacitance Capacitance { get; }

    /// <summary>The steady state under a constant power, as an inverter takes it.</summary>
    /// <param name="voltage">Rms voltage of the source; line to line for three phases.</param>
    /// <param name="frequency">Mains frequency.</param>
    /// <param name="power">Power taken from the link, above 0.</param>
    /// <returns>Current, factors and link voltage.</returns>
    /// <exception cref="PartException">
    /// A value is out of range, the supply cannot carry the power, or the link never settles under it (a loop of much inductance
    /// and hardly any resistance).
    /// </exception>
    public RectifierState UnderPower(ElectricPotential voltage, Frequency frequency, Power power) =>
        Solve(voltage, frequency, (double)Guard.Positive(power, Part, "power").Watts, 0);

    /// <summary>The steady state under a resistance across the link.</summary>
    /// <param name="voltage">Rms voltage of the source; line to line for three phases.</param>
    /// <param name="frequency">Mains frequency.</param>
    /// <param name="load">Resistance, above 0.</param>
    /// <returns>Current, factors and link voltage.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public RectifierState UnderResistance(ElectricPotential voltage, Frequency frequency, ElectricResistance load) =>
        Solve(voltage, frequency, 0, 1 / Guard.Positive(load, Part, "load resistance").Ohms);

    /// <summary>The highest current when the discharged link is switched onto the crest of the wave.</summary>
    /// <param name="voltage">Rms voltage of the source.</param>
    /// <param name="frequency">Mains frequency.</param>
    /// <param name="charging">Resistance that the unit puts in while its link charges; 0 for none.</param>
    /// <returns>Peak current.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public ElectricCurrent ChargingPeak(ElectricPotential voltage, Frequency frequency, ElectricResistance charging)
    {
        Guard.NotNegative(charging, Part, "charging resistance");
        var circuit = Circuit(voltage, frequency, 0, 0) with { ROhm = LoopResistance.Ohms + charging.Ohms };
        return ElectricCurrent.FromAmperes(RectifierStepper.ChargingPeakA(circuit));
    }

    private RectifierState Solve(ElectricPotential voltage, Frequency frequency, double powerW, double loadSiemens)
    {
        var sums = RectifierStepper.Settle(Circuit(voltage, frequency, powerW, loadSiemens))
            ?? throw new PartException(
                Part, "power", FormattableString.Invariant($"{powerW:0} W"),
                "less, or another loop or link",
                "under this constant power the link collapses, or swings with the loop's inductance and never settles");
        return RectifierState.From(sums, voltage, Kind);
    }

    private RectifierCircuit Circuit(ElectricPotential voltage, Frequency frequency, double powerW, double loadSiemens) => new(
        Kind, Guard.Positive(voltage, Part, "supply voltage").Volts * Math.Sqrt(2),
        2 * Math.PI * Guard.Positive(frequency, Part, "frequency").Hertz, LoopResistance.Ohms, LoopInductance.Henries,
        Capacitance.Farads, powerW, loadSiemens);
}

/// <summary>What a rectifier takes from the supply and gives to the link.</summary>
public sealed record RectifierState
{
    /// <summary>Rms current of a conductor.</summary>
    public required ElectricCurrent Current { get; init; }

    /// <summary>Rms fundamental of it.</summary>
    public required ElectricCurrent Fundamental { get; init; }

    /// <summary>Highest current of a conductor.</summary>
    public required ElectricCurrent Peak { get; init; }

    /// <summary>Power taken from the source.</summary>
    public required Power Input { get; init; }

    /// <summary>Power over volts times amperes.</summary>
    public required double PowerFactor { get; init; }

    /// <summary>Cosine of the angle between voltage and fundamental current.</summary>
    public required double DisplacementFactor { get; init; }

    /// <summary>Rms of all harmonics over the fundamental.</summary>
    public required double Distortion { get; init; }

    /// <summary>Peak over rms.</summary>
    public double Crest => Peak / Current;

    /// <summary>Mean link voltage.</summary>
    public required ElectricPotential LinkMean { get; init; }

    /// <summary>Least link voltage.</summary>
    public required ElectricPotential LinkLeast { get; init; }

    /// <summary>Highest link voltage.</summary>
    public required ElectricPotential LinkMost { get; init; }

    internal static RectifierState From(in RectifierSums sums, ElectricPotential voltage, RectifierKind kind)
    {
        var conductors = kind == RectifierKind.ThreePhase ? Math.Sqrt(3) : 1;
        var fundamental = Math.Sqrt((sums.SineA * sums.SineA + sums.CosineA * sums.CosineA) / 2);
        var rms = Math.Sqrt(sums.SquareA2);
        return new()
        {
            Current = ElectricCurrent.FromAmperes(rms),
            Fundamental = ElectricCurrent.FromAmperes(fundamental),
            Peak = ElectricCurrent.FromAmperes(sums.PeakA),
            Input = Power.FromWatts(sums.InputW),
            PowerFactor = sums.InputW / (conductors * voltage.Volts * rms),
            DisplacementFactor = sums.SineA / Math.Sqrt(sums.SineA * sums.SineA + sums.CosineA * sums.CosineA),
            Distortion = Math.Sqrt(Math.Max(0, rms * rms / (fundamental * fundamental) - 1)),
            LinkMean = ElectricPotential.FromVolts(sums.LinkMeanV),
            LinkLeast = ElectricPotential.FromVolts(sums.LinkLeastV),
            LinkMost = ElectricPotential.FromVolts(sums.LinkMostV),
        };
    }
}
