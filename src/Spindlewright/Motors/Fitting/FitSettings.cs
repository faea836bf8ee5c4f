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

    /// <summary>Saturation where it is not known: no-load current rises by 1.2 to 1.4 for 10 % more volts. Own choice.</summary>
    public static Sided<double> UsualSaturation { get; } = new(0.35, 0.15);

    /// <summary>Winding temperature at which a plate holds: reference temperature of class B, IEC 60034-1, from memory.</summary>
    public static Temperature UsualTemperature { get; } = Temperature.FromDegreesCelsius(95);

    /// <summary>The settings under which a circuit is its own fit: its losses, split, saturation and temperature.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="speed">Its rated speed.</param>
    /// <returns>The settings.</returns>
    /// <exception cref="PartException">Its losses are shared out as no motor's are.</exception>
    public static FitSettings OfCircuit(EquivalentCircuit circuit, RotationalSpeed speed)
    {
        var rated = CircuitSolver.SolveAtRatedSupply(circuit, speed);
        double Share(Power part) => (double)(part.Watts / (rated.Input - rated.Shaft).Watts);
        return new(
            new(Share(rated.CoreLoss), Share(rated.RotationalLoss), Share(rated.StrayLoss)), circuit.X1 / (circuit.X1 + circuit.X2),
            circuit.Saturation, circuit.ResistancesAt, 2.5);
    }

    /// <summary>What is taken where nothing is known but the plate.</summary>
    /// <param name="side">The side.</param>
    /// <param name="defaultBreakdownTorque">Over rated torque, used where the plate is silent.</param>
    /// <returns>Settings with the usual shares of losses, half of the leakage in the stator, usual saturation and temperature.</returns>
    public static FitSettings Usual(Side side, double defaultBreakdownTorque) =>
        new(LossShares.Default.On(side), 0.5, UsualSaturation.On(side), UsualTemperature, defaultBreakdownTorque);
}
