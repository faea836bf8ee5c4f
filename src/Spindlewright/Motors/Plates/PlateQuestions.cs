using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors.Plates;

/// <summary>A question that the figures of a plate raise before they are used.</summary>
/// <param name="Asked">The question.</param>
/// <param name="Numbers">The figures that raise it.</param>
/// <param name="Check">What to look at.</param>
public sealed record PlateQuestion(string Asked, string Numbers, string Check)
{
    /// <summary>Question, numbers and what to look at, in one paragraph.</summary>
    public string Words => $"{Asked} {Numbers} {Check}";
}

/// <summary>Asks about figures of a plate that do not go together.</summary>
public static class PlateQuestions
{
    private const double CurrentTolerance = 0.05;
    private const double MostUsualSlip = 0.15;
    private const double LeastUsualSlip = 0.008;

    /// <summary>The questions, most important first.</summary>
    /// <param name="figures">What is known.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Empty where nothing looks wrong.</returns>
    public static IReadOnlyList<PlateQuestion> Of(PlateFigures figures, Handbook handbook) =>
    [
        .. SpeedQuestions(figures, handbook), .. CurrentQuestions(figures, handbook), .. TorqueQuestions(figures),
        .. NoLoadQuestions(figures), .. ResistanceQuestions(figures),
    ];

    /// <summary>The even number of poles whose synchronous speed stands next above a speed.</summary>
    internal static int PolesOf(RotationalSpeed speed, Frequency frequency)
    {
        // A meter that reads a hair above synchronous speed still means that speed.
        var most = 120 * frequency.Hertz / (speed.RevolutionsPerMinute * 0.998);
        return Math.Max(2, 2 * (int)Math.Floor(most / 2));
    }

    private static IEnumerable<PlateQuestion> SpeedQuestions(PlateFigures figures, Handbook handbook)
    {
        if (figures.Speed is not { } speed) yield break;
        var (rpm, hertz) = (speed.RevolutionsPerMinute, figures.Frequency.Hertz);
        var byspeed = PolesOf(speed, figures.Frequency);
        var synchronous = 120 * hertz / byspeed;
        if (rpm >= synchronous * (1 - LeastUsualSlip))
            yield return new(
                "Is this the synchronous speed instead of the rated one?",
                Invariant($"{rpm:0.#} r/min is all but the {synchronous:0.#} r/min at which the field of {byspeed} poles turns at {hertz:0.#} Hz{Loaded(byspeed, hertz, handbook)}."),
                "Read the rated (full-load) speed on the plate.");
        if (figures.Poles is not { } poles) yield break;
        var slip = 1 - rpm * poles / (120 * hertz);
        if (byspeed != poles)
            yield return new(
                "Do poles and speed belong to the same motor?",
                Invariant($"{rpm:0.#} r/min at {hertz:0.#} Hz belongs to {byspeed} poles ({synchronous:0.#} r/min synchronous), but {poles} poles are given ({120 * hertz / poles:0.#} r/min synchronous)."),
                Invariant($"Count again, or read whether the plate means the synchronous speed{Loaded(poles, hertz, handbook)}."));
        else if (slip > MostUsualSlip)
            yield return new(
                "Does the motor really slip that much at rated load?",
                Invariant($"{rpm:0.#} r/min is {100 * slip:0} % below the {synchronous:0.#} r/min of {poles} poles{Loaded(poles, hertz, handbook)}."),
                "Check speed and number of poles.");
    }

    internal static string Loaded(int poles, double hertz, Handbook handbook)
    {
        if (!handbook.MotorFacts.TryFind(Invariant($"rated-speed-{poles}-pole"), out var row)) return "";
        var range = row.Range().Value;
        var scale = hertz / 50;
        return Invariant($"; loaded, small motors of {poles} poles run at about {range.Least * scale:0} to {range.Most * scale:0} r/min there");
    }

