using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Cutting;

/// <summary>The lever, pinion and rack that turn an arm's pull into thrust.</summary>
/// <param name="LeverRadius">From the pinion's axis to the hand, 50 mm to 1000 mm.</param>
/// <param name="PinionRadius">Pitch radius of the pinion on the quill's rack, 5 mm to 100 mm.</param>
/// <param name="ArmForce">Pull at the hand, 1 N to 1000 N.</param>
/// <param name="Efficiency">Thrust over the frictionless one, 0.3 to 1; the return spring counts here.</param>
public sealed record FeedLever(Length LeverRadius, Length PinionRadius, Force ArmForce, double Efficiency = 1)
{
    private const string Part = "feed lever";

    /// <summary>From the pinion's axis to the hand.</summary>
    public Length LeverRadius { get; } = Guard.Within(
        LeverRadius, Length.FromMillimeters(50), Length.FromMillimeters(1000), Part, "lever radius");

    /// <summary>Pitch radius of the pinion.</summary>
    public Length PinionRadius { get; } = Guard.Within(
        PinionRadius, Length.FromMillimeters(5), Length.FromMillimeters(100), Part, "pinion radius");

    /// <summary>Pull at the hand.</summary>
    public Force ArmForce { get; } = Guard.Within(ArmForce, Force.FromNewtons(1), Force.FromNewtons(1000), Part, "arm force");

    /// <summary>Thrust over the frictionless one.</summary>
    public double Efficiency { get; } = Guard.Within(Efficiency, 0.3, 1, Part, "efficiency");

    /// <summary>Thrust at the drill: arm force × lever radius / pinion radius × efficiency.</summary>
    public Force Thrust => ThrustOf(ArmForce);

    /// <summary>Thrust that another pull gives.</summary>
    /// <param name="arm">Pull at the hand.</param>
    /// <returns>Thrust at the drill.</returns>
    public Force ThrustOf(Force arm) => arm * (LeverRadius / PinionRadius * Efficiency);

    /// <summary>Pull that a thrust asks of the hand.</summary>
    /// <param name="thrust">Thrust at the drill.</param>
    /// <returns>Pull at the hand.</returns>
    public Force ArmFor(Force thrust) => thrust / (LeverRadius / PinionRadius * Efficiency);
}

/// <summary>What a hand-fed drill does: the feed is the outcome of the thrust.</summary>
/// <param name="Thrust">Thrust that is there.</param>
/// <param name="Load">Load at the feed that results; null where the thrust gives no feed.</param>
/// <param name="LeastThrust">Thrust at the least feed of the handbook's table: below it nothing is cut.</param>
/// <param name="ReachesEndOfTable">True where the thrust would give more than the largest feed of the table.</param>
public sealed record HandFeed(Force Thrust, TwistDrillLoad? Load, Force LeastThrust, bool ReachesEndOfTable)
{
    /// <summary>The feed a revolution; null where the thrust gives none.</summary>
    public Length? FeedPerRevolution => Load?.FeedPerRevolution;

    /// <summary>Solves the thrust formula for feed.</summary>
    /// <param name="factors">Tables or closed forms.</param>
    /// <param name="material">The work.</param>
    /// <param name="diameter">1.6 mm to 76 mm.</param>
    /// <param name="condition">Point and wear.</param>
    /// <param name="thrust">Thrust at the drill, above 0.</param>
    /// <param name="pilot">Diameter of the pilot hole; null for none.</param>
    /// <returns>What results.</returns>
    /// <exception cref="PartException">A value is off the tables.</exception>
    public static HandFeed Of(
        IDrillFactors factors, CuttingMaterial material, Length diameter, DrillCondition condition, Force thrust,
        Length? pilot = null)
    {
        Guard.Positive(thrust, "hand feed", "thrust");
        TwistDrillLoad At(double mm) => TwistDrillLoad.Of(factors, material, diameter, Length.FromMillimeters(mm), condition, pilot);
        var (least, most) = (TwistDrillLoad.LeastFeed.Millimeters, TwistDrillLoad.MostFeed.Millimeters);
        var (lowest, highest) = (At(least), At(most));
        if (lowest.Thrust > thrust) return new(thrust, null, lowest.Thrust, false);
        if (highest.Thrust <= thrust) return new(thrust, highest, lowest.Thrust, true);
        var feed = Brent.FindRoot(mm => At(mm).Thrust.Newtons - thrust.Newtons, least, most, 1e-9);
        return new(thrust, At(feed), lowest.Thrust, false);
    }
}
