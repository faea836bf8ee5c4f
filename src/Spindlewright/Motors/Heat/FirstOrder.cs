using MathNet.Numerics;

namespace Spindlewright.Motors.Heat;

/// <summary>C·dθ/dt = W − Λ·θ in plain SI: the one place where a first-order rise is computed.</summary>
/// <remarks>
/// Λ is the net conductance: what the surface sheds a kelvin, less the loss that each kelvin adds because the winding's
/// resistance grows. Where it is zero or below, the rise has no end; the formulas hold there too.
/// </remarks>
internal static class FirstOrder
{
    /// <summary>How a rise at the start turns into one at the end: rise = gain × start + offset.</summary>
    internal static (double Gain, double OffsetK) Step(double sourceW, double netWPerK, double capacityJPerK, double timeS)
    {
        var x = netWPerK * timeS / capacityJPerK;
        // (1 − e^−x)/x, which is 1 where the net conductance vanishes.
        var share = Math.Abs(x) < 1e-12 ? 1 : -SpecialFunctions.Expm1(-x) / x;
        return (Math.Exp(-x), sourceW * timeS / capacityJPerK * share);
    }

    /// <summary>Time from one rise up to another; null where it is never reached, 0 where it is passed already.</summary>
    internal static double? TimeTo(double targetK, double startK, double sourceW, double netWPerK, double capacityJPerK)
    {
        if (startK >= targetK) return 0;
        var (atStart, atTarget) = (sourceW - netWPerK * startK, sourceW - netWPerK * targetK);
        if (atStart <= 0 || atTarget <= 0) return null;
        var rate = netWPerK / capacityJPerK;
        return Math.Abs(netWPerK * (targetK - startK)) < 1e-9 * atStart
            ? (targetK - startK) * capacityJPerK / atStart
            : Math.Log(atStart / atTarget) / rate;
    }
}
