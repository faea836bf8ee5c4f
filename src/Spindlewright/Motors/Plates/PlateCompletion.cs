using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors.Plates;

/// <summary>A whole nameplate for each side, with the defaults that made it whole and the questions it raises.</summary>
/// <param name="Nameplates">One for each side; the same where nothing was missing.</param>
/// <param name="Defaults">The defaults that went in.</param>
/// <param name="Questions">What does not go together.</param>
public sealed record PlateCompletion(
    Sided<Nameplate> Nameplates, IReadOnlyList<PlateDefault> Defaults, IReadOnlyList<PlateQuestion> Questions)
{
    private const string Part = "motor nameplate";

    /// <summary>Completes what is known of a motor.</summary>
    /// <param name="figures">Power or frame, poles or a speed; the rest may be missing.</param>
    /// <param name="handbook">Tables of the defaults.</param>
    /// <returns>The nameplates.</returns>
    /// <exception cref="PartException">Too little is known, or a figure is out of range.</exception>
    /// <remarks>
    /// P = √3 V I η cosφ gives the third of current, efficiency and power factor from two. A pair of defaults stands in for
    /// one that is missing: the capability side takes the lower efficiency, the higher power factor and the lower speed,
    /// which leave it the larger stator resistance for its current, and so the least torque at the slow end.
    /// </remarks>
    public static PlateCompletion Of(PlateFigures figures, Handbook handbook)
    {
        Guard.Within(figures.Frequency, Frequency.FromHertz(10), Frequency.FromHertz(400), Part, "rated frequency");
        var (defaults, assumed) = (new List<PlateDefault>(), PlateFigure.None);
        var poles = figures.Poles ?? PolesFrom(figures);
        RefuseSynchronous(figures, poles, handbook);
        var power = figures.Power is { } given ? Sided.Same(given) : FromFrame(figures, poles, handbook, defaults);
        if (figures.Power is null) assumed |= PlateFigure.Power;
        var speed = figures.Speed is { } rated ? Sided.Same(rated) : DefaultSpeed(figures, poles, handbook, defaults);
        if (figures.Speed is null) assumed |= PlateFigure.Speed;
        var efficiency = Efficiency(figures, poles, power, handbook, defaults);
        var factor = PowerFactor(figures, poles, power, efficiency, handbook, defaults);
        if (figures.PowerFactor is null && !(figures.Current is not null && figures.Efficiency is not null))
            assumed |= PlateFigure.PowerFactor;
        if (figures.Current is null && (figures.PowerFactor is null || figures.Efficiency is null)) assumed |= PlateFigure.Current;

        Nameplate On(Side side) => new(
            power.On(side), figures.LineVoltage, figures.Connection, figures.Frequency, poles, speed.On(side),
            figures.Current ?? Current(figures, power.On(side), efficiency.On(side), factor.On(side)), factor.On(side))
        {
            BreakdownTorque = figures.BreakdownTorque,
            LockedRotorTorque = figures.LockedRotorTorque,
            LockedRotorCurrent = figures.LockedRotorCurrent,
            NoLoadCurrent = figures.NoLoadCurrent,
            WindingResistance = figures.WindingResistance,
            WindingMeasuredAt = figures.WindingMeasuredAt,
            Assumed = assumed,
        };

        return new(new(On(Side.Capability), On(Side.Hazard)), defaults, PlateQuestions.Of(figures, handbook));
    }

    private static void RefuseSynchronous(PlateFigures figures, int poles, Handbook handbook)
    {
        var synchronous = 120 * figures.Frequency.Hertz / poles;
        if (figures.Speed is { } speed && speed.RevolutionsPerMinute >= synchronous)
            throw new PartException(
                Part, "rated speed", Invariant($"{speed.RevolutionsPerMinute:0.#} r/min"), Invariant($"below {synchronous:0.#} r/min"),
                Invariant($"{poles} poles at {figures.Frequency.Hertz:0.#} Hz turn at {synchronous:0.#} r/min synchronous{PlateQuestions.Loaded(poles, figures.Frequency.Hertz, handbook)}"));
    }

    private static ElectricCurrent Current(PlateFigures figures, Power power, double efficiency, double factor) =>
        ElectricCurrent.FromAmperes((double)power.Watts / (Math.Sqrt(3) * figures.LineVoltage.Volts * efficiency * factor));

    private static int PolesFrom(PlateFigures figures) => (figures.NoLoadSpeed ?? figures.Speed) is { } speed
        ? PlateQuestions.PolesOf(Guard.Positive(speed, Part, "rated speed"), figures.Frequency)
        : throw new PartException(
            Part, "number of poles", "not given", "the number of poles, a rated speed or a no-load speed");

    private static Sided<Power> FromFrame(
        PlateFigures figures, int poles, Handbook handbook, List<PlateDefault> defaults)
    {
        var frame = figures.FrameSize?.Millimeters ?? FrameOfShaft(figures, handbook);
        if (FrameFacts.Outputs(handbook, frame, poles) is not { } row)
            throw new PartException(
                Part, "frame size", Invariant($"{frame:0.#} mm with {poles} poles"),
                "56, 63, 71, 80, 90 or 100 mm with 2 or 4 poles, 71 to 112 mm with 6, 71 to 132 mm with 8", "other frames have no usual output here");
        var range = row.Range();
        var kilowatts = new Sided<double>(range.Value.Least, range.Value.Most);
        defaults.Add(new(
            "power", "rated shaft power", Invariant($"{kilowatts.Capability:0.###} kW"), Invariant($"{kilowatts.Hazard:0.###} kW"),
            range.Provenance, range.Source, $"{row.Quantity}: {range.Note}"));
        return kilowatts.Map(each => UnitsNet.Power.FromKilowatts(each));
    }

    private static double FrameOfShaft(PlateFigures figures, Handbook handbook) => figures.ShaftDiameter is { } shaft
        ? FrameFacts.SmallestOfShaft(handbook, shaft.Millimeters)?.Required().Value
            ?? throw new PartException(
                Part, "shaft diameter", Invariant($"{shaft.Millimeters:0.#} mm"), "9, 11, 14, 19, 24, 28 or 38 mm",
                "the shafts of frames 56 to 132")
        : throw new PartException(Part, "rated power", "not given", "a rated power, a frame size or a shaft diameter");

    private static Sided<RotationalSpeed> DefaultSpeed(
        PlateFigures figures, int poles, Handbook handbook, List<PlateDefault> defaults)
    {
        if (!handbook.MotorFacts.TryFind(Invariant($"rated-speed-{poles}-pole"), out var row))
            throw new PartException(Part, "rated speed", "not given", "the rated speed", $"there is no usual one for {poles} poles");
        var range = row.Range();
        var pair = new Sided<double>(range.Value.Least, range.Value.Most).Map(each => each * figures.Frequency.Hertz / 50);
        defaults.Add(new(
            "speed", "rated (full-load) speed", Invariant($"{pair.Capability:0} r/min"), Invariant($"{pair.Hazard:0} r/min"),
            range.Provenance, range.Source, $"{row.Quantity}, the same slip at other frequencies"));
        return pair.Map(each => RotationalSpeed.FromRevolutionsPerMinute(each));
    }

    private static Sided<double> Efficiency(
        PlateFigures figures, int poles, Sided<Power> power, Handbook handbook, List<PlateDefault> defaults)
    {
        if (figures.Efficiency is { } given)
            return Sided.Same(Guard.Within(given, 0.1, 0.99, Part, "efficiency"));
        // Where current and power factor are given it follows from them.
        if (figures is { Current: { } current, PowerFactor: { } factor })
            return power.Map(each => (double)each.Watts
                / (Math.Sqrt(3) * figures.LineVoltage.Volts * Guard.Positive(current, Part, "rated current").Amperes * factor));
        var pair = new Sided<double>(
            PlateQuestions.Limit("IE1", poles, power.Capability, handbook), PlateQuestions.Limit("IE3", poles, power.Hazard, handbook));
        defaults.Add(new(
            "efficiency", "efficiency at rated load", Invariant($"{100 * pair.Capability:0.#} %"), Invariant($"{100 * pair.Hazard:0.#} %"),
            Provenance.FromMemory, "iec-60034-30-1", "limits of the classes IE1 and IE3 for the size and poles at 50 Hz"));
        return pair;
    }

    private static Sided<double> PowerFactor(
        PlateFigures figures, int poles, Sided<Power> power, Sided<double> efficiency, Handbook handbook, List<PlateDefault> defaults)
    {
        if (figures.PowerFactor is { } given) return Sided.Same(Guard.Within(given, 0.2, 0.99, Part, "power factor"));
        if (figures.Current is { } current)
        {
            double On(Side side) => (double)power.On(side).Watts
                / (Math.Sqrt(3) * figures.LineVoltage.Volts * Guard.Positive(current, Part, "rated current").Amperes * efficiency.On(side));
            return new(On(Side.Capability), On(Side.Hazard));
        }
        if (!handbook.MotorFacts.TryFind(Invariant($"power-factor-{poles}-pole"), out var row))
            throw new PartException(Part, "power factor", "not given", "the power factor or the rated current", $"there is no usual one for {poles} poles");
        var range = row.Range();
        defaults.Add(new(
            "power_factor", "power factor at rated load", Invariant($"{range.Value.Most:0.##}"), Invariant($"{range.Value.Least:0.##}"),
            range.Provenance, range.Source, row.Quantity));
        return new(range.Value.Most, range.Value.Least);
    }
}
