using Spindlewright.Studies.Contact;
using static System.FormattableString;

namespace Spindlewright.Studies.Findings;

/// <summary>What contact, holding and stopping come to, in sentences.</summary>
internal static class ContactFindings
{
    internal static IEnumerable<Finding> Of(StudyResults results)
    {
        var study = results.Contact;
        var wound = study.Mechanisms.Mechanisms[0].Largest!;
        yield return new(
            "Not determined about contact",
            Invariant($"{study.Mechanisms.NotDetermined.Count} things are not determined; nothing may be read into that."),
            string.Join("; ", study.Mechanisms.NotDetermined.Select(each => $"{each.Mechanism}: {each.Missing}")) + ".");
        yield return new(
            "Clothing, glove or hair wound in",
            Invariant($"The largest figure, {wound.Computed}, is {wound.Value:0} {wound.Published.Unit} by the bound: it {wound.Words}, {wound.Ratio:0.0} times."),
            "Not exceeding a published figure does not show that contact is harmless.");
        if (study.TwoWays.Speeds.MaxBy(SameSpeedTwoWays.BoundApart) is { } speed)
            yield return ByBeltOrFrequency(speed);
        var (holding, stop) = (study.Design.Holding.MaxBy(row => row.Bound)!, study.Design.Stops.MaxBy(row => row.Energy)!);
        var at = holding.At[^1];
        yield return new(
            "Holding the work",
            Invariant($"On belt position {holding.Belt.Name} the bound of {holding.Bound.NewtonMeters:0.0} N·m puts {at.Pin.Newtons:0} N on a stop {at.Distance.Millimeters:0} mm from the axis; clamps by friction alone need {at.Clamps.Newtons:0} N there."),
            "Whatever the tool: a drill that grabs is held by nothing else.");
        yield return new(
            "Stopping",
            Invariant($"At {stop.Speed.RevolutionsPerMinute:0} r/min on position {stop.Belt.Name} {stop.Energy.Joules:0} J turn; to stand still after {results.Press.ContactOrUsual.WantedTurns:0.#} turns it must stop in {stop.Time.Seconds:0.00} s, with {stop.OverRated:0.0} times rated motor torque (bound {results.Torques.Bound.Motor.NewtonMeters:0.0} N·m at the motor) and {(double)stop.Power.Watts:0} W at first."));
    }

    private static Finding ByBeltOrFrequency(SpeedTwoWays speed)
    {
        var (slow, fast) = (speed.Ways[0], speed.Ways[^1]);
        return new(
            "The same speed by belt or by frequency",
            Invariant($"{speed.Speed.RevolutionsPerMinute:0} r/min on position {slow.Belt.Name} has a bound of {slow.Torque.Bound.NewtonMeters:0.0} N·m, on position {fast.Belt.Name} at {fast.Frequency.Hertz:0.0} Hz one of {fast.Torque.Bound.NewtonMeters:0.0} N·m."),
            Invariant($"As modelled {slow.Torque.AsModelled.NewtonMeters:0.0} and {fast.Torque.AsModelled.NewtonMeters:0.0} N·m, under those bounds; what winds on in the longest reaction time is the same, {slow.WoundOn.Meters:0.00} m."));
    }
}
