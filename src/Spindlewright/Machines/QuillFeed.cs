using Spindlewright.Cutting;
using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>How the drill is pushed, and what the machine's column bears.</summary>
/// <param name="Lever">Lever, pinion and an arm's pull that can be kept up for a hole.</param>
/// <param name="GreatestArmForce">Pull for a moment.</param>
/// <param name="GreatestThrust">Thrust that column and table bear; null where unknown.</param>
public sealed record QuillFeed(FeedLever Lever, Force GreatestArmForce, Force? GreatestThrust)
{
    /// <summary>Thrust that can be kept up.</summary>
    public Force SustainedThrust => Lever.Thrust;

    /// <summary>Thrust for a moment.</summary>
    public Force GreatestHandThrust => Lever.ThrustOf(GreatestArmForce);

    /// <summary>The lever where none was described: own choice, a common bench drill.</summary>
    public static QuillFeed Usual { get; } = new(
        new(Length.FromMillimeters(200), Length.FromMillimeters(15), Force.FromNewtons(120), 0.9), Force.FromNewtons(300), null);
}
