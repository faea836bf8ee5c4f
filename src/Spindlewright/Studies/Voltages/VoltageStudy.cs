using Spindlewright.Foundations;
using Spindlewright.Machines;
using Spindlewright.Motors;
using UnitsNet;

namespace Spindlewright.Studies.Voltages;

/// <summary>Line voltages at one frequency.</summary>
/// <param name="Frequency">Output frequency.</param>
/// <param name="Set">What the law sets at nominal supply, after the ceiling.</param>
/// <param name="RatedFlux">What rated volts per hertz asks for, up to the ceiling at nominal supply.</param>
/// <param name="AtMotor">At the terminals at standstill, after the drop, by side: lowest and highest supply.</param>
public sealed record VoltagePoint(
    Frequency Frequency, ElectricPotential Set, ElectricPotential RatedFlux, Sided<ElectricPotential> AtMotor);

/// <summary>The V/f law as the motor meets it.</summary>
/// <param name="Points">One a frequency.</param>
/// <param name="Ceiling">Voltage ceiling: lowest supply and loaded link, highest supply and unloaded link.</param>
/// <param name="NominalCeiling">Voltage ceiling at nominal supply with the link loaded.</param>
/// <param name="RealBaseFrequency">
/// Where the voltage stops rising at nominal supply with the link loaded: the base frequency set, or lower where the
/// ceiling is met first.
/// </param>
public sealed record VoltageStudy(
    IReadOnlyList<VoltagePoint> Points, Sided<ElectricPotential> Ceiling, ElectricPotential NominalCeiling,
    Frequency RealBaseFrequency)
{
    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Its voltages.</returns>
    public static VoltageStudy Of(DrillPress press)
    {
        var drives = new Sided<Drive>(new Drive(press, Side.Capability), new Drive(press, Side.Hazard));
        var link = press.Inverter.Link;
        var nominal = link.Ceiling(press.Supply.Nominal, Side.Capability);
        var points = FrequencyGrid.Of(press.Inverter).Select(hertz => At(press, drives, nominal, hertz)).ToList();
        return new(
            points, drives.Map(drive => ElectricPotential.FromVolts(drive.CeilingPhaseV * Math.Sqrt(3))), nominal,
            RealBase(press, nominal));
    }

    private static VoltagePoint At(DrillPress press, Sided<Drive> drives, ElectricPotential ceiling, double hertz)
    {
        var rated = press.Motor.Circuit.Capability;
        return new(
            Frequency.FromHertz(hertz),
            ElectricPotential.FromVolts(Math.Min(press.Inverter.Curve.LineVolts(hertz), ceiling.Volts)),
            UnitMath.Min(rated.RatedLineVoltage * (hertz / rated.RatedFrequency.Hertz), ceiling),
            drives.Map(drive => TerminalLineVoltage(drive, hertz)));
    }

    private static ElectricPotential TerminalLineVoltage(Drive drive, double hertz) =>
        CircuitSolver.Solve(
            drive.Circuits[0], Frequency.FromHertz(hertz), ElectricPotential.FromVolts(drive.PhaseV(hertz)), 1,
            ElectricPotential.FromVolts(drive.DropV)).TerminalPhaseVoltage * Math.Sqrt(3);

    private static Frequency RealBase(DrillPress press, ElectricPotential ceiling)
    {
        var curve = press.Inverter.Curve;
        if (curve.BaseVoltage <= ceiling) return curve.BaseFrequency;
        // Every law rises to its base point, so halving finds where it meets the ceiling.
        var (below, above) = (0.0, curve.BaseFrequency.Hertz);
        for (var step = 0; step < 60; step++)
        {
            var middle = (below + above) / 2;
            if (curve.LineVolts(middle) < ceiling.Volts) below = middle;
            else above = middle;
        }
        return Frequency.FromHertz(above);
    }
}
