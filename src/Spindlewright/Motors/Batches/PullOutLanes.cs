using System.Runtime.CompilerServices;

namespace Spindlewright.Motors.Batches;

/// <summary>Torques with the slips at which they stand, one a lane.</summary>
internal struct TorqueLanes<L> where L : struct, ILanes<L>
{
    internal L TorqueNm, Slip;
}

/// <summary>Largest torques of the curve, one circuit a lane.</summary>
internal static partial class PullOutLanes
{
    private const int MostSteps = 60;

    // Torque is flat at its peak, and what a secant step of this share leaves is far smaller still: less than torque's last bit.
    private const double Settled = 1e-6;

    /// <summary>Breakdown torque in closed Thevenin form, without a drop and with constant parameters.</summary>
    /// <param name="circuit">The circuits.</param>
    /// <param name="phaseV">Volts a phase that are set.</param>
    /// <param name="magnetisingS">Susceptance of the magnetising branch, below 0.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TorqueLanes<L> Breakdown<L>(in CircuitLanes<L> circuit, L phaseV, L magnetisingS)
        where L : struct, ILanes<L>
    {
        var one = L.All(1);
        var stator = circuit.R1 * circuit.R1 + circuit.X1 * circuit.X1;
        var (real, imaginary) = (
            one + circuit.R1 * circuit.CoreS - circuit.X1 * magnetisingS, circuit.R1 * magnetisingS + circuit.X1 * circuit.CoreS);
        var inverse = one / (real * real + imaginary * imaginary);
        var resistance = (circuit.R1 + circuit.CoreS * stator) * inverse;
        var reactance = (circuit.X1 - magnetisingS * stator) * inverse + circuit.X2;
        var impedance = L.Sqrt(resistance * resistance + reactance * reactance);
        TorqueLanes<L> made;
        made.TorqueNm = L.All(0.5) * circuit.ThreeOverSpeed * (phaseV * phaseV) * inverse / (resistance + impedance);
        made.Slip = circuit.R2 / impedance;
        return made;
    }

    /// <summary>Pull-out torque with constant parameters and no drop: breakdown torque, or that of standstill where it comes first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static TorqueLanes<L> ClosedPullOut<L>(in CircuitLanes<L> circuit, L phaseV)
        where L : struct, ILanes<L>
    {
        var one = L.All(1);
        var found = Breakdown(circuit, phaseV, circuit.B0);
        var standstill = found.Slip > one;
        if (!L.Any(standstill)) return found;
        found.TorqueNm = L.Choose(standstill, PointLanes<L>.Constant(circuit, phaseV, one).TorqueNm, found.TorqueNm);
        found.Slip = L.Choose(standstill, one, found.Slip);
        return found;
    }

    /// <summary>Pull-out torque: the largest over 0 &lt; s ≤ 1.</summary>
    internal static TorqueLanes<L> PullOut<L>(in CircuitLanes<L> circuit, L phaseV, L dropV, bool anyDrop, CircuitForm form)
        where L : struct, ILanes<L>
    {
        if (circuit.DoubleCage) return OfAnyCage(circuit, phaseV, dropV, anyDrop, form);
        if (form == CircuitForm.ConstantParameters && !anyDrop) return ClosedPullOut(circuit, phaseV);
        var (none, one) = (L.All(0), L.All(1));
        var guess = L.Smaller(one, Breakdown(circuit, phaseV, circuit.B0 + circuit.B6).Slip);
        var supplied = phaseV > dropV;
        var slip = PeakSlip(circuit, phaseV, dropV, anyDrop, form, guess, none, one, supplied);
        var torqueNm = PointLanes<L>.At(circuit, phaseV, dropV, anyDrop, slip, form).TorqueNm;
        return new() { TorqueNm = L.Choose(supplied, torqueNm, none), Slip = L.Choose(supplied, slip, one) };
    }

    /// <summary>The slip at which the exponent of torque against slip passes through zero, or the far end where it does not before.</summary>
    /// <remarks>
    /// Torque goes as s/(A s² + B s + C) where nothing but slip changes; its exponent falls from 1 to −1. Secants within a
    /// bracket, the first step by the form with B = 0.
    /// </remarks>
    private static L PeakSlip<L>(
        in CircuitLanes<L> circuit, L phaseV, L dropV, bool anyDrop, CircuitForm form, L guess, L low, L high, L active)
        where L : struct, ILanes<L>
    {
        var (none, one) = (L.All(0), L.All(1));
        var (most, highKnown) = (high, none);
        var (before, exponentBefore, square) = (none, one, none);
        var slip = guess;
        for (var step = 0; step < MostSteps && L.Any(active); step++)
        {
            var exponent = TorqueExponent.At(circuit, slip, phaseV, dropV, anyDrop, form, ref square);
            var falling = exponent < none;
            // Still rising at the far end, as at standstill: there the largest stands.
            active &= falling | (slip < most);
            (low, high) = (L.Choose(falling, low, slip), L.Choose(falling, slip, high));
            highKnown |= falling;
            var next = step == 0
                ? slip * L.Sqrt((one + exponent) / (one - exponent))
                : slip - exponent * (slip - before) / (exponent - exponentBefore);
            var beyond = L.Choose(highKnown, (low + high) * L.All(0.5), most);
            next = L.Choose((next > low) & (next < high), next, beyond);
            (before, exponentBefore) = (L.Choose(active, slip, before), L.Choose(active, exponent, exponentBefore));
            var (moved, settled) = (next - slip, L.All(Settled) * slip);
            slip = L.Choose(active, next, slip);
            active &= moved * moved > settled * settled;
        }
        return slip;
    }
}
