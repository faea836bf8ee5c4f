using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Torques;
using UnitsNet;

namespace Spindlewright.Studies.Ratios;

/// <summary>Belts of one position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Slip">Torque at the spindle at which a belt slips at base frequency, with the geometry; null where unknown.</param>
/// <param name="ShortTime">Short-time torque at the spindle at base frequency.</param>
/// <param name="Bound">No-credit bound at the spindle: a belt is no limit on what a hand could meet.</param>
/// <param name="Creep">Speed lost by creep, least to most.</param>
public sealed record BeltRow(BeltPosition Belt, BeltSlip? Slip, Torque ShortTime, Torque Bound, (RotationalSpeed Least, RotationalSpeed Most) Creep)
{
    /// <summary>Slip torque at the low end over short-time torque; null where unknown.</summary>
    public double? SlipOverShortTime => Slip is { } slip && ShortTime > Torque.Zero ? slip.Least / ShortTime : null;
}

/// <summary>Geometry, grip and design of the belts.</summary>
/// <param name="Belts">One a belt position, in the machine's order.</param>
/// <param name="Design">Pulleys that would reach the speeds of the owner's work with this motor; null where no work is described.</param>
/// <param name="Wish">What the design was asked for; null where no work is described.</param>
/// <param name="ForceForShortTime">Force at mid span at which the loosest belt would hold the largest short-time torque; null where unknown.</param>
public sealed record RatioStudy(
    IReadOnlyList<BeltRow> Belts, ConversionDesign? Design, ConversionWish? Wish, Force? ForceForShortTime)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="torques">Its torques.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>What the belts are and hold.</returns>
    public static RatioStudy Of(DrillPress press, TorqueStudy torques, Handbook handbook)
    {
        var baseHz = UnitMath.Min(press.Inverter.Curve.BaseFrequency, press.Inverter.HighestFrequency);
        var motor = press.Motor.Circuit.Capability.SynchronousSpeedAt(baseHz);
        var creep = handbook.BeltFacts["creep"].Range().Value;
        var rows = torques.Spindle.Select(spindle =>
        {
            var speed = spindle.Belt.SpindleSpeed(motor);
            var at = spindle.Points.MinBy(point => Math.Abs((point.Frequency - baseHz).Hertz))!;
            return new BeltRow(
                spindle.Belt, press.Belting?.SlipAtSpindle(spindle.Belt, motor), at.ShortTime, spindle.Bound,
                (speed * creep.Least, speed * creep.Most));
        }).ToList();
        var wish = WishOf(press, handbook);
        return new(rows, wish is null ? null : ConversionDesign.Of(wish, handbook), wish, ForceFor(press, rows));
    }

    /// <summary>The pull of a belt grows with its tension but for the centrifugal part, which is small here.</summary>
    private static Force? ForceFor(DrillPress press, List<BeltRow> rows) =>
        press.Belting is { } belting && rows.Select(row => row.SlipOverShortTime).OfType<double>().ToList() is { Count: > 0 } margins
            ? belting.DeflectionForce / margins.Min()
            : null;

    private static ConversionWish? WishOf(DrillPress press, Handbook handbook) => WishOf(
        press, handbook, press.Motor.Circuit.Capability.Poles, press.Inverter.LowestFrequency, press.Inverter.HighestFrequency);

    /// <summary>The speeds of the owner's work, for any motor and limits; null where no work is described.</summary>
    internal static ConversionWish? WishOf(DrillPress press, Handbook handbook, int poles, Frequency lowest, Frequency highest)
    {
        if (press.Work.Count == 0) return null;
        var speeds = press.Work.Select(item => item.Speed).ToList();
        var profile = press.Belting?.Profile ?? handbook.BeltProfiles["A"];
        List<Length> driven = [.. press.Belts.Where(belt => belt.Pulleys.Count == 1).Select(belt => belt.Pulleys[0].Driven).Distinct().Order()];
        return new(speeds.Min(), speeds.Max(), poles, lowest, highest, driven, profile);
    }
}
