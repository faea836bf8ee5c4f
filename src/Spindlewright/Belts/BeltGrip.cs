using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Belts;

/// <summary>What a V-belt can hold before it slips.</summary>
/// <remarks>
/// (F1 − Fc)/(F2 − Fc) = exp(f θ) with f = μ/sin(β/2) and Fc = m v²; F1 + F2 = 2 F0, because the belt stretches in proportion.
/// So F1 − F2 = 2 (F0 − Fc) (e^{fθ} − 1)/(e^{fθ} + 1), times the pulley's radius the slip torque. A belt whose static tension does
/// not exceed Fc grips nothing. The pulley with the smaller f θ slips first: the one with the smaller wrap.
/// </remarks>
public static class BeltGrip
{
    private const string Part = "belt grip";

    /// <summary>Effective friction of a belt in its groove.</summary>
    /// <param name="friction">Friction of belt on flank, above 0 and up to 1.5.</param>
    /// <param name="groove">Full angle between the flanks, 20° to 60°.</param>
    /// <returns>μ/sin(β/2).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double EffectiveFriction(double friction, Angle groove) =>
        Guard.Within(Guard.Positive(friction, Part, "friction"), 0, 1.5, Part, "friction")
        / Math.Sin(Guard.Within(groove, Angle.FromDegrees(20), Angle.FromDegrees(60), Part, "groove angle").Radians / 2);

    /// <summary>Tight over slack strand at the slip limit, both less the centrifugal part.</summary>
    /// <param name="effectiveFriction">μ/sin(β/2), above 0.</param>
    /// <param name="wrap">Angle of contact, above 0.</param>
    /// <returns>exp(f θ).</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static double TensionRatio(double effectiveFriction, Angle wrap) => Math.Exp(
        Guard.Positive(effectiveFriction, Part, "effective friction") * Guard.Positive(wrap, Part, "wrap").Radians);

    /// <summary>Tension that the belt's own mass takes on its way round.</summary>
    /// <param name="mass">Mass a length.</param>
    /// <param name="speed">Belt speed.</param>
    /// <returns>m v².</returns>
    public static Force Centrifugal(LinearDensity mass, Speed speed) =>
        Force.FromNewtons(mass.KilogramsPerMeter * speed.MetersPerSecond * speed.MetersPerSecond);

    /// <summary>Pull of the belt at the slip limit: tight less slack strand.</summary>
    /// <param name="staticTension">Of one strand at rest, above 0.</param>
    /// <param name="centrifugal">m v², 0 or more.</param>
    /// <param name="tensionRatio">exp(f θ), above 1.</param>
    /// <returns>F1 − F2; zero where the belt grips nothing.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static Force Pull(Force staticTension, Force centrifugal, double tensionRatio)
    {
        Guard.Positive(staticTension, Part, "static tension");
        Guard.NotNegative(centrifugal, Part, "centrifugal tension");
        Guard.Within(tensionRatio, 1, double.MaxValue, Part, "tension ratio");
        var share = (tensionRatio - 1) / (tensionRatio + 1);
        return Force.FromNewtons(Math.Max(0, 2 * (staticTension - centrifugal).Newtons * share));
    }

    /// <summary>Power that a pull carries.</summary>
    /// <param name="tight">Tight strand.</param>
    /// <param name="slack">Slack strand.</param>
    /// <param name="speed">Belt speed.</param>
    /// <returns>(F1 − F2) v.</returns>
    public static Power Power(Force tight, Force slack, Speed speed) =>
        UnitsNet.Power.FromWatts((tight - slack).Newtons * speed.MetersPerSecond);
}
