using Spindlewright.Foundations;
using Spindlewright.Mains;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>How the output voltage is modulated, which sets how much of the DC link reaches the motor.</summary>
public enum Modulation
{
    /// <summary>Space-vector modulation: the largest fundamental line voltage is Vdc/√2.</summary>
    SpaceVector,

    /// <summary>Sinusoidal modulation without added third harmonic: √3/(2√2)·Vdc.</summary>
    Sine,
}

/// <summary>The rectifier and capacitor between the socket and the output stage.</summary>
/// <param name="Doubler">True for a voltage-doubler input, as on 115–120 V units for 230 V motors.</param>
/// <param name="LoadedFraction">
/// Mean link voltage under load over its no-load peak. Below 1: the capacitor sags between the crests.
/// </param>
/// <param name="Modulation">How the output stage modulates.</param>
/// <remarks>
/// No-load link: √2 V (2√2 V with a doubler; √2 times the line voltage for three phases). The loaded mean of three phases
/// falls to 3√2/π = 1.350 V where the capacitor does not hold the crests; <c>InputRectifier</c> computes it. Ceiling: link/√2 with space-vector, 0.6124 link with sine modulation
/// (Mohan, Undeland, Robbins; from memory). On the hazard side the link is taken unloaded.
/// </remarks>
public sealed record DcLink(bool Doubler, Sided<double> LoadedFraction, Modulation Modulation)
{
    /// <summary>No-load link voltage over the rms voltage of the supply.</summary>
    internal static double PeakOverRms(bool doubler) => Math.Sqrt(2) * (doubler ? 2 : 1);

    /// <summary>Mean link voltage.</summary>
    /// <param name="supply">Rms supply voltage.</param>
    /// <param name="side">Which loaded fraction to take.</param>
    /// <returns>DC voltage.</returns>
    public ElectricPotential Voltage(ElectricPotential supply, Side side) =>
        supply * (PeakOverRms(Doubler) * LoadedFraction.On(side));

    /// <summary>Voltage ceiling: the most fundamental line voltage that the link can give.</summary>
    /// <param name="supply">Rms supply voltage.</param>
    /// <param name="side">Which loaded fraction to take.</param>
    /// <returns>Rms line voltage.</returns>
    public ElectricPotential Ceiling(ElectricPotential supply, Side side) =>
        Voltage(supply, side) * (Modulation == Modulation.SpaceVector ? 1 / Math.Sqrt(2) : Math.Sqrt(3) / (2 * Math.Sqrt(2)));
}
