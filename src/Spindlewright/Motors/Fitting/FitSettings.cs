using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Motors.Fitting;

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
