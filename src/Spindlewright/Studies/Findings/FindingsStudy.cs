using Spindlewright.Foundations;
using Spindlewright.Studies.Overpowering;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Torques;
using static System.FormattableString;

namespace Spindlewright.Studies.Findings;

/// <summary>Puts the results into sentences, in the order in which a reader decides.</summary>
internal static class FindingsStudy
{
    internal static IReadOnlyList<Finding> Of(StudyResults results) =>
    [
        Speeds(results), SlowEnd(results), Boost(results), .. Holes(results), .. CuttingFindings.Of(results), Permitted(results), Hands(results), .. ContactFindings.Of(results),
        Voltage(results), .. FrequencyFindings.Of(results),
        new(Invariant($"Kept at {results.Heat.TwiceBase.Frequency.Hertz:0.#} Hz: does it overheat?"), results.Heat.TwiceBase.Words),
        .. SizingFindings.Of(results), new("Fuse and plug", Sentence(results.Supply.Fuse.Words)), new("What the inverter saves", results.Supply.Day.Words),
    ];

    private static string Sentence(string words) => words.WithCapital() + ".";

    private static Finding Speeds(StudyResults results)
    {
        var speeds = results.Speeds;
        var found = results.Before is { } before
            ? Invariant($"As found ({before.Description}) the slowest was {before.Slowest.RevolutionsPerMinute:0} r/min.")
            : "";
        var gaps = speeds.Gaps.Count == 0
            ? "the bands of the belt positions leave no gap"
            : "no position reaches " + string.Join(" or ", speeds.Gaps.Select(gap => Invariant(
                $"{gap.From.RevolutionsPerMinute:0} to {gap.To.RevolutionsPerMinute:0} r/min")));
        return new(
            "Speeds",
            Invariant($"{speeds.Slowest.RevolutionsPerMinute:0} to {speeds.Fastest.RevolutionsPerMinute:0} r/min at the unloaded spindle, on {speeds.Belts.Count} belt positions between {results.Press.Inverter.LowestFrequency.Hertz:0.#} and {results.Press.Inverter.HighestFrequency.Hertz:0.#} Hz; {gaps}."),
            found);
    }

    private static Finding SlowEnd(StudyResults results)
    {
        var slow = Slowest(results);
        var (lowest, atBase) = (slow.Points[0], AtBase(results, slow));
        var loaded = results.Speeds.Belts.Single(belt => belt.Belt == slow.Belt).AtLowest.Loaded;
        var carries = loaded is { } speed
            ? Invariant($"Loaded with its rated torque, the motor still turns the spindle there, at {speed.RevolutionsPerMinute:0} r/min.")
            : "Loaded with its rated torque, the motor stalls there.";
        return new(
            "Torque at the slow end",
            Invariant($"{lowest.PullOut.Capability.NewtonMeters:0.0} to {lowest.PullOut.Hazard.NewtonMeters:0.0} N·m as modelled, at most {slow.Bound.NewtonMeters:0.0} N·m by the bound, on belt position {slow.Belt.Name} at {lowest.Frequency.Hertz:0.#} Hz ({lowest.SynchronousSpeed.RevolutionsPerMinute:0} r/min)."),
            Invariant($"At base frequency the same position has {atBase.PullOut.Capability.NewtonMeters:0.0} to {atBase.PullOut.Hazard.NewtonMeters:0.0} N·m as modelled, under the same bound. {carries}"));
    }

    private static Finding Boost(StudyResults results)
    {
        var slow = Slowest(results);
        var lowest = slow.Points[0];
        return new(
            "What boost or a vector mode would give back",
            Invariant($"{lowest.IdealBoost.Capability.NewtonMeters:0.0} to {lowest.IdealBoost.Hazard.NewtonMeters:0.0} N·m on the same position at {lowest.Frequency.Hertz:0.#} Hz (bound {slow.Bound.NewtonMeters:0.0} N·m), with stator flux held at its rated value."),
            "The low-speed loss of torque goes when somebody changes a setting; nobody may rely on it.");
    }

    private static IEnumerable<Finding> Holes(StudyResults results)
    {
        foreach (var item in results.Work.Items)
        {
            var asked = Invariant(
                $"{item.Item.Diameter.Millimeters:0.#} mm in {item.Item.Material.Name} at {item.Speed.RevolutionsPerMinute:0} r/min and {item.Item.FeedPerRevolution.Millimeters:0.##} mm/rev asks {item.Torque.NewtonMeters:0.0} N·m, {(double)item.Power.Watts:0} W{Thrust(item)} ({item.Cut.Load?.Methods[0].Method ?? "no cutting load"}).");
            yield return item.Best is { Margin: null } free
                ? new(
                    item.Item.Name,
                    Invariant($"Belt position {free.Belt.Name} at {free.Frequency!.Value.Hertz:0.#} Hz turns it at {item.Speed.RevolutionsPerMinute:0} r/min (bound {free.Bound.NewtonMeters:0.0} N·m)."),
                    "Nothing is cut: the accuracy of the speed is the point.")
                : item.Best is { } best
                ? new(
                    item.Item.Name,
                    Invariant($"{(best.Margin < 1 ? "Only " : "")}{best.Margin:0.00} times the torque needed, for a short time, on belt position {best.Belt.Name} at {best.Frequency!.Value.Hertz:0.#} Hz{(best.Margin < 1 ? "; no position has more" : "")}."),
                    Invariant($"{asked} The position has {best.Available!.Value.NewtonMeters:0.0} N·m ({best.Words}; bound {best.Bound.NewtonMeters:0.0} N·m). {Sentence(item.Words)}"))
                : new(
                    item.Item.Name, "No belt position turns this load at this speed.",
                    Invariant($"{asked} The motor is rated {(double)results.Press.Motor.RatedPower.Watts:0} W. A slower speed, a smaller feed or a pilot hole asks less."));
        }
    }

