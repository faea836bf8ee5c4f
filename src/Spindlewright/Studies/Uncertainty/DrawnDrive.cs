using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>Makes drives out of draws: everything about a machine that a draw does not change is resolved once.</summary>
internal sealed class DrawnDrives
{
    private const double CopperZero = 234.5, AluminiumZero = 225;

    private readonly DrillPress press;
    private readonly CircuitSi low, high;
    private readonly double referenceCelsius, ceilingPerVolt;

    internal DrawnDrives(DrillPress press)
    {
        this.press = press;
        var reference = press.Motor.Winding.Cold;
        referenceCelsius = reference.DegreesCelsius;
        low = press.Motor.Circuit.Capability.AtTemperature(reference).Si;
        high = press.Motor.Circuit.Hazard.AtTemperature(reference).Si;
        // The ceiling goes with the supply and with the loaded fraction of the link.
        var link = press.Inverter.Link;
        ceilingPerVolt = link.Ceiling(press.Supply.Nominal, Side.Hazard).Volts
            / press.Supply.Nominal.Volts / link.LoadedFraction.Hazard / Math.Sqrt(3);
    }

    /// <summary>Makes the drive of one draw.</summary>
    internal DrawnDrive Make(
        double supplyV, double loadedLink, double dropV, double windingCelsius, double towardsHigh, double rotorFactor,
        double leakageFactor) => new(
        press, Circuit(windingCelsius, towardsHigh, rotorFactor, leakageFactor),
        press.Inverter.OutputFollowsLink ? supplyV / press.Supply.Nominal.Volts : 1, ceilingPerVolt * supplyV * loadedLink, dropV);

    private CircuitSi Circuit(double celsius, double towardsHigh, double rotorFactor, double leakageFactor)
    {
        double Blend(double a, double b) => a > 0 && b > 0 ? a * Math.Pow(b / a, towardsHigh) : a + (b - a) * towardsHigh;
        return low with
        {
            R1Ohm = Blend(low.R1Ohm, high.R1Ohm) * (CopperZero + celsius) / (CopperZero + referenceCelsius),
            R2Ohm = Blend(low.R2Ohm, high.R2Ohm) * rotorFactor * (AluminiumZero + celsius) / (AluminiumZero + referenceCelsius),
            X1Ohm = Blend(low.X1Ohm, high.X1Ohm) * leakageFactor,
            X2Ohm = Blend(low.X2Ohm, high.X2Ohm) * leakageFactor,
            XmOhm = Blend(low.XmOhm, high.XmOhm),
            CoreConductanceS = Blend(low.CoreConductanceS, high.CoreConductanceS),
            Saturation = low.Saturation + (high.Saturation - low.Saturation) * towardsHigh,
        };
    }
}

/// <summary>Inverter and motor of one draw.</summary>
internal readonly struct DrawnDrive(DrillPress press, CircuitSi circuit, double linkFactor, double ceilingPhaseV, double dropV)
{
    /// <summary>The motor.</summary>
    internal CircuitSi Circuit => circuit;

    /// <summary>Drop of the output stage, rms a phase.</summary>
    internal double DropV => dropV;

    /// <summary>Phase voltage set at a frequency, after the ceiling and before the drop.</summary>
    internal double PhaseV(double hertz) =>
        Math.Min(press.Inverter.Curve.LineVolts(hertz) * linkFactor / Math.Sqrt(3), ceilingPhaseV);

    /// <summary>Air-gap torque at standstill.</summary>
    internal double LockedRotorNm(double hertz) => circuit.Solve(hertz, PhaseV(hertz), dropV, 1).TorqueNm;

    /// <summary>The largest air-gap torque over 0 &lt; s ≤ 1.</summary>
    internal double PullOutNm(double hertz) => CircuitSolver.PullOutSi(circuit, hertz, PhaseV(hertz), dropV).TorqueNm;
}
