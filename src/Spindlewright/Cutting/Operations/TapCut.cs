using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Cutting.Operations;

/// <summary>A thread cut with a tap.</summary>
/// <param name="Major">Major diameter, 1 mm to 60 mm.</param>
/// <param name="Hole">Diameter of the hole, at least half of the major diameter and below it.</param>
/// <param name="Pitch">Pitch, which is the lead of a single start, above 0.</param>
/// <param name="TypeFactor">K of the kind of tap, 0.5 to 3.</param>
/// <remarks>
/// M = tan 30° kc K (D − D0)² (D + 2 D0)/24000 N·m with D, D0 in mm and kc in N/mm²: the triangle of metal cut times the
/// radius of its centroid. Force and factor from general catalogues, second hand. A worn tap, a chip that jams or a bottomed tap
/// has no upper limit in it.
/// </remarks>
public sealed record TapCut(Length Major, Length Hole, Length Pitch, double TypeFactor)
{
    private const string Part = "tap";

    /// <summary>Major diameter.</summary>
    public Length Major { get; } = Guard.Within(Major, Length.FromMillimeters(1), Length.FromMillimeters(60), Part, "major diameter");

    /// <summary>Diameter of the hole.</summary>
    public Length Hole { get; } = Guard.Within(Hole, Major * 0.5, Major * 0.99, Part, "hole", "narrower than the thread");

    /// <summary>Pitch.</summary>
    public Length Pitch { get; } = Guard.Positive(Pitch, Part, "pitch");

    /// <summary>K of the kind of tap.</summary>
    public double TypeFactor { get; } = Guard.Within(TypeFactor, 0.5, 3, Part, "factor of the tap");

    /// <summary>A tap for a thread of the handbook, of the kind that is turned by hand and costs the most torque.</summary>
    /// <param name="thread">The thread.</param>
    /// <param name="material">The work: iron and light alloys have a factor of their own.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The tap.</returns>
    public static TapCut Of(ThreadRow thread, CuttingMaterial material, Handbook handbook)
    {
        var soft = material.Family.StartsWith("iron", StringComparison.Ordinal) || material.Family == "light alloys";
        var key = $"tap-factor-hand-plug-{(soft ? "iron-aluminium" : "steel")}-{(thread.IsCoarse ? "coarse" : "fine")}";
        return new(thread.Major, thread.TapDrill, thread.Pitch, handbook.CuttingFacts[key].Required().Value);
    }

    /// <summary>Torque of the tap.</summary>
    /// <param name="force">Specific cutting force of tapping, above 0.</param>
    /// <returns>Tapping torque.</returns>
    /// <exception cref="PartException">The force is not above 0.</exception>
    public Torque Torque(Pressure force)
    {
        var (d, hole) = (Major.Millimeters, Hole.Millimeters);
        var kc = Guard.Positive(force, Part, "specific cutting force").NewtonsPerSquareMillimeter;
        return UnitsNet.Torque.FromNewtonMeters(
            Math.Tan(Math.PI / 6) * kc * TypeFactor * (d - hole) * (d - hole) * (d + 2 * hole) / 24000);
    }

    /// <summary>Revolutions and travel from the stop command to standstill.</summary>
    /// <param name="spindle">Spindle speed at the command.</param>
    /// <param name="stopTime">Time to standstill on an even ramp, 0 or more.</param>
    /// <returns>Half the speed times the time; travel is revolutions times pitch.</returns>
    /// <exception cref="PartException">The time is negative.</exception>
    public (double Revolutions, Length Travel) Overrun(RotationalSpeed spindle, Duration stopTime)
    {
        var seconds = Guard.NotNegative(stopTime, Part, "time to standstill").Seconds;
        var revolutions = spindle.RevolutionsPerSecond * seconds / 2;
        return (revolutions, Pitch * revolutions);
    }
}

/// <summary>Feed that a tool would screw itself along by its helix.</summary>
/// <remarks>lead = π d / tan(helix angle). A drill cannot pull itself faster than this.</remarks>
public static class SelfFeed
{
    /// <summary>Lead of a helix.</summary>
    /// <param name="diameter">Above 0.</param>
    /// <param name="helix">Angle to the axis, 1° to 80°.</param>
    /// <returns>Travel a revolution.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Length Lead(Length diameter, Angle helix) =>
        Guard.Positive(diameter, "helix", "diameter")
        * (Math.PI / Math.Tan(Guard.Within(helix, Angle.FromDegrees(1), Angle.FromDegrees(80), "helix", "helix angle").Radians));
}
