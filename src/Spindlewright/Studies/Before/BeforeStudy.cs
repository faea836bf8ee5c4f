using Spindlewright.Belts;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Before;

/// <summary>One belt position of the machine as found.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Speed">Spindle speed at rated load.</param>
/// <param name="RatedTorque">Rated torque at the spindle.</param>
/// <param name="Bound">Breakdown torque at the spindle, high side, efficiency 1, at the highest supply.</param>
public sealed record BeltAsFound(BeltPosition Belt, RotationalSpeed Speed, Torque RatedTorque, Torque Bound);

/// <summary>The machine as found, to be set beside the converted one.</summary>
/// <param name="Description">One line.</param>
/// <param name="Belts">One row a belt position.</param>
public sealed record BeforeStudy(string Description, IReadOnlyList<BeltAsFound> Belts)
{
    /// <summary>Slowest spindle speed.</summary>
    public RotationalSpeed Slowest => Belts.Min(belt => belt.Speed);

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Null where the machine as found was not described.</returns>
    public static BeforeStudy? Of(DrillPress press)
    {
        if (press.AsFound is not { } found) return null;
        return new(found.Description, [.. found.Belts.Select(belt => new BeltAsFound(
            belt, belt.SpindleSpeed(found.Speed), belt.SpindleTorque(found.RatedTorque, Foundations.Side.Capability), BoundOf(press, found, belt)))]);
    }

    /// <summary>The bound of the old motor at one belt position, be it there or not.</summary>
    internal static Torque BoundOf(DrillPress press, AsFound found, BeltPosition belt)
    {
        var supply = press.Supply.Highest / press.Supply.Nominal;
        return found.RatedTorque * (found.BreakdownTorque.Hazard * belt.Ratio * supply * supply);
    }
}