    private static string Thrust(Work.WorkResult item) =>
        item.Thrust is { } thrust ? Invariant($" and {thrust.Newtons:0} N of thrust") : "";

    private static Finding Permitted(StudyResults results)
    {
        const string Title = "Highest permitted frequency";
        var limits = PermittedFrequency.LimitsOf(results.Press);
        if (limits.Count == 0) return new(Title, "Not determined: the highest speed of chuck and bearings is not given.");
        var over = results.Contact.Design.Permitted.Where(each => each.Passed && (each.Fitted.Length == 0 || each.SetBy == each.Fitted))
            .GroupBy(each => each.SetBy).ToList();
        var what = string.Join(", ", limits.Select(limit => Invariant($"{limit.Name} {limit.Speed.RevolutionsPerMinute:0} r/min")));
        return new(Title, over.Count == 0
            ? $"No belt position passes a limit within the frequency settings ({what})."
            : string.Join(" ", over.Select(group => $"The limit of {group.Key} is passed by "
                + string.Join(" and ", group.Select(each => Invariant($"position {each.Belt.Name} above {each.Frequency!.Value.Hertz:0.#} Hz"))) + ".")),
            over.Count == 0 ? "" : $"Limits: {what}. The inverter cannot know the belt position.");
    }

    private static Finding Hands(StudyResults results)
    {
        var rows = results.Hands.Belts;
        var over = rows.Count(row => row.Hands[^1].BoundOverHand > 1);
        var most = rows.MaxBy(row => row.BoundForce)!;
        var hands = string.Join(" ", rows[0].Hands.Select((hand, index) => HandSentence(results, index)));
        return new(
            "A hand at the chuck",
            Invariant($"On {over} of {rows.Count} belt positions the bound exceeds the torque of the strong hand."),
            Invariant($"{hands} The bounds run from {rows.Min(row => row.Bound.NewtonMeters):0.0} to {most.Bound.NewtonMeters:0.0} N·m; the largest, on position {most.Belt.Name}, puts {most.BoundForce.Newtons:0} N at the surface of the {results.Hands.ChuckDiameter.Millimeters:0} mm chuck."));
    }

    /// <summary>What becomes of one hand over the belt positions, bound in the same sentence.</summary>
    private static string HandSentence(StudyResults results, int index)
    {
        var rows = results.Hands.Belts;
        var hand = rows[0].Hands[index].Hand;
        var named = rows.Where(row => row.Hands[index].Answer is not OverpoweringSpeed.NoSpeed).Select(row =>
        {
            var when = row.Hands[index].Answer is OverpoweringSpeed.AlreadyAtStandstill
                ? "already at standstill" : row.Hands[index].Answer.Words;
            return (When: when, Position: Invariant($"{row.Belt.Name} (bound {row.Bound.NewtonMeters:0.0} N·m)"));
        }).GroupBy(each => each.When, each => each.Position)
            .Select(group => $"{group.Key} by position {string.Join(", ", group)}").ToList();
        return named.Count == 0
            ? Invariant($"For the {hand.Name} ({hand.Torque.NewtonMeters:0.0} N·m, percentile {hand.Percentile:0}) no speed of any belt position can be named.")
            : Invariant($"The {hand.Name} ({hand.Torque.NewtonMeters:0.0} N·m, percentile {hand.Percentile:0}) is overpowered {string.Join(" and ", named)}.");
    }

    private static Finding Voltage(StudyResults results)
    {
        var study = results.Voltages;
        return new(
            "Voltage ceiling",
            Invariant($"The voltage stops rising at {study.RealBaseFrequency.Hertz:0.0} Hz; the base frequency is set to {results.Press.Inverter.Curve.BaseFrequency.Hertz:0.#} Hz."),
            Invariant($"The loaded DC link gives {study.NominalCeiling.Volts:0} V line to line at nominal supply, {study.Ceiling.Capability.Volts:0} V at the lowest and, unloaded, {study.Ceiling.Hazard.Volts:0} V at the highest."));
    }

    private static SpindleTorques Slowest(StudyResults results) =>
        results.Torques.Spindle.MaxBy(spindle => spindle.Belt.Ratio)!;

    private static SpindleTorquePoint AtBase(StudyResults results, SpindleTorques spindle) =>
        spindle.Points.Last(point => point.Frequency <= results.Press.Inverter.Curve.BaseFrequency);
}
