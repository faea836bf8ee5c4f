using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;

namespace Spindlewright.Studies.Uncertainty;

/// <summary>What a draw says of inverter and motor.</summary>
internal readonly record struct DriveDraw(
    double SupplyV, double LoadedLink, double DropV, double WindingCelsius, double TowardsHigh, double RotorFactor,
    double StandstillFactor, double LeakageFactor);

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

    /// <summary>Whether any drive's magnetising reactance falls with flux.</summary>
    internal bool Saturates => low.Saturation > 0 || high.Saturation > 0;

    /// <summary>Makes the drive of one draw.</summary>
    internal DrawnDrive Make(in DriveDraw draw) => new(
        press, Circuit(draw), press.Inverter.OutputFollowsLink ? draw.SupplyV / press.Supply.Nominal.Volts : 1,
        ceilingPerVolt * draw.SupplyV * draw.LoadedLink, draw.DropV);

    private CircuitSi Circuit(in DriveDraw draw)
    {
        var towardsHigh = draw.TowardsHigh;
        double Blend(double a, double b) => a > 0 && b > 0 ? a * Math.Pow(b / a, towardsHigh) : a + (b - a) * towardsHigh;
        double Between(double a, double b) => a + (b - a) * towardsHigh;
        var rise = Between(low.CageRise, high.CageRise);
        return low with
        {
            R1Ohm = Blend(low.R1Ohm, high.R1Ohm) * (CopperZero + draw.WindingCelsius) / (CopperZero + referenceCelsius),
            R2Ohm = Blend(low.R2Ohm, high.R2Ohm) * draw.RotorFactor * (AluminiumZero + draw.WindingCelsius) / (AluminiumZero + referenceCelsius),
            X1Ohm = Blend(low.X1Ohm, high.X1Ohm) * draw.LeakageFactor,
            X2Ohm = Blend(low.X2Ohm, high.X2Ohm) * draw.LeakageFactor,
            XmOhm = Blend(low.XmOhm, high.XmOhm),
            CoreConductanceS = Blend(low.CoreConductanceS, high.CoreConductanceS),
            Saturation = Between(low.Saturation, high.Saturation),
            // The whole resistance at standstill takes the factor; a cage is left a cage.
            CageRise = rise == 0 ? 0 : Math.Max(0.01 * rise, (1 + rise) * draw.StandstillFactor - 1),
            CageFall = Between(low.CageFall, high.CageFall),
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

    /// <summary>Where the voltage stops rising: base frequency, or lower where the ceiling is met first.</summary>
    internal double CeilingMetHz => press.Inverter.Curve.HertzReaching(ceilingPhaseV * Math.Sqrt(3) / linkFactor);

    /// <summary>Phase voltage set at a frequency, after the ceiling and before the drop.</summary>
    internal double PhaseV(double hertz) =>
        Math.Min(press.Inverter.Curve.LineVolts(hertz) * linkFactor / Math.Sqrt(3), ceilingPhaseV);

    /// <summary>The largest air-gap torque over 0 &lt; s ≤ 1, by the scalar path.</summary>
    internal double PullOutNm(double hertz) => CircuitSolver.PullOutSi(circuit, hertz, PhaseV(hertz), dropV).TorqueNm;
}
