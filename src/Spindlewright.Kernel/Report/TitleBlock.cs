using System.Text;
using Spindlewright.Machines;
using static System.FormattableString;
using static Spindlewright.Figures.Html.Markup;

namespace Spindlewright.Kernel.Report;

/// <summary>What the machine is, part by part from the wall to the chuck, as the head of a drawing would say it.</summary>
internal static class TitleBlock
{
    internal static string Html(DrillPress press)
    {
        var html = new StringBuilder("<dl class=\"sw-title-block\">\n");
        foreach (var (part, words) in Rows(press))
            html.Append($"<div><dt>{part}</dt><dd>{Escape(words)}</dd></div>\n");
        return html.Append("</dl>\n").ToString();
    }

    private static IEnumerable<(string Part, string Words)> Rows(DrillPress press)
    {
        var (supply, inverter, motor) = (press.Supply, press.Inverter, press.Motor);
        yield return ("Supply", Invariant(
            $"{supply.Nominal.Volts:0} V, {supply.Frequency.Hertz:0} Hz, {(supply.Phases == 1 ? "single-phase" : "three-phase")}"));
        yield return ("Inverter", Invariant(
            $"{inverter.RatedCurrent.Amperes:0.#} A, {inverter.LowestFrequency.Hertz:0.#} to {inverter.HighestFrequency.Hertz:0.#} Hz"));
        yield return ("Motor", Invariant(
            $"{motor.RatedPower.Kilowatts:0.##} kW, {motor.Circuit.Capability.Poles} poles, {(motor.Connection == Motors.Connection.Star ? "star" : "delta")}"));
        yield return ("Belt", Invariant(
            $"{press.Belts.Count} {(press.Belts.Count == 1 ? "position" : "positions")}, ratio {press.Belts.Max(belt => belt.Ratio):0.##} to {press.Belts.Min(belt => belt.Ratio):0.##}"));
        yield return ("Spindle", Invariant($"{press.Spindle.ChuckDiameter.Millimeters:0} mm chuck, ")
            + (press.Spindle.HighestSpeed is { } highest ? Invariant($"to {highest.RevolutionsPerMinute:0} r/min") : "limit not given"));
    }
}
