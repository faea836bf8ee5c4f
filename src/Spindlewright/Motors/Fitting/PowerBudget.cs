using Spindlewright.Foundations;
using static System.FormattableString;

namespace Spindlewright.Motors.Fitting;

/// <summary>A rated point in plain SI.</summary>
internal readonly record struct RatedPoint(double PowerW, double PhaseV, double CurrentA, double PowerFactor, double Slip)
{
    internal static RatedPoint Of(Nameplate nameplate) => new(
        (double)nameplate.Power.Watts, nameplate.LineVoltage.Volts / Math.Sqrt(3), nameplate.Current.Amperes,
        nameplate.PowerFactor, nameplate.RatedSlip);

    internal double LossW => 3 * PhaseV * CurrentA * PowerFactor - PowerW;
}

/// <summary>Where the power goes at a rated point.</summary>
internal readonly record struct PowerBudget(
    RatedPoint Point, double R1Ohm, double AirGapW, double CoreW, double RotationalW, double StrayW)
{
    private const double LeastStatorShare = 0.1;

    /// <summary>The budget of a nameplate at the shares of the settings.</summary>
    /// <exception cref="PartException">Slip alone asks for more loss than there is.</exception>
    internal static PowerBudget Of(Nameplate nameplate, LossShares shares)
    {
        var point = RatedPoint.Of(nameplate);
        var lossW = point.LossW;
        var budget = From(point, 0, shares.Rotational * lossW, shares.Stray * lossW);
        var forCoreAndStatorW = budget.R1Ohm * 3 * point.CurrentA * point.CurrentA;
        if (forCoreAndStatorW <= 0)
            throw new PartException(
                "motor nameplate", "rated speed", Invariant($"{nameplate.Speed.RevolutionsPerMinute:0.#} r/min"),
                "a speed, current and power factor that agree",
                Invariant($"at that slip the rotor alone loses {budget.AirGapW * point.Slip:0.#} W, but voltage, current, power factor and power leave {lossW:0.#} W for all losses"));
        // Core loss gives way where slip leaves the stator winding too little: a plate may not follow our shares.
        var coreW = Math.Max(0, Math.Min(shares.Core * lossW, forCoreAndStatorW - LeastStatorShare * lossW));
        return From(point, coreW, budget.RotationalW, budget.StrayW);
    }

    /// <summary>The budget with stated losses; R1 comes out at or below 0 where they leave nothing for the stator.</summary>
    internal static PowerBudget From(RatedPoint point, double coreW, double rotationalW, double strayW)
    {
        var airGapW = (point.PowerW + rotationalW + strayW) / (1 - point.Slip);
        var statorW = point.PowerW + point.LossW - airGapW - coreW;
        return new(point, statorW / (3 * point.CurrentA * point.CurrentA), airGapW, coreW, rotationalW, strayW);
    }
}
