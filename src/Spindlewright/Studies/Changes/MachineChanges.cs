using Spindlewright.Foundations.Sampling;
using Spindlewright.Inverters;
using Spindlewright.Machines;
using static System.FormattableString;

namespace Spindlewright.Studies.Changes;

/// <summary>One machine that differs from the one described in one thing.</summary>
/// <param name="What">What is changed.</param>
/// <param name="Change">To what.</param>
/// <param name="Press">The machine, held to one belt position.</param>
/// <param name="SlipCompensation">Share of the rated slip that is added under load.</param>
internal sealed record MachineChange(string What, string Change, DrillPress Press, double SlipCompensation = 0);

/// <summary>The changes that are tried, each on its own, from the position with the largest ratio.</summary>
internal static class MachineChanges
{
    // Steps of our own choice: a boost that is common and one that is much; about one size of motor down and up.
    private static readonly double[] Boosts = [0, 0.04, 0.1];
    private static readonly double[] Sizes = [2.0 / 3, 1.5];

    internal static IEnumerable<MachineChange> Of(DrillPress whole)
    {
        var slowest = whole.Belts.MaxBy(belt => belt.Ratio)!;
        var press = whole.At(slowest);
        return
        [
            new("nothing", Invariant($"as described, on position {slowest.Name}"), press), .. Drops(press), .. BoostsOf(press),
            .. whole.Belts.Where(belt => belt != slowest).OrderByDescending(belt => belt.Ratio)
                .Select(belt => new MachineChange("belt position", belt.Name, whole.At(belt))),
            .. SizesOf(press), .. PolesOf(press),
            new("slip compensation", "all of the rated slip; speeds are those set", press, 1),
        ];
    }

    /// <summary>The drop known: all of it made good, and the most that it may be.</summary>
    private static IEnumerable<MachineChange> Drops(DrillPress press)
    {
        var (one, other) = (press.Inverter.PhaseDrop.Capability.Volts, press.Inverter.PhaseDrop.Hazard.Volts);
        foreach (var volts in new[] { 0, Math.Max(one, other) }.Distinct())
            yield return new(
                "drop of dead time and devices", volts == 0 ? "none" : Invariant($"{volts:0.0} V a phase"),
                press with
                {
                    Uncertainty = new(
                        new Dictionary<string, Distribution>(press.Uncertainty.Spreads) { [UncertainFigures.PhaseDrop] = new Distribution.Fixed(volts) },
                        press.Uncertainty.Samples),
                });
    }

    private static IEnumerable<MachineChange> BoostsOf(DrillPress press)
    {
        var curve = press.Inverter.Curve;
        return Boosts.Select(share => new MachineChange(
            "boost", share == 0 ? "none, straight law" : Invariant($"{100 * share:0} % of the base voltage at 0 Hz"),
            press.WithCurve(new StraightCurve(curve.BaseVoltage, curve.BaseFrequency, curve.BaseVoltage * share))));
    }

    private static IEnumerable<MachineChange> SizesOf(DrillPress press) => Sizes.Select(times => new MachineChange(
        "motor size", Invariant($"{(double)press.Motor.RatedPower.Kilowatts * times:0.00} kW"), press.WithMotor(press.Motor.OfPower(times))));

    private static IEnumerable<MachineChange> PolesOf(DrillPress press)
    {
        var poles = press.Motor.Circuit.Hazard.Poles;
        return new[] { poles - 2, poles + 2 }.Where(other => other is >= 2 and <= 12).Select(other =>
            new MachineChange("poles", Invariant($"{other}"), press.WithMotor(press.Motor.WithPoles(other))));
    }
}
