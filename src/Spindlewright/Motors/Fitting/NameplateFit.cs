using System.Numerics;
using MathNet.Numerics.RootFinding;
using Spindlewright.Foundations;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Motors.Fitting;

/// <summary>One thing that a fit was asked to reach.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Unit">Its unit; "1" for a ratio.</param>
/// <param name="Wanted">The value wanted.</param>
/// <param name="Reached">What the fitted circuit gives.</param>
/// <param name="Fitted">True where the fit aims at it; false where it is only compared.</param>
public sealed record FitTarget(string Quantity, string Unit, double Wanted, double Reached, bool Fitted)
{
    /// <summary>Reached over wanted, less 1.</summary>
    public double Residual => Reached / Wanted - 1;

    /// <summary>True within half a percent.</summary>
    public bool Met => Math.Abs(Residual) <= 0.005;
}

/// <summary>Settings of a fit that the nameplate does not give.</summary>
/// <param name="Shares">How the losses are shared out.</param>
/// <param name="StatorShareOfLeakage">X1 over X1 + X2, 0.2 to 0.8; 0.5 is usual for small motors.</param>
/// <param name="Saturation">See <see cref="EquivalentCircuit.Saturation"/>.</param>
/// <param name="ResistancesAt">Winding temperature at rated load.</param>
/// <param name="DefaultBreakdownTorque">Used where the nameplate is silent, over rated torque.</param>
public sealed record FitSettings(
    LossShares Shares, double StatorShareOfLeakage, double Saturation, Temperature ResistancesAt,
    double DefaultBreakdownTorque)
{
    /// <summary>X1 over X1 + X2.</summary>
    public double StatorShareOfLeakage { get; } =
        Guard.Within(StatorShareOfLeakage, 0.2, 0.8, "fit settings", "stator share of leakage");
}

