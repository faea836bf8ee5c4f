using Spindlewright.Foundations;
using UnitsNet;

namespace Spindlewright.Inverters;

/// <summary>The volts that the output stage takes from each phase, opposing the current.</summary>
/// <remarks>
/// Dead time takes a square wave of height Vdc·td·fsw from each phase; its fundamental is (4/π)·Vdc·td·fsw/√2 rms.
/// The devices take about one volt more. The sum opposes the current phasor and hardly depends on the current,
/// which is why it decides the slow end: 6.7 V of dead time at 310 V, 3 µs and 8 kHz, where V/f sets some 35 V a
/// phase at 13 Hz. Source: own derivation of the fundamental of a square wave.
/// </remarks>
public static class OutputDrop
{
    private const string Part = "inverter";

    /// <summary>Rms fundamental drop a phase.</summary>
    /// <param name="link">DC link voltage, above 0.</param>
    /// <param name="deadTime">Uncompensated dead time, 0 to 10 µs.</param>
    /// <param name="carrier">Switching frequency, 0.5 kHz to 20 kHz.</param>
    /// <param name="device">Drop of the devices, 0 to 5 V.</param>
    /// <returns>Rms volts a phase.</returns>
    /// <exception cref="PartException">A value is out of range.</exception>
    public static ElectricPotential PerPhase(
        ElectricPotential link, Duration deadTime, Frequency carrier, ElectricPotential device)
    {
        Guard.Positive(link, Part, "DC link voltage");
        Guard.Within(deadTime, Duration.Zero, Duration.FromMicroseconds(10), Part, "dead time");
        Guard.Within(carrier, Frequency.FromKilohertz(0.5), Frequency.FromKilohertz(20), Part, "carrier frequency");
        Guard.Within(device, ElectricPotential.Zero, ElectricPotential.FromVolts(5), Part, "device drop");
        var deadTimeVolts = 4 / Math.PI * link.Volts * deadTime.Seconds * carrier.Hertz / Math.Sqrt(2);
        return ElectricPotential.FromVolts(deadTimeVolts) + device;
    }
}
