using System.Numerics;
using Spindlewright.Foundations;

namespace Spindlewright.Motors;

/// <summary>The circuit in plain SI doubles, for inner loops. A phase of a star.</summary>
internal readonly record struct CircuitSi(
    double R1Ohm, double X1Ohm, double R2Ohm, double X2Ohm, double XmOhm, double CoreConductanceS,
    double RatedHz, int Poles, double RatedPhaseV, double Saturation, double CoreLossExponent, double CageRise,
    double CageFall)
{
    private const int MostSaturationSteps = 200;

    /// <summary>Mechanical synchronous speed.</summary>
    internal double SynchronousRadPerS(double frequencyHz) => 4 * Math.PI * frequencyHz / Poles;

    /// <summary>Air-gap phase EMF at rated frequency that counts as rated flux: no load, R1 neglected.</summary>
    internal double RatedAirGapV => RatedPhaseV * XmOhm / (X1Ohm + XmOhm);

    /// <summary>Magnetising reactance at rated frequency without any saturation: the largest it can be.</summary>
    internal double UnsaturatedXmOhm => XmOhm / (1 - Saturation);

    /// <summary>Magnetising reactance at rated frequency for air-gap volts per hertz over their rated value.</summary>
    internal double XmAtOhm(double flux)
    {
        var square = flux * flux;
        return XmOhm / (1 + Saturation * (square * square * square - 1));
    }

    /// <summary>
    /// Solves the circuit at a frequency, a set phase voltage, a phase drop that opposes the current, and a slip.
    /// </summary>
    /// <remarks>
    /// The drop makes the impedance depend on the current's magnitude only, so the current follows from a quadratic:
    /// V² = (R·I + Vd)² + (X·I)². Saturation is a root in the air-gap flux, whose left side falls and right side
    /// rises, so that one bracket always holds it.
    /// </remarks>
    internal CircuitState Solve(double frequencyHz, double phaseV, double dropV, double slip)
    {
        var branches = BranchesAt(frequencyHz, slip);
        if (Saturation == 0) return SolveAt(branches, XmOhm, phaseV, dropV);

        var circuit = this;
        var perUnitV = branches.A * RatedAirGapV;
        var (low, high) = (0.0, Math.Max(1e-9, phaseV / perUnitV));
        while (FluxGiven(high) > high) high *= 2;
        // The residual at a flux: what the circuit gives less what was assumed. It falls as flux rises.
        var (lowResidual, highResidual) = (FluxGiven(low) - low, FluxGiven(high) - high);
        var (side, flux) = (0, high);
        for (var step = 0; step < MostSaturationSteps && high - low > 1e-15 * high; step++)
        {
            flux = (low * highResidual - high * lowResidual) / (highResidual - lowResidual);
            var residual = FluxGiven(flux) - flux;
            if (residual > 0)
            {
                (low, lowResidual) = (flux, residual);
                if (side == 1) highResidual /= 2;
                side = 1;
            }
            else
            {
                (high, highResidual) = (flux, residual);
                if (side == -1) lowResidual /= 2;
                side = -1;
            }
            if (Math.Abs(residual) < 1e-15 * (1 + flux)) break;
        }
        return SolveAt(branches, XmAtOhm(flux), phaseV, dropV);

        double FluxGiven(double flux) => circuit.LoopAt(branches, circuit.XmAtOhm(flux), phaseV, dropV).AirGapV / perUnitV;
    }

    /// <summary>
    /// Breakdown torque without drop and with a given magnetising reactance: closed Thevenin form for a single cage,
    /// the highest of the peaks for a double one.
    /// </summary>
    internal (double TorqueNm, double Slip) Breakdown(double frequencyHz, double phaseV, double xmOhm)
    {
        if (CageRise == 0) return SingleCageBreakdown(frequencyHz, phaseV, xmOhm);
        var circuit = this;
        var (least, most) = BreakdownSlips(frequencyHz, xmOhm);
        return Peak.FindHighest(
            slip => circuit.SolveAt(circuit.BranchesAt(frequencyHz, slip), xmOhm, phaseV, 0).TorqueNm, least / 4, most * 4);
    }

    /// <summary>Breakdown slips of the single cages that a double one turns into at low and at high slip frequency.</summary>
    internal (double Least, double Most) BreakdownSlips(double frequencyHz, double xmOhm)
    {
        var outer = this with { R2Ohm = R2Ohm * (1 + CageRise), X2Ohm = X2Ohm * (1 - CageFall) };
        return (SingleCageBreakdown(frequencyHz, 1, xmOhm).Slip, outer.SingleCageBreakdown(frequencyHz, 1, xmOhm).Slip);
    }

    private (double TorqueNm, double Slip) SingleCageBreakdown(double frequencyHz, double phaseV, double xmOhm)
    {
        var a = frequencyHz / RatedHz;
        var shunt = new Complex(CoreConductanceAt(a), -1 / (a * xmOhm));
        var z1 = new Complex(R1Ohm, a * X1Ohm);
        var divider = Complex.One + z1 * shunt;
        var thevenin = z1 / divider;
        var theveninV = phaseV / divider.Magnitude;
        var reactance = thevenin.Imaginary + a * X2Ohm;
        var magnitude = Math.Sqrt(thevenin.Real * thevenin.Real + reactance * reactance);
        var torque = 3 * theveninV * theveninV / (2 * SynchronousRadPerS(frequencyHz) * (thevenin.Real + magnitude));
        return (torque, R2Ohm / magnitude);
    }

    private CircuitState SolveAt(in Branches branches, double xmOhm, double phaseV, double dropV)
    {
        var (current, r, x, airGapV) = LoopAt(branches, xmOhm, phaseV, dropV);
        var (rotorG, rotorB) = (branches.RotorG, branches.RotorB);
        var airGapPower = 3 * airGapV * airGapV * rotorG;
        return new(
            current, r, x, airGapV, airGapV * Math.Sqrt(rotorG * rotorG + rotorB * rotorB), airGapPower,
            3 * airGapV * airGapV * branches.CoreG, airGapPower / branches.SynchronousRadPerS, xmOhm);
    }

    /// <summary>Stator current, impedance at the terminals and air-gap EMF.</summary>
    private (double CurrentA, double ROhm, double XOhm, double AirGapV) LoopAt(
        in Branches branches, double xmOhm, double phaseV, double dropV)
    {
        var a = branches.A;
        var (g, b) = (branches.CoreG + branches.RotorG, -1 / (a * xmOhm) + branches.RotorB);
        var square = g * g + b * b;
        var (r, x) = (R1Ohm + g / square, a * X1Ohm - b / square);
        var impedanceSquare = r * r + x * x;
        var under = r * dropV * (r * dropV) + impedanceSquare * (phaseV * phaseV - dropV * dropV);
        var current = phaseV > dropV ? (Math.Sqrt(under) - r * dropV) / impedanceSquare : 0;
        return (current, r, x, current / Math.Sqrt(square));
    }

    private Branches BranchesAt(double frequencyHz, double slip)
    {
        var a = frequencyHz / RatedHz;
        var (rotorG, rotorB) = RotorAdmittance(a, slip);
        return new(a, SynchronousRadPerS(frequencyHz), CoreConductanceAt(a), rotorG, rotorB);
    }

    /// <summary>What does not hang on flux or voltage: core and rotor branch at a frequency and a slip, S.</summary>
    private readonly record struct Branches(double A, double SynchronousRadPerS, double CoreG, double RotorG, double RotorB);

    private (double G, double B) RotorAdmittance(double a, double slip)
    {
        // Multiplied through by slip, so that standstill, synchronism and generating need no case of their own.
        var (r, x) = (R2Ohm, slip * a * X2Ohm);
        if (CageRise != 0)
        {
            var outer = OuterShare(slip * a);
            (r, x) = (r * (1 + CageRise * outer), x * (1 - CageFall * outer));
        }
        var square = r * r + x * x;
        return (slip * r / square, -slip * x / square);
    }

    /// <summary>Rotor resistance at a slip frequency over the rated one.</summary>
    internal double RotorOhm(double slipFrequency) => CageRise == 0 ? R2Ohm : R2Ohm * (1 + CageRise * OuterShare(slipFrequency));

    /// <summary>How far the current has moved to the outer cage, 0 to 1: q / (1 + q) of <see cref="RotorCage"/>.</summary>
    private double OuterShare(double slipFrequency)
    {
        var overCorner = slipFrequency * CageFall * X2Ohm / (CageRise * R2Ohm);
        return overCorner * overCorner / (1 + overCorner * overCorner);
    }

    /// <summary>Core loss goes with flux² and f^n, hence the conductance with f^(n − 2).</summary>
    private double CoreConductanceAt(double a) =>
        CoreConductanceS == 0 ? 0 : CoreConductanceS * Math.Pow(a, CoreLossExponent - 2);
}

/// <summary>What <see cref="CircuitSi.Solve"/> finds, a phase unless said otherwise.</summary>
/// <param name="CurrentA">Rms stator current.</param>
/// <param name="ROhm">Resistance seen at the motor's terminals.</param>
/// <param name="XOhm">Reactance seen at the motor's terminals.</param>
/// <param name="AirGapV">Rms air-gap EMF.</param>
/// <param name="RotorCurrentA">Rms rotor current referred to the stator.</param>
/// <param name="AirGapPowerW">Power across the gap, three phases.</param>
/// <param name="CoreLossW">Core loss, three phases.</param>
/// <param name="TorqueNm">Air-gap torque.</param>
/// <param name="XmOhm">Magnetising reactance at rated frequency that the flux called for.</param>
internal readonly record struct CircuitState(
    double CurrentA, double ROhm, double XOhm, double AirGapV, double RotorCurrentA, double AirGapPowerW,
    double CoreLossW, double TorqueNm, double XmOhm);
