using System.Collections.Immutable;
using Spindlewright.Motors;

namespace Spindlewright.Figures.Recipes;

/// <summary>One operating point with its intermediates, as a hand calculation would list them.</summary>
public static class OperatingPointTable
{
    /// <summary>Makes the table.</summary>
    /// <param name="point">The operating point.</param>
    /// <returns>One row a quantity, in the order in which power flows.</returns>
    public static Table Of(OperatingPoint point) => new(
        "operating-point", "Operating point of the motor",
        [new("quantity", Align: Alignment.Left), new("value", Format: new(Significant: 4)), new("unit", Align: Alignment.Left)],
        [
            Row("frequency", point.Frequency.Hertz, "Hz"),
            Row("slip", point.Slip, ""),
            Row("speed", point.Speed.RevolutionsPerMinute, "r/min"),
            Row("terminal voltage, a phase", point.TerminalPhaseVoltage.Volts, "V"),
            Row("stator current", point.Current.Amperes, "A"),
            Row("power factor", point.PowerFactor, ""),
            Row("input power", (double)point.Input.Watts, "W"),
            Row("stator winding loss", (double)point.StatorLoss.Watts, "W"),
            Row("core loss", (double)point.CoreLoss.Watts, "W"),
            Row("air-gap power", (double)point.AirGapPower.Watts, "W"),
            Row("rotor winding loss", (double)point.RotorLoss.Watts, "W"),
            Row("friction and windage", (double)point.RotationalLoss.Watts, "W"),
            Row("stray-load loss", (double)point.StrayLoss.Watts, "W"),
            Row("shaft power", (double)point.Shaft.Watts, "W"),
            Row("air-gap torque", point.AirGapTorque.NewtonMeters, "N·m"),
            Row("shaft torque", point.ShaftTorque.NewtonMeters, "N·m"),
        ]);

    private static ImmutableArray<Cell> Row(string quantity, double value, string unit) => [quantity, value, unit];
}
