using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Mains;
using Spindlewright.Studies;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Figures.Recipes;

/// <summary>The tables of the supply side.</summary>
public static class SupplyTables
{
    private static readonly NumberFormat Whole = NumberFormat.Fixed(0);
    private static readonly NumberFormat TwoDecimals = NumberFormat.Fixed(2);

    /// <summary>Lowest, nominal and highest supply at rated motor power.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Levels(StudyResults results) => new(
        "supply", "Supply, link and voltage ceiling at rated motor power",
        [
            new("supply", Align: Alignment.Left), new("voltage", "V", Format: Whole), .. InputColumns(),
            new("mean link", "V", Format: Whole), new("voltage ceiling, loaded", "V", Format: Whole),
            new("voltage ceiling, unloaded", "V", Format: Whole),
        ],
        [.. results.Supply.Levels.Select(level => ImmutableArray.Create<Cell>([
            level.Name, level.Voltage.Volts, .. Input(level.State), level.State.LinkMean.Volts, level.Ceiling.Volts,
            level.UnloadedCeiling.Volts]))],
        footnotes: [$"Fuse or plug: {results.Supply.Fuse.Words}.", "Wiring and protection by a licensed electrician, to local codes."]);

    /// <summary>Input over the load.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Loads(StudyResults results) => new(
        "input", "Input of the inverter over the load, base frequency and nominal supply",
        [
            new("rated torque", "%", Format: Whole), new("at the shaft", "W", Format: Whole), new("into the motor", "W", Format: Whole),
            new("from the socket", "W", Format: Whole), .. InputColumns(),
        ],
        [.. results.Supply.Loads.Select(load => ImmutableArray.Create<Cell>([
            100 * load.Share, (double)load.Shaft.Watts, (double)load.MotorInput.Watts, (double)load.State.Input.Watts,
            .. Input(load.State)]))]);

    /// <summary>Switching on and slowing down.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Switching(StudyResults results)
    {
        var on = results.Supply.SwitchingOn;
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Cell>>();
        rows.Add(["link charging at the crest, nothing to limit it: peak", on.LinkBare.Amperes, "A"]);
        rows.Add(["link charging through the unit's resistance: peak", on.LinkLimited is { } limited ? limited.Amperes : "not given", "A"]);
        rows.Add(["motor direct on line: steady locked-rotor current", on.LockedRotor.Amperes, "A"]);
        rows.Add(["motor direct on line: first half-cycle peak", Invariant($"{on.FirstPeak.Least:0} to {on.FirstPeak.Most:0}"), "A"]);
        rows.Add(["motor on the ramp, much inertia", Amperes(on.RampMotor.Capability), "A"]);
        rows.Add(["socket at the end of the ramp, much inertia", Amperes(on.RampInput.Capability), "A"]);
        foreach (var down in results.Supply.SlowingDown)
        {
            var hertz = Invariant($"{down.Frequency.Hertz:0.#} Hz");
            rows.Add([$"energy of rotation at {hertz}", Invariant($"{down.Energy.Hazard.Joules:0} to {down.Energy.Capability.Joules:0}"), "J"]);
            rows.Add([$"link if all of it came back at once from {hertz}", Invariant($"{down.AllIntoLink.Hazard.Volts:0} to {down.AllIntoLink.Capability.Volts:0}"), "V"]);
            rows.Add([$"least time to standstill from {hertz} without a braking resistor", Invariant($"{down.LeastTime.Hazard.Seconds:0.0} to {down.LeastTime.Capability.Seconds:0.0}"), "s"]);
        }
        return new(
            "switching", "Switching on and slowing down",
            [new("what", Align: Alignment.Left), new("value", Format: new(Significant: 3)), new("unit", Align: Alignment.Left)],
            rows.ToImmutable(),
            footnotes:
            [
                Invariant($"Inertia is our own guess: 1.2 to 4 times a catalogue rotor of this power. The unit is taken to trip at {results.Supply.SlowingDown[0].Trip.Volts:0} V."),
            ],
            sources: [new("iec-60034-12", "first half-cycle peak 1.8 to 2.8 times steady", Provenance.SecondHand)]);
    }

    /// <summary>Energy of the day.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Day(StudyResults results)
    {
        var day = results.Supply.Day;
        return new(
            "day", "Energy of the working day",
            [
                new("task", Align: Alignment.Left), new("through the inverter", "Wh", Format: Whole),
                new("direct on line", "Wh", Format: Whole), new("at the shaft", "Wh", Format: Whole),
            ],
            [
                .. day.Tasks.Select(row => ImmutableArray.Create<Cell>(
                    row.Task.Name, WattHours(row.WithInverter), WattHours(row.DirectOnLine), row.AtDrill.WattHours)),
                ["standby while the motor is off", day.Standby.WattHours, 0.0, 0.0],
                ["the day", WattHours(day.WithInverter), WattHours(day.DirectOnLine), day.Tasks.Sum(row => row.AtDrill.WattHours)],
            ],
            caption: day.Words, emphasis: [day.Tasks.Count + 1]);
    }

    private static ImmutableArray<Column> InputColumns() =>
    [
        new("input current", "A", Format: TwoDecimals), new("power factor", Format: TwoDecimals),
        new("displacement factor", Format: TwoDecimals), new("distortion", "%", Format: Whole), new("crest", Format: TwoDecimals),
    ];

    private static ImmutableArray<Cell> Input(RectifierState state) =>
        [state.Current.Amperes, state.PowerFactor, state.DisplacementFactor, 100 * state.Distortion, state.Crest];

    private static Cell WattHours(Energy? energy) => energy is { } known ? known.WattHours : "stalls";

    private static Cell Amperes(ElectricCurrent? current) => current is { } known ? known.Amperes : "stalls";
}