    private static IEnumerable<PlateQuestion> CurrentQuestions(PlateFigures figures, Handbook handbook)
    {
        if (figures is not { Power: { } power, Current: { } current, PowerFactor: { } factor }) yield break;
        var (watts, volts) = ((double)power.Watts, figures.LineVoltage.Volts);
        var implied = watts / (Math.Sqrt(3) * volts * current.Amperes * factor);
        if (figures.Efficiency is { } efficiency)
        {
            var expected = watts / (Math.Sqrt(3) * volts * efficiency * factor);
            if (Math.Abs(current.Amperes / expected - 1) > CurrentTolerance)
                yield return new(
                    "Does the current belong to this voltage and connection?",
                    Invariant($"{watts:0} W over √3 · {volts:0} V · {efficiency:0.###} · {factor:0.###} is {expected:0.##} A, but {current.Amperes:0.##} A is given in {figures.Connection.ToString().ToLowerInvariant()}; a factor of 1.73 would be the other connection."),
                    "Read power, voltage, current, efficiency and power factor again.");
            yield break;
        }
        var poles = figures.Poles ?? (figures.Speed is { } speed ? PolesOf(speed, figures.Frequency) : 4);
        var (least, most) = (Limit("IE1", poles, power, handbook) - 0.12, Limit("IE4", poles, power, handbook) + 0.04);
        if (implied < least || implied > most)
            yield return new(
                "Do power, voltage, current and power factor belong together?",
                Invariant($"They imply an efficiency of {100 * implied:0} %, where motors of that size have {100 * least:0} to {100 * most:0} %; a factor of 1.73 in the current would be the other connection."),
                "Read the current that stands beside this voltage.");
    }

    private static IEnumerable<PlateQuestion> TorqueQuestions(PlateFigures figures)
    {
        if (figures is { LockedRotorTorque: { } locked, BreakdownTorque: { } breakdown } && locked > breakdown)
            yield return new(
                "Are locked-rotor and breakdown torque exchanged?",
                Invariant($"{locked:0.##} of rated at standstill stands above {breakdown:0.##} at breakdown, which is the peak of the curve."),
                "Read both figures again.");
    }

    private static IEnumerable<PlateQuestion> NoLoadQuestions(PlateFigures figures)
    {
        if (figures is { NoLoadCurrent: { } idle, Current: { } rated } && idle / rated is > 0.95 or < 0.2)
            yield return new(
                "Was the no-load current taken at rated voltage and frequency, in this connection?",
                Invariant($"{figures.NoLoadCurrent!.Value.Amperes:0.##} A is {figures.NoLoadCurrent.Value / figures.Current!.Value:0.00} of the rated current; small motors have 0.3 to 0.9 (common practice, no source)."),
                "Measure again at rated volts and hertz.");
    }

    private static IEnumerable<PlateQuestion> ResistanceQuestions(PlateFigures figures)
    {
        if (figures is not { WindingResistance: { } resistance, Current: { } current, Power: { } power, PowerFactor: { } factor }) yield break;
        var copperW = 1.5 * current.Amperes * current.Amperes * resistance.Ohms;
        var lossW = Math.Sqrt(3) * figures.LineVoltage.Volts * current.Amperes * factor - (double)power.Watts;
        if (copperW > lossW)
            yield return new(
                "Was the resistance measured between two terminals, in this connection?",
                Invariant($"{resistance.Ohms:0.##} Ω would lose {copperW:0} W at rated current, but all losses together are {lossW:0} W; one winding of a delta measures 1.5 times its terminals, star against delta differs by 3."),
                "Measure between two terminals with the links in place, subtracting the leads.");
    }

    /// <summary>The efficiency limit of a class, at the nearest end of the printed powers where it is not printed.</summary>
    internal static double Limit(string name, int poles, Power power, Handbook handbook)
    {
        var rows = handbook.MotorEfficiency.Limits.Where(row => row.Poles == Math.Clamp(poles, 2, 8)).ToList();
        var printed = rows.Where(row => row.EfficiencyClass == name).Select(row => row.RatedPower).ToList();
        var (least, most) = (printed.Min(each => each), printed.Max(each => each));
        return handbook.MotorEfficiency.At(name, Math.Clamp(poles, 2, 8), UnitMath.Clamp(power, least, most)).Value;
    }
}
