using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Motors.Fitting;
using UnitsNet;

namespace Spindlewright.Motors.Plates;

/// <summary>The circuits of what is known of a motor, one a side, with all that went into them.</summary>
/// <param name="Completion">The whole nameplates, the defaults in them and the questions.</param>
/// <param name="Fits">One fit a side.</param>
/// <param name="BreakdownDefault">Breakdown torque over rated that stands in where none is known, by side.</param>
public sealed record PlateFit(
    PlateCompletion Completion, Sided<NameplateFit> Fits, Sided<Sourced<double>> BreakdownDefault)
{
    /// <summary>Fits circuits to what is known of a motor.</summary>
    /// <param name="figures">Any sufficient subset: power or frame, poles or a speed, voltage, frequency.</param>
    /// <param name="handbook">Tables of the defaults.</param>
    /// <param name="settings">Settings for a side and its default of breakdown torque; the usual ones where null.</param>
    /// <returns>The fits.</returns>
    /// <exception cref="PartException">Too little is known, or figures contradict each other.</exception>
    public static PlateFit Of(PlateFigures figures, Handbook handbook, Func<Side, double, FitSettings>? settings = null)
    {
        var completion = PlateCompletion.Of(figures, handbook);
        var (plates, plate) = (completion.Nameplates, completion.Nameplates.Capability);
        var breakdown = handbook.MotorDefaults.Pair("breakdown torque", plate.Poles, plate.Power);
        NameplateFit On(Side side) =>
            NameplateFit.Of(plates.On(side), (settings ?? FitSettings.Usual)(side, breakdown.On(side).Value));
        return new(completion, new(On(Side.Capability), On(Side.Hazard)), breakdown);
    }

    /// <summary>
    /// Breakdown torque that no bound goes below: the plate's, or the high default, over the rated torque of the
    /// capability side, which is the one that a machine's ratings name.
    /// </summary>
    public double BreakdownTorqueForBound
    {
        get
        {
            var (plate, high) = (Completion.Nameplates.Capability, Completion.Nameplates.Hazard);
            return (plate.BreakdownTorque ?? BreakdownDefault.Hazard.Value) * Math.Max(1, high.RatedTorque / plate.RatedTorque);
        }
    }

    /// <summary>Rated torque of the capability side.</summary>
    public Torque RatedTorque => Completion.Nameplates.Capability.RatedTorque;
}
