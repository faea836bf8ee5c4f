using Spindlewright.Belts;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Sizing;

/// <summary>The inexpensive rival of a conversion: an intermediate pulley between the old motor and the spindle.</summary>
/// <remarks>
/// The pulley slows every position by one more pair, chosen among the diameters that are sold so that the slowest position comes nearest to
/// the slowest speed of the owner's work, but no further than the widest pair allows. The positions as found stay, since the belt can
/// go past it.
/// </remarks>
internal static class IntermediateRival
{
    internal static PulleySet Of(DrillPress press, AsFound found, Handbook handbook)
    {
        var sold = handbook.PulleyDiameters.Select(row => row.Diameter).ToList();
        var least = (press.Belting?.Profile ?? handbook.BeltProfiles["A"]).LeastPulley;
        var slowest = found.Belts.MaxBy(belt => belt.Ratio)!;
        var wanted = press.Work.Count == 0 ? 1 : found.Speed / (press.Work.Min(item => item.Speed) * slowest.Ratio);
        var pair = (from driving in sold where driving >= least from driven in sold where driven >= driving select new PulleyPair(driving, driven))
            .OrderBy(each => Math.Round(Math.Abs(Math.Log(each.Ratio / Math.Max(1, wanted))), 3)).ThenBy(each => each.Driven).First();
        if (pair.Ratio <= 1) return new(PulleyWay.Intermediate, found.Belts);
        return new(PulleyWay.Intermediate,
        [
            .. found.Belts.OrderByDescending(belt => belt.Ratio).Select(belt => new BeltPosition(
                Invariant($"{belt.Name}, {pair.Driving.Millimeters:0}/{pair.Driven.Millimeters:0} mm between"), belt.Ratio * pair.Ratio,
                new(belt.Efficiency.Capability * belt.Efficiency.Capability, belt.Efficiency.Hazard))),
            .. found.Belts,
        ]);
    }
}
