using Spindlewright.Inverters;
using Spindlewright.Mains;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Machines;

/// <summary>How large a DC link is where its unit does not say, and what it holds under load.</summary>
internal static class LinkSize
{
    internal const string Reason = "0.73 µF a watt of rated output, as units of this size have; twice that for each of a doubler's two";

    private const double MicrofaradsPerWatt = 0.73;

    /// <summary>Shaft watts a volt-ampere of rated output: efficiency times power factor of a small motor.</summary>
    private const double WattsPerVoltAmpere = 0.6;

    /// <summary>Losses of an inverter at rated load over what it gives out.</summary>
    private const double InverterLoss = 0.05;

    internal static ElectricCapacitance Usual(ElectricCurrent ratedCurrent, ElectricPotential lineVoltage, bool doubler) =>
        ElectricCapacitance.FromMicrofarads(Math.Clamp(
            MicrofaradsPerWatt * WattsPerVoltAmpere * Math.Sqrt(3) * lineVoltage.Volts * ratedCurrent.Amperes * (doubler ? 2 : 1),
            InputLimits.LeastLinkMicrofarads, InputLimits.MostLinkMicrofarads));

    internal static InputRectifier Rectifier(Supply supply, bool doubler, ElectricCapacitance capacitance) => new(
        supply.Phases == 3 ? RectifierKind.ThreePhase : doubler ? RectifierKind.Doubler : RectifierKind.SinglePhase,
        supply.LoopResistance, supply.LoopInductance, capacitance);

    /// <summary>Mean link voltage at rated motor power and lowest supply over the no-load peak.</summary>
    internal static double LoadedFraction(Supply supply, MachineMotor motor, bool doubler, ElectricCapacitance capacitance)
    {
        var rated = CircuitSolver.SolveAtRatedSupply(motor.Circuit.Capability, motor.RatedSpeed);
        var state = Rectifier(supply, doubler, capacitance).UnderPower(
            supply.Lowest, supply.Frequency, Power.FromWatts((double)rated.Input.Watts * (1 + InverterLoss)));
        return LoadedFraction(state, supply.Lowest, doubler);
    }

    /// <summary>Mean link voltage of a state over the no-load peak at its supply voltage.</summary>
    internal static double LoadedFraction(RectifierState state, ElectricPotential supply, bool doubler) =>
        Math.Min(1, state.LinkMean.Volts / (supply.Volts * DcLink.PeakOverRms(doubler)));
}