/// <summary>A circuit fitted to a nameplate, with what it reaches.</summary>
/// <param name="Nameplate">The nameplate.</param>
/// <param name="Settings">What was assumed beside it.</param>
/// <param name="Circuit">The circuit, for the nameplate's connection.</param>
/// <param name="Targets">Each target with what was reached.</param>
/// <param name="Verdict">Empty, or what no circuit of this form can meet.</param>
public sealed record NameplateFit(
    Nameplate Nameplate, FitSettings Settings, EquivalentCircuit Circuit, IReadOnlyList<FitTarget> Targets,
    string Verdict)
{
    private const string Part = "motor nameplate";
    private const double LeastStatorShare = 0.1;

    /// <summary>Fits a circuit that reaches rated speed, current and power factor exactly, and breakdown torque.</summary>
    /// <param name="nameplate">The nameplate.</param>
    /// <param name="settings">What it does not give.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="PartException">The losses that the nameplate implies are smaller than its slip asks for.</exception>
    /// <remarks>
    /// The rated point fixes everything but the leakage: power balance gives R1, the phasors at the terminals give the
    /// air-gap EMF, the rotor takes the air-gap power at rated slip, and the magnetising branch what reactive current is
    /// left. Breakdown torque falls as leakage rises, so one bracketed root finds the leakage. Own derivation.
    /// </remarks>
    public static NameplateFit Of(Nameplate nameplate, FitSettings settings)
    {
        var budget = Budget.Of(nameplate, settings.Shares);
        var wanted = nameplate.BreakdownTorque ?? settings.DefaultBreakdownTorque;
        var (leakageOhm, verdict) = Leakage(nameplate, settings, budget, wanted);
        var circuit = At(nameplate, settings, budget, leakageOhm)
            ?? throw new InvalidOperationException("The leakage came from the feasible range.");
        return new(nameplate, settings, circuit, Compare(nameplate, circuit, wanted), verdict);
    }

    private static (double LeakageOhm, string Verdict) Leakage(
        Nameplate nameplate, FitSettings settings, Budget budget, double wanted)
    {
        var impedanceOhm = budget.PhaseV / nameplate.Current.Amperes;
        var (least, most) = (1e-3 * impedanceOhm, MostLeakage(nameplate, settings, budget, impedanceOhm));
        double Excess(double leakage) =>
            BreakdownRatio(nameplate, At(nameplate, settings, budget, leakage)!) - wanted;
        if (Excess(most) > 0)
            return (most, Invariant($"No circuit of this form has a breakdown torque as low as {wanted:0.00} of rated beside this current, power factor and speed; the least is {Excess(most) + wanted:0.00}."));
        if (Excess(least) < 0)
            return (least, Invariant($"No circuit of this form has a breakdown torque as high as {wanted:0.00} of rated beside this current, power factor and speed; the most is {Excess(least) + wanted:0.00}."));
        return (Brent.FindRoot(Excess, least, most, 1e-12 * impedanceOhm, 200), "");
    }

    /// <summary>Largest leakage with which the rated point can still be met.</summary>
    private static double MostLeakage(Nameplate nameplate, FitSettings settings, Budget budget, double impedanceOhm)
    {
        var (met, unmet) = (1e-3 * impedanceOhm, 2 * impedanceOhm);
        for (var step = 0; step < 60; step++)
        {
            var middle = (met + unmet) / 2;
            if (At(nameplate, settings, budget, middle) is null) unmet = middle;
            else met = middle;
        }
        return met;
    }

    /// <summary>The one circuit with this leakage that meets the rated point; null where there is none.</summary>
    private static EquivalentCircuit? At(
        Nameplate nameplate, FitSettings settings, Budget budget, double leakageOhm)
    {
        var (x1, x2) = (settings.StatorShareOfLeakage * leakageOhm, (1 - settings.StatorShareOfLeakage) * leakageOhm);
        var currentA = Complex.FromPolarCoordinates(nameplate.Current.Amperes, -Math.Acos(nameplate.PowerFactor));
        var airGap = budget.PhaseV - new Complex(budget.R1Ohm, x1) * currentA;
        var square = airGap.Magnitude * airGap.Magnitude;
        // Admittance of everything behind the gap: real part core and rotor, imaginary part magnetising and rotor.
        var behind = currentA / airGap;
        var rotorG = budget.AirGapW / (3 * square);
        var discriminant = 1 - 4 * rotorG * rotorG * x2 * x2;
        if (discriminant < 0) return null;
        var r2OverSlip = (1 + Math.Sqrt(discriminant)) / (2 * rotorG);
        var rotorB = x2 / (r2OverSlip * r2OverSlip + x2 * x2);
        var magnetisingB = -behind.Imaginary - rotorB;
        if (magnetisingB <= 1e-9 * -behind.Imaginary) return null;
        var core = budget.CoreW > 0 ? ElectricResistance.FromOhms(3 * square / budget.CoreW) : (ElectricResistance?)null;
        return new EquivalentCircuit(
            ElectricResistance.FromOhms(budget.R1Ohm), ElectricResistance.FromOhms(x1),
            ElectricResistance.FromOhms(r2OverSlip * nameplate.RatedSlip), ElectricResistance.FromOhms(x2),
            ElectricResistance.FromOhms(AtRatedFlux(1 / magnetisingB, airGap.Magnitude, x1, budget.PhaseV, settings.Saturation)),
            nameplate.LineVoltage, nameplate.Frequency, nameplate.Poles)
        {
            CoreLossResistance = core,
            Saturation = settings.Saturation,
            ResistancesAt = settings.ResistancesAt,
            Rotational = new(Power.FromWatts(budget.RotationalW), nameplate.Speed, 2),
            Stray = new(Power.FromWatts(budget.StrayW), nameplate.Current, nameplate.Speed),
        };
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

    private static double BreakdownRatio(Nameplate nameplate, EquivalentCircuit circuit)
    {
        var phase = circuit.RatedLineVoltage / Math.Sqrt(3);
        var (_, slip) = CircuitSolver.PullOut(circuit, circuit.RatedFrequency, phase);
        return CircuitSolver.Solve(circuit, circuit.RatedFrequency, phase, slip).ShaftTorque / nameplate.RatedTorque;
    }

    private static List<FitTarget> Compare(Nameplate nameplate, EquivalentCircuit circuit, double breakdown)
    {
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, nameplate.Speed);
        var locked = CircuitSolver.SolveAtRatedSupply(circuit, RotationalSpeed.Zero);
        List<FitTarget> targets =
        [
            new("shaft power at rated speed", "W", (double)nameplate.Power.Watts, (double)rated.Shaft.Watts, true),
            new("rated current", "A", nameplate.Current.Amperes, rated.Current.Amperes, true),
            new("power factor", "1", nameplate.PowerFactor, rated.PowerFactor, true),
            new("breakdown torque over rated", "1", breakdown, BreakdownRatio(nameplate, circuit), true),
        ];
        if (nameplate.LockedRotorTorque is { } torque)
            targets.Add(new(
                "locked-rotor torque over rated", "1", torque, locked.AirGapTorque / nameplate.RatedTorque, false));
        if (nameplate.LockedRotorCurrent is { } current)
            targets.Add(new("locked-rotor current over rated", "1", current, locked.Current / nameplate.Current, false));
        return targets;
    }

    /// <summary>Where the power goes at the rated point.</summary>
    private readonly record struct Budget(
        double PhaseV, double R1Ohm, double AirGapW, double CoreW, double RotationalW, double StrayW)
    {
        internal static Budget Of(Nameplate nameplate, LossShares shares)
        {
            var shaftW = (double)nameplate.Power.Watts;
            var lossW = nameplate.InputWatts - shaftW;
            var (rotationalW, strayW) = (shares.Rotational * lossW, shares.Stray * lossW);
            var airGapW = (shaftW + rotationalW + strayW) / (1 - nameplate.RatedSlip);
            var forCoreAndStatorW = nameplate.InputWatts - airGapW;
            if (forCoreAndStatorW <= 0)
                throw new PartException(
                    Part, "rated speed", Invariant($"{nameplate.Speed.RevolutionsPerMinute:0.#} r/min"),
                    "a speed, current and power factor that agree",
                    Invariant($"at that slip the rotor alone loses {airGapW * nameplate.RatedSlip:0.#} W, but voltage, current, power factor and power leave {lossW:0.#} W for all losses"));
            // Core loss gives way where slip leaves the stator winding too little: a plate may not follow our shares.
            var coreW = Math.Max(0, Math.Min(shares.Core * lossW, forCoreAndStatorW - LeastStatorShare * lossW));
            var current = nameplate.Current.Amperes;
            return new(
                nameplate.LineVoltage.Volts / Math.Sqrt(3),
                (forCoreAndStatorW - coreW) / (3 * current * current), airGapW, coreW, rotationalW, strayW);
        }
    }
}
