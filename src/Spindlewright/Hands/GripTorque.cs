using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Hands;

/// <summary>Torque that a grip can hold by friction, beside the measured hand torque.</summary>
public static class GripTorque
{
    /// <summary>Torque at which a round body slips in a hand.</summary>
    /// <param name="grip">Grip force, 0 or more.</param>
    /// <param name="friction">Skin on the body, 0 to 2.</param>
    /// <param name="diameter">Of the body, above 0.</param>
    /// <returns>G·μ·D.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    /// <remarks>Pheasant, Bodyspace, 2nd ed., eq. 5.1: fingers and palm press from both sides with the same force, so that the two friction forces make a couple across the diameter.</remarks>
    public static Torque Of(Force grip, double friction, Length diameter) => Torque.FromNewtonMeters(
        Guard.NotNegative(grip, "hand", "grip force").Newtons * Guard.Within(friction, 0, 2, "hand", "friction")
        * Guard.Positive(diameter, "hand", "diameter").Meters);
}
