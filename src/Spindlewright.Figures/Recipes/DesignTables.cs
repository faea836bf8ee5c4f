using Spindlewright.Foundations;
using Spindlewright.Studies.Contact;
using static System.FormattableString;
using static Spindlewright.Figures.Recipes.StudyTables;

namespace Spindlewright.Figures.Recipes;

/// <summary>Numbers to design by: holding the work, stopping, speed limits, what winds on before any stop.</summary>
internal static class DesignTables
{
    internal static IEnumerable<Table> Of(ContactStudy study)
    {
        yield return Holding(study);
        if (study.Tools.Count > 0) yield return Tools(study);
        yield return Stops(study);
        yield return Permitted(study);
        yield return Wound(study);
    }

    private static Table Holding(ContactStudy study) => new(
        "contact-holding", "What a stop or clamps must bear, whatever the tool: by the bound of the position",
        [
            Name("belt position"), new("bound", "N·m", Format: OneDecimal), new("distance from the axis", "mm", Format: Whole),
            new("on a stop pin", "N", Format: Whole), new("clamps by friction alone", "N", Format: Whole),
        ],
        [
            .. study.Design.Holding.SelectMany(row => row.At.Select(at => Row(
                [row.Belt.Name, row.Bound.NewtonMeters, at.Distance.Millimeters, at.Pin.Newtons, at.Clamps.Newtons]))),
        ],
        caption: "A stop that the work rests against needs no friction; clamps that hold by friction alone need several times its force.");

    private static Table Tools(ContactStudy study) => new(
        "contact-tools", "What must hold the work against each of your tools",
        [
            Name("operation"), new("tool", "mm", Format: OneDecimal), new("cutting torque", "N·m", Format: OneDecimal), Name("belt position"),
            new("bound", "N·m", Format: OneDecimal), new("on a stop pin", "N", Format: Whole), new("clamps by friction alone", "N", Format: Whole),
            new("stop pin at least", "mm", Format: Whole),
        ],
        [
            .. study.Tools.Select(tool => Row(
            [
                tool.Item.Name, tool.Item.Diameter.Millimeters, tool.Cutting.NewtonMeters, tool.Belt.Name, tool.Bound.NewtonMeters, tool.Pin.Newtons,
                tool.Clamps.Newtons, Math.Ceiling(tool.PinDistance.Millimeters),
            ])),
        ],
        caption: Invariant($"Largest tool first, each on the position with the largest bound among those that turn it at its speed. Forces at {study.Tools[0].Distance.Millimeters:0} mm from the axis; the last column is where a stop bears {HeldTool.PinBears.Newtons:0} N."),
        footnotes: ["The cutting torque is what a sharp drill needs while it cuts. A drill that grabs as it breaks through meets the bound: hold the work against that."]);

    private static Table Stops(ContactStudy study) => new(
        "contact-stops", "A stop within the wanted turns, from the highest speed",
        [
            Name("belt position"), new("speed", "r/min", Format: Whole), new("energy", "J", Format: OneDecimal), new("time", "s", Format: NumberFormat.Fixed(2)),
            new("braking at the motor", "N·m", Format: OneDecimal), new("bound at the motor", "N·m", Format: OneDecimal), new("over rated torque", Format: OneDecimal), new("power at first", "W", Format: Whole),
            new("resistor at most", "Ω", Format: Whole),
        ],
        [
            .. study.Design.Stops.Select(stop => Row(
            [
                stop.Belt.Name, stop.Speed.RevolutionsPerMinute, stop.Energy.Joules, stop.Time.Seconds, stop.MotorTorque.NewtonMeters, stop.MotorBound.NewtonMeters, stop.OverRated,
                (double)stop.Power.Watts, stop.MostResistance.Ohms,
            ])),
        ],
        footnotes:
        [
            Invariant($"Chuck guard: at least {study.Design.GuardDiameter.Millimeters:0} mm inside (chuck and 25 mm all round, ISO 13854 for a finger, from memory); length {(study.Design.GuardLength is { } length ? Invariant($"at least {length.Millimeters:0} mm") : "not determined")}."),
            "Braking above the bound: no setting makes this motor stop within those turns. What motor and inverter cannot brake is not stopped; braking guards nobody.",
        ],
        sources: [new SourceNote("iso-13854", "least gap that does not crush a finger", Provenance.FromMemory)]);

    private static Table Permitted(ContactStudy study) => new(
        "contact-permitted", "Highest permitted frequency of each belt position",
        [Name("belt position"), Name("fitted"), new("highest permitted", "Hz", Format: OneDecimal), Name("set by"), Name("the settings")],
        [
            .. study.Design.Permitted.Select(each => Row(
            [
                each.Belt.Name, each.Fitted.Length == 0 ? "what always turns" : each.Fitted, each.Frequency is { } hertz ? hertz.Hertz : Cell.Of("not determined"),
                each.SetBy, each.Frequency is null ? "not determined" : each.Passed ? "pass it" : "do not reach it",
            ])),
        ],
        footnotes: ["The inverter cannot know the belt position, nor what is in the chuck."]);

    private static string StopAfter(WoundAtBelt row) => row.Time is null ? "never" : row.StopKnown ? "counted" : "not determined: left out";

    private static Table Wound(ContactStudy study) => new(
        "contact-wound-on", "Wound on the chuck before the spindle stands still, from the highest speed",
        [
            Name("belt position"), Name("reaction"), new("reaction time", "s", Format: NumberFormat.Fixed(2)), Name("the stop after it"), new("turns", Format: OneDecimal),
            new("would take", "m"), new("a sleeve is on after", "s", Format: NumberFormat.Fixed(2)),
        ],
        [
            .. study.Design.Wound.Select(row => Row(
            [
                row.Belt.Name, row.Reaction, row.Time is { } time ? time.Seconds : Cell.Of("none"), StopAfter(row), row.Wound.Turns,
                row.Wound.Length.Meters, row.SleeveTime.Seconds,
            ])),
        ],
        footnotes:
        [
            "Fast and slow: mean of 1469 adults (published) and 95th percentile at 60 to 64 years (published); the foot's 0.75 s is own choice; startled is your longest reaction.",
            Invariant($"Would take: what goes on if there is so much, layer over layer. A sleeve: {WoundAtBelt.Sleeve.Meters:0.0} m, wrist to shoulder of a large man (own choice). Without a stop the figures are those of the first second, and it goes on."),
            "The stop follows at an even rate in your measured stop time. Where it is not given its length is not determined and left out: more is wound on than stands here.",
        ]);
}
