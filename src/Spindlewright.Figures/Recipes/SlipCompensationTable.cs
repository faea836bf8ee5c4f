using System.Collections.Immutable;
using Spindlewright.Studies;
using Spindlewright.Studies.Speeds;
using UnitsNet;

namespace Spindlewright.Figures.Recipes;

/// <summary>What slip compensation does to loaded speed and to torque.</summary>
public static class SlipCompensationTable
{
    /// <summary>Makes the table at the lowest, half and the whole base frequency and half of rated torque.</summary>
    /// <param name="results">The results.</param>
    /// <returns>The table.</returns>
    public static Table Of(StudyResults results)
    {
        var (inverter, motor) = (results.Press.Inverter, results.Press.Motor);
        var share = inverter.SlipCompensation > 0 ? inverter.SlipCompensation : 1;
        var rows = new[] { inverter.LowestFrequency, inverter.Curve.BaseFrequency / 2, inverter.Curve.BaseFrequency }
            .Select(set => SlipCompensation.Of(results.Press, set, motor.RatedTorque / 2, share));
        var (speed, torque) = (NumberFormat.Fixed(0), NumberFormat.Fixed(1));
        return new(
            "slip-compensation", "Slip compensation at half of rated torque",
            [
                new("set frequency", "Hz", Format: torque), new("frequency that goes out", "Hz", Format: torque),
                new("motor speed without", "r/min", Format: speed), new("motor speed with", "r/min", Format: speed),
                new("pull-out without", "N·m", Format: torque), new("pull-out with", "N·m", Format: torque),
                new("bound, with and without", "N·m", Format: torque),
            ],
            [.. rows.Select(row => ImmutableArray.Create<Cell>(
                row.Set.Hertz, row.Output.Hertz, Rpm(row.Without), Rpm(row.With), row.PullOutWithout.NewtonMeters,
                row.PullOutWith.NewtonMeters, row.Bound.NewtonMeters))],
            caption: FormattableString.Invariant(
                $"{100 * share:0} % of the rated slip added at rated torque{(inverter.SlipCompensation > 0 ? "" : "; it is off on this machine")}. Capability side. It gives speed back, not torque, and no hazard counts it."));
    }

    private static Cell Rpm(RotationalSpeed? speed) => speed is { } running ? running.RevolutionsPerMinute : "stalls";
}
