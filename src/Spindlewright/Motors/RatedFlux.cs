namespace Spindlewright.Motors;

/// <summary>The one definition of rated flux, and the torque that a motor gives when it is held there.</summary>
/// <remarks>
/// <para>
/// Rated flux is the stator flux linkage at no load, rated voltage and rated frequency with the R1 drop left out:
/// ψ = V rated / (2π f rated), rms volt-seconds a phase. "Rated flux" said without this means three curves that
/// differ by a factor of two and more.
/// </para>
/// <para>
/// <em>Ideal boost</em> holds it at every frequency: the R1 drop is made good. The motor is then its circuit with
/// R1 = 0 fed at rated volts per hertz, and torque against slip frequency is one curve at every frequency. Core loss
/// and saturation are left out; both would lower it.
/// </para>
/// </remarks>
internal static class RatedFlux
{
    /// <summary>ψ in rms volt-seconds a phase.</summary>
    internal static double VoltSeconds(in CircuitSi circuit) => circuit.RatedPhaseV / (2 * Math.PI * circuit.RatedHz);

    /// <summary>The circuit of a flux-holding drive: no stator resistance, no core loss, no saturation.</summary>
    internal static CircuitSi Lossless(in CircuitSi circuit) => circuit with
    {
        R1Ohm = 0,
        CoreConductanceS = 0,
        XmOhm = circuit.UnsaturatedXmOhm,
        Saturation = 0,
    };

    /// <summary>Breakdown torque with R1 = 0 at rated volts per hertz: the same at every frequency.</summary>
    internal static double BreakdownNm(in CircuitSi circuit)
    {
        var lossless = Lossless(circuit);
        return lossless.Breakdown(circuit.RatedHz, circuit.RatedPhaseV, lossless.XmOhm).TorqueNm;
    }

    /// <summary>Largest ideal-boost torque over 0 &lt; s ≤ 1 at a frequency, with the voltage that can be had.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="frequencyHz">Above 0.</param>
    /// <param name="ceilingPhaseV">Most volts a phase; above the frequency where it is met the flux falls.</param>
    internal static (double TorqueNm, double Slip) PullOutNm(in CircuitSi circuit, double frequencyHz, double ceilingPhaseV) =>
        CircuitSolver.PullOutSi(Lossless(circuit), frequencyHz, PhaseV(circuit, frequencyHz, ceilingPhaseV), 0);

    /// <summary>Ideal-boost torque at a frequency and slip, with the voltage that can be had.</summary>
    internal static double TorqueNm(in CircuitSi circuit, double frequencyHz, double ceilingPhaseV, double slip) =>
        Lossless(circuit).Solve(frequencyHz, PhaseV(circuit, frequencyHz, ceilingPhaseV), 0, slip).TorqueNm;

    private static double PhaseV(in CircuitSi circuit, double frequencyHz, double ceilingPhaseV) =>
        Math.Min(VoltSeconds(circuit) * 2 * Math.PI * frequencyHz, ceilingPhaseV);
}
