using System.Numerics;
using MathNet.Numerics.RootFinding;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors.Fitting;

/// <summary>Circuits that reach a rated point exactly, and the single-cage one among them with a given breakdown torque.</summary>
/// <remarks>
/// The rated point fixes everything but the leakage and the cage: power balance gives R1, the phasors at the terminals
/// give the air-gap EMF, the rotor takes the air-gap power at rated slip, and the magnetising branch what reactive
/// current is left. Breakdown torque falls as leakage rises, so one bracketed root finds the leakage. Own derivation.
/// </remarks>
internal static class RatedPointFit
{
    private const double LeastLeakage = 1e-3;

    /// <summary>The single-cage circuit with a breakdown torque, or the nearest and what stood in the way.</summary>
    internal static (EquivalentCircuit Circuit, string Verdict) Of(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double breakdown)
    {
        var (leakageOhm, verdict) = Leakage(nameplate, settings, budget, breakdown);
        return (Single(nameplate, settings, budget, leakageOhm)!, verdict);
    }

    /// <summary>The one circuit with this leakage and cage that meets the rated point; null where there is none.</summary>
    /// <param name="nameplate">Voltage, frequency and poles.</param>
    /// <param name="settings">Split, saturation, temperature.</param>
    /// <param name="budget">The rated point and where its power goes.</param>
    /// <param name="leakageOhm">X1 + X2 at low slip frequency.</param>
    /// <param name="cageRise">Rise of the rotor resistance less 1; 0 for a single cage.</param>
    /// <param name="corner">Corner slip frequency over rated frequency; idle for a single cage.</param>
    internal static EquivalentCircuit? At(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double leakageOhm, double cageRise, double corner)
    {
        var point = budget.Point;
        if (!(budget.R1Ohm > 0)) return null;
        var (x1, x2) = (settings.StatorShareOfLeakage * leakageOhm, (1 - settings.StatorShareOfLeakage) * leakageOhm);
        var currentA = Complex.FromPolarCoordinates(point.CurrentA, -Math.Acos(point.PowerFactor));
        var airGap = point.PhaseV - new Complex(budget.R1Ohm, x1) * currentA;
        var square = airGap.Magnitude * airGap.Magnitude;
        // Admittance of everything behind the gap: real part core and rotor, imaginary part magnetising and rotor.
        var behind = currentA / airGap;
        if (Rotor(budget.AirGapW / (3 * square), x2, point.Slip, cageRise, corner) is not { } rotor) return null;
        var magnetisingB = -behind.Imaginary - rotor.SusceptanceS;
        if (magnetisingB <= 1e-9 * -behind.Imaginary) return null;
        var speed = nameplate.SynchronousSpeed * (1 - point.Slip);
        return new EquivalentCircuit(
            Ohms(budget.R1Ohm), Ohms(x1), Ohms(rotor.R2Ohm), Ohms(x2),
            Ohms(AtRatedFlux(1 / magnetisingB, airGap.Magnitude, x1, point.PhaseV, settings.Saturation)),
            nameplate.LineVoltage, nameplate.Frequency, nameplate.Poles)
        {
            CoreLossResistance = budget.CoreW > 0 ? Ohms(3 * square / budget.CoreW) : null,
            Saturation = settings.Saturation,
            ResistancesAt = settings.ResistancesAt,
            Rotational = new(Power.FromWatts(budget.RotationalW), speed, 2),
            Stray = new(Power.FromWatts(budget.StrayW), ElectricCurrent.FromAmperes(point.CurrentA), speed),
            Cage = cageRise == 0 ? RotorCage.SingleCage : new(1 + cageRise, rotor.Fall),
        };
    }

    /// <summary>Rotor resistance at low slip frequency for a conductance at rated slip.</summary>
    /// <remarks>
    /// With q' = q/(1 + q) at rated slip, R2(s) = R2 (1 + g q') and X2(s) = X2 − k R2(s), k = g q' / (φc (1 + g q')), so the
    /// conductance gives a quadratic in R2(s)/s; its larger root is the running side of the curve.
    /// </remarks>
    private static (double R2Ohm, double SusceptanceS, double Fall)? Rotor(
        double conductanceS, double x2, double slip, double cageRise, double corner)
    {
        var over = cageRise == 0 ? 0 : slip / corner * (slip / corner) / (1 + slip / corner * (slip / corner));
        var ks = cageRise == 0 ? 0 : cageRise * over / (corner * (1 + cageRise * over)) * slip;
        var (square, linear) = (conductanceS * (1 + ks * ks), 1 + 2 * conductanceS * x2 * ks);
        var discriminant = linear * linear - 4 * square * conductanceS * x2 * x2;
        if (discriminant < 0) return null;
        var overSlip = (linear + Math.Sqrt(discriminant)) / (2 * square);
        var (reactance, r2) = (x2 - ks * overSlip, overSlip * slip / (1 + cageRise * over));
        var fall = cageRise == 0 ? 0 : cageRise * r2 / (corner * x2);
        return fall > RotorCage.MostFall ? null : (r2, reactance / (overSlip * overSlip + reactance * reactance), fall);
    }

    private static EquivalentCircuit? Single(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double leakageOhm) =>
        At(nameplate, settings, budget, leakageOhm, 0, 1);

    private static (double LeakageOhm, string Verdict) Leakage(
        Nameplate nameplate, FitSettings settings, PowerBudget budget, double wanted)
    {
        var impedanceOhm = budget.Point.PhaseV / budget.Point.CurrentA;
        var (least, most) = (LeastLeakage * impedanceOhm, MostLeakage(nameplate, settings, budget, impedanceOhm));
        double Excess(double leakage) =>
            Reached.BreakdownRatio(nameplate, Single(nameplate, settings, budget, leakage)!) - wanted;
        if (Excess(most) > 0)
            return (most, Invariant($"No circuit of this form has a breakdown torque as low as {wanted:0.00} of rated beside this current, power factor and speed; the least is {Excess(most) + wanted:0.00}."));
        if (Excess(least) < 0)
            return (least, Invariant($"No circuit of this form has a breakdown torque as high as {wanted:0.00} of rated beside this current, power factor and speed; the most is {Excess(least) + wanted:0.00}."));
        return (Brent.FindRoot(Excess, least, most, 1e-12 * impedanceOhm, 200), "");
    }

    /// <summary>Largest leakage with which the rated point can still be met.</summary>
    private static double MostLeakage(Nameplate nameplate, FitSettings settings, PowerBudget budget, double impedanceOhm)
    {
        var (met, unmet) = (LeastLeakage * impedanceOhm, 2 * impedanceOhm);
        for (var step = 0; step < 60; step++)
        {
            var middle = (met + unmet) / 2;
            if (Single(nameplate, settings, budget, middle) is null) unmet = middle;
            else met = middle;
        }
        return met;
    }

    /// <summary>Xm at rated flux from Xm at the flux of the rated load, which is a little lower.</summary>
    private static double AtRatedFlux(double xmOhm, double airGapV, double x1Ohm, double phaseV, double saturation)
    {
        var atRated = xmOhm;
        for (var step = 0; step < 50; step++)
        {
            var flux = airGapV / (phaseV * atRated / (x1Ohm + atRated));
            atRated = xmOhm * (1 + saturation * (Math.Pow(flux, 6) - 1));
        }
        return atRated;
    }

    private static ElectricResistance Ohms(double value) => ElectricResistance.FromOhms(value);
}
