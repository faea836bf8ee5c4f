using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using Spindlewright.Mains;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.SupplyAndBill;

/// <summary>The supply side: input current and its shape, link voltage, fuse, switching on and off, energy of a day.</summary>
/// <remarks>
/// Wiring, protective devices and filters are looked at in no more than general terms: a licensed electrician and local codes
/// decide them.
/// </remarks>
public sealed record SupplyStudy
{
    private static readonly double[] Shares = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5];

    /// <summary>Lowest, nominal and highest supply at rated motor power.</summary>
    public required IReadOnlyList<SupplyLevel> Levels { get; init; }

    /// <summary>Input over the load at base frequency and nominal supply.</summary>
    public required IReadOnlyList<InputAtLoad> Loads { get; init; }

    /// <summary>Fuse or plug.</summary>
    public required FuseMargin Fuse { get; init; }

    /// <summary>Switching on.</summary>
    public required SwitchingOn SwitchingOn { get; init; }

    /// <summary>Slowing down from base and from the highest frequency.</summary>
    public required IReadOnlyList<SlowingDown> SlowingDown { get; init; }

    /// <summary>The bill.</summary>
    public required DayEnergy Day { get; init; }

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>What the supply sees.</returns>
    public static SupplyStudy Of(DrillPress press, Handbook handbook)
    {
        var feed = new MotorFeed(press);
        var levels = Levels3(press, feed);
        return new()
        {
            Levels = levels,
            Loads = [.. Shares.Select(share => feed.AtBase(share)).OfType<InputAtLoad>()],
            Fuse = Margin(press, levels[0].State.Current),
            SwitchingOn = SwitchingStudy.On(press, feed, handbook),
            SlowingDown = SwitchingStudy.Down(press, feed),
            Day = DayStudy.Of(press, feed),
        };
    }

    private static List<SupplyLevel> Levels3(DrillPress press, MotorFeed feed)
    {
        SupplyLevel Level(string name, ElectricPotential voltage)
        {
            var state = feed.Rectifier.UnderPower(voltage, press.Supply.Frequency, feed.RatedLinkPower);
            var unloaded = press.Inverter.Link.Ceiling(voltage, Side.Hazard);
            var peak = voltage * DcLink.PeakOverRms(press.Inverter.Link.Doubler);
            return new(name, voltage, state, unloaded * Math.Min(1, state.LinkMean / peak), unloaded);
        }

        return
        [
            Level("lowest", press.Supply.Lowest), Level("nominal", press.Supply.Nominal), Level("highest", press.Supply.Highest),
        ];
    }

    private static FuseMargin Margin(DrillPress press, ElectricCurrent current) => new(
        press.Supply.Fuse, current, press.Supply.Fuse is not { } fuse
            ? Invariant($"not compared: the rated current of fuse or plug is not given; the input takes {current.Amperes:0.0} A at rated motor power and lowest supply")
            : current > fuse
                ? Invariant($"{current.Amperes:0.0} A at rated motor power and lowest supply exceeds the rated {fuse.Amperes:0.#} A: fuse, plug and socket heat up, although a fuse may carry it for long")
                : Invariant($"{current.Amperes:0.0} A at rated motor power and lowest supply is {100 * (current / fuse):0} % of the rated {fuse.Amperes:0.#} A; this compares heating, not tripping"));
}
