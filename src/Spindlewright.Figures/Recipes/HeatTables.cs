using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Heat;
using UnitsNet;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of heat.</summary>
public static class HeatTables
{
    private static readonly NumberFormat Whole = NumberFormat.Fixed(0);
    private static readonly NumberFormat OneDecimal = NumberFormat.Fixed(1);
    private static readonly NumberFormat TwoDecimals = NumberFormat.Fixed(2);

    /// <summary>Continuous torque at a few frequencies.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Continuous(StudyResults results)
    {
        var motor = results.Heat.Motor;
        var baseHz = results.Press.Inverter.Curve.BaseFrequency.Hertz;
        double[] wanted = [motor[0].Frequency.Hertz, baseHz / 4, baseHz / 2, baseHz, 1.5 * baseHz, motor[^1].Frequency.Hertz];
        var rows = wanted.Select(hertz => motor.Index().MinBy(each => Math.Abs(each.Item.Frequency.Hertz - hertz))).Distinct();
        return new(
            "continuous-torque-at-frequencies", "Continuous torque at the motor shaft",
            [
                new("frequency", "Hz", Format: OneDecimal), new("bound", "N·m", Format: OneDecimal),
                new("short-time", "N·m", Format: TwoDecimals), new("continuous, hot side", "N·m", Format: TwoDecimals),
                new("continuous, cool side", "N·m", Format: TwoDecimals), new("what sets the hot side", Align: Alignment.Left),
                new("derating line", "N·m", Format: TwoDecimals), new("its uncertainty", "N·m", Format: TwoDecimals),
            ],
            [.. rows.Select(row => ImmutableArray.Create<Cell>(
                row.Item.Frequency.Hertz, results.Torques.Bound.Motor.NewtonMeters,
                results.Torques.Motor[row.Index].ShortTime.NewtonMeters, row.Item.Continuous.Capability.NewtonMeters,
                row.Item.Continuous.Hazard.NewtonMeters, row.Item.Limit, row.Item.Derated.NewtonMeters,
                row.Item.DeratedSpread.NewtonMeters))],
            footnotes: ["Hot side: warm air, slow cooling, lowest supply, loss of the inverter's waveform. Cool side: the reverse."],
            sources: [new("motor-guidance", "derating line", Provenance.FromMemory)]);
    }

    /// <summary>How hot steady states become, those at twice base frequency among them.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Cases(StudyResults results)
    {
        var heat = results.Heat;
        var rows = heat.Cases.Select(state => Row(state, null)).Concat(heat.TwiceBase.Loads.Select(load => Row(load.Case, load.DutyShare)));
        return new(
            "heat", "How hot it becomes",
            [
                new("state", Align: Alignment.Left), new("frequency", "Hz", Format: OneDecimal), new("motor torque", "N·m", Format: TwoDecimals),
                new("settles at, hot side", "°C", Format: Whole), new("settles at, cool side", "°C", Format: Whole),
                new("time to class limit, hot side", "min", Format: OneDecimal), new("time to class limit, cool side", "min", Format: OneDecimal),
                new("winding alone, least time", "s", Format: OneDecimal), new("may be on, hot side", "%", Format: Whole),
                new("may be on, cool side", "%", Format: Whole),
            ],
            [.. rows],
            caption: FormattableString.Invariant(
                $"Class {heat.Data.InsulationClass}: mean winding temperature up to {heat.Data.ClassLimit.DegreesCelsius:0} °C. Bound at the motor shaft: {results.Torques.Bound.Motor.NewtonMeters:0.0} N·m."),
            footnotes:
            [
                "Winding alone: the copper keeps all of its heat, as in the first seconds of a stall; the body model, in which the iron warms with it, gives the longest time.",
                FormattableString.Invariant($"May be on: largest share of a period of {heat.TwiceBase.Period.Minutes:0} min, off for the rest, that stays at the class limit."),
            ]);
    }

    /// <summary>What limits at twice base frequency, first what is met first.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table TwiceBase(StudyResults results) => new(
        "twice-base", FormattableString.Invariant($"What limits at {results.Heat.TwiceBase.Frequency.Hertz:0.#} Hz"),
        [new("limit", Align: Alignment.Left), new("how it stands", Align: Alignment.Left)],
        [.. results.Heat.TwiceBase.Limits.Select(limit => ImmutableArray.Create<Cell>(limit.Name, limit.Words))],
        caption: results.Heat.TwiceBase.Words);

    /// <summary>The tasks of the day, were each repeated for ever.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Tasks(StudyResults results) => new(
        "task-heat", "The tasks of the day, each repeated until it settles",
        [
            new("task", Align: Alignment.Left), new("frequency", "Hz", Format: OneDecimal), new("load", "% of rated torque", Format: Whole),
            new("loaded", "s", Format: Whole), new("unloaded", "s", Format: Whole), new("off", "s", Format: Whole),
            new("highest, hot side", "°C", Format: Whole), new("highest, cool side", "°C", Format: Whole), new("verdict", Align: Alignment.Left),
        ],
        [.. results.Heat.Tasks.Select(row => ImmutableArray.Create<Cell>(
            row.Task.Name, row.Task.Frequency.Hertz, 100 * row.Task.Load, row.Task.Loaded.Seconds, row.Task.Idle.Seconds,
            row.Task.Off.Seconds, Celsius(row.Highest.Capability), Celsius(row.Highest.Hazard), row.Words))]);

    private static ImmutableArray<Cell> Row(HeatCase state, Sided<double>? duty)
    {
        Cell Or(double? value, string otherwise) => state.Stalls ? Cell.Empty : value is { } number ? number : otherwise;
        return
        [
            state.Stalls ? $"{state.Name}: stalls" : state.Name, state.Frequency.Hertz, state.Load is { } load ? load.NewtonMeters : "stalled",
            Or(state.Final.Capability?.DegreesCelsius, "does not"), Or(state.Final.Hazard?.DegreesCelsius, "does not"),
            Or(state.TimeToLimit.Capability?.Minutes, "never"), Or(state.TimeToLimit.Hazard?.Minutes, "never"),
            LeastSeconds(state.WindingAlone),
            duty is { } hot ? 100 * hot.Capability : Cell.Empty, duty is { } cool ? 100 * cool.Hazard : Cell.Empty,
        ];
    }

    private static Cell LeastSeconds(Sided<Duration?>? alone) =>
        new[] { alone?.Capability, alone?.Hazard }.Min() is { } least ? least.Seconds : Cell.Empty;

    private static Cell Celsius(Temperature? temperature) => temperature is { } settled ? settled.DegreesCelsius : "stalls or never settles";
}
