using UnitsNet;

namespace Spindlewright.Motors.Fitting;

/// <summary>What a circuit gives for each figure of a nameplate.</summary>
internal static class Reached
{
    /// <summary>Largest shaft torque between synchronism and standstill over rated torque.</summary>
    /// <remarks>
    /// The largest itself, not the torque at the slip of the air gap's peak: that slip is known to half of the digits only,
    /// and the losses taken off there would carry its noise into the derivatives of a search.
    /// </remarks>
    internal static double BreakdownRatio(Nameplate nameplate, EquivalentCircuit circuit)
    {
        var (si, phaseV) = (circuit.Si, circuit.RatedPhaseVolts);
        double ShaftNm(double slip) => CircuitSolver.ShaftNm(circuit, si, si.RatedHz, phaseV, 0, slip);
        return CircuitSolver.Largest(si, si.RatedHz, ShaftNm).Value / nameplate.RatedTorque.NewtonMeters;
    }

    /// <summary>Line current at no load, where air-gap torque carries friction and windage alone.</summary>
    internal static double NoLoadAmperes(EquivalentCircuit circuit)
    {
        var (si, rated) = (circuit.Si, circuit.RatedPhaseVolts);
        var synchronous = si.SynchronousRadPerS(si.RatedHz);
        // Torque is straight in slip over the few thousandths of no load, so its slope gives the slip.
        const double Small = 1e-4;
        var slope = si.Solve(si.RatedHz, rated, 0, Small).TorqueNm / Small;
        var slip = circuit.Rotational.Watts(synchronous) / synchronous / slope;
        return si.Solve(si.RatedHz, rated, 0, Math.Min(slip, 0.5)).CurrentA;
    }

    /// <summary>Every figure that the nameplate wants, with what the circuit gives, the rated point first.</summary>
    internal static IReadOnlyList<FitTarget> All(
        Nameplate nameplate, EquivalentCircuit circuit, double breakdown, bool fitsExtras)
    {
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, nameplate.Speed);
        bool Assumed(PlateFigure figure) => nameplate.Assumed.HasFlag(figure);
        List<FitTarget> targets =
        [
            new("shaft power at rated speed", "W", (double)nameplate.Power.Watts, (double)rated.Shaft.Watts, true)
                { Assumed = Assumed(PlateFigure.Power) || Assumed(PlateFigure.Speed) },
            new("rated current", "A", nameplate.Current.Amperes, rated.Current.Amperes, true)
                { Assumed = Assumed(PlateFigure.Current) },
            new("power factor", "1", nameplate.PowerFactor, rated.PowerFactor, true)
                { Assumed = Assumed(PlateFigure.PowerFactor) },
            new("breakdown torque over rated", "1", breakdown, BreakdownRatio(nameplate, circuit), true)
            {
                Assumed = nameplate.BreakdownTorque is null,
                HalfLastDigit = FitTarget.HalfLastDigitOfRatios,
            },
        ];
        var locked = CircuitSolver.SolveAtRatedSupply(circuit, RotationalSpeed.Zero);
        void Add(string quantity, string unit, double? wanted, Func<double> reached, double halfLastDigit = 0)
        {
            if (wanted is { } value)
                targets.Add(new(quantity, unit, value, reached(), fitsExtras) { HalfLastDigit = halfLastDigit });
        }

        Add("locked-rotor torque over rated", "1", nameplate.LockedRotorTorque,
            () => locked.AirGapTorque / nameplate.RatedTorque, FitTarget.HalfLastDigitOfRatios);
        Add("locked-rotor current over rated", "1", nameplate.LockedRotorCurrent,
            () => locked.Current / nameplate.Current, FitTarget.HalfLastDigitOfRatios);
        Add("no-load current", "A", nameplate.NoLoadCurrent?.Amperes, () => NoLoadAmperes(circuit));
        Add("winding resistance between terminals", "Ω", nameplate.WindingResistance?.Ohms,
            () => circuit.AtTemperature(nameplate.WindingMeasuredAt).TerminalResistance.Ohms);
        return targets;
    }
}
