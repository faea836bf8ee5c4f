using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Heat;
using UnitsNet;

namespace Spindlewright.Studies.Work;

/// <summary>The largest drill of one material at one belt position.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Continuous">Largest drill whose torque is within the continuous envelope; null for none of the sizes tried.</param>
/// <param name="ShortTime">The same for the short-time envelope.</param>
/// <param name="Bound">No-credit bound at the spindle.</param>
public sealed record LargestAtBelt(BeltPosition Belt, LargestSize? Continuous, LargestSize? ShortTime, Torque Bound);

/// <summary>A drill size with what it asks.</summary>
/// <param name="Diameter">Drill diameter.</param>
/// <param name="Speed">Spindle speed, unloaded.</param>
/// <param name="Frequency">Frequency of that speed.</param>
/// <param name="Torque">Torque at the handbook's feed.</param>
/// <param name="Thrust">Thrust at that feed.</param>
public sealed record LargestSize(Length Diameter, RotationalSpeed Speed, Frequency Frequency, Torque Torque, Force Thrust);

/// <summary>The largest drills of one material.</summary>
/// <param name="Material">The material.</param>
/// <param name="Belts">One a belt position.</param>
/// <param name="ByArm">Largest drill into the full that the arm feeds at the low end of the handbook's feeds; null for none.</param>
/// <param name="ByArmWithPilot">The same with a pilot hole as wide as the chisel edge and a half more.</param>
public sealed record LargestDrills(
    CuttingMaterial Material, IReadOnlyList<LargestAtBelt> Belts, Length? ByArm, Length? ByArmWithPilot);

/// <summary>The largest drill within the continuous and the short-time envelope, for each material and belt position.</summary>
/// <param name="Materials">One a material: the handbook's and the owner's.</param>
/// <remarks>
/// At the middle of the cutting speeds and the handbook's feed for the material, normal wear, standard point, into the full. A
/// drill counts at a position only where a frequency of the settings turns it within its cutting speeds.
/// </remarks>
public sealed record LargestDrillStudy(IReadOnlyList<LargestDrills> Materials)
{
    /// <summary>Pilot over drill diameter that clears the chisel edge of a standard point with room.</summary>
    public const double PilotShare = 0.27;

    /// <summary>Diameters that are tried, smallest first.</summary>
    internal static IEnumerable<Length> Sizes => SizesMm.Select(mm => Length.FromMillimeters(mm));

    private static readonly double[] SizesMm =
        [2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5, 10, 10.5, 11, 11.5, 12, 13, 14, 15, 16, 17, 18, 19, 20,
            21, 22, 23, 24, 25, 26, 28, 30, 32, 35, 38, 40, 45, 50, 55, 60];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="heat">Its envelopes.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The largest drills.</returns>
    public static LargestDrillStudy Of(DrillPress press, HeatStudy heat, Handbook handbook)
    {
        var own = press.OwnMaterials.Select(material => material.Id).ToHashSet(StringComparer.Ordinal);
        IEnumerable<CuttingMaterial> materials =
            [.. press.OwnMaterials, .. handbook.Materials.Where(row => !own.Contains(row.Id)).Select(row => CuttingMaterial.Of(row, handbook))];
        return new([.. materials.Select(material => Of(press, heat, handbook, material))]);
    }

    private static LargestDrills Of(DrillPress press, HeatStudy heat, Handbook handbook, CuttingMaterial material)
    {
        var factors = new TabulatedFactors(handbook.Drilling);
        var loads = Sizes.Select(diameter => TwistDrillLoad.Of(
            factors, material, diameter, OperationFeeds.OfDrill(material, diameter, handbook).Used, DrillCondition.Usual)).ToList();
        return new(
            material, [.. heat.Spindle.Select(spindle => At(press, spindle, material, loads))],
            ByArm(press, handbook, factors, material, 0), ByArm(press, handbook, factors, material, PilotShare));
    }

    private static LargestAtBelt At(
        DrillPress press, SpindleEnvelope spindle, CuttingMaterial material, List<TwistDrillLoad> loads)
    {
        LargestSize? continuous = null, shortTime = null;
        foreach (var load in loads)
        {
            if (Turning(press, spindle.Belt, material, load.Diameter) is not var (frequency, speed)) continue;
            var (forEver, seconds) = spindle.At(frequency);
            var size = new LargestSize(load.Diameter, speed, frequency, load.Torque, load.Thrust);
            if (load.Torque <= forEver) continuous = size;
            if (load.Torque <= seconds) shortTime = size;
        }
        return new(spindle.Belt, continuous, shortTime, spindle.Bound);
    }

    /// <summary>Frequency nearest to the middle of the cutting speeds that the settings allow; null where all are off the range.</summary>
    private static (Frequency Frequency, RotationalSpeed Speed)? Turning(
        DrillPress press, BeltPosition belt, CuttingMaterial material, Length diameter)
    {
        var circuit = press.Motor.Circuit.Capability;
        double HertzFor(Speed cutting) =>
            (CuttingSpeed.SpindleSpeed(cutting, diameter) * belt.Ratio).RevolutionsPerMinute * circuit.Poles / 120;
        // Faster than the table is refused; slower only costs time, so that half of the low end still counts.
        var (least, most) = (HertzFor(material.SlowestSpeed.Value) / 2, HertzFor(material.FastestSpeed.Value));
        var (lowest, highest) = (press.Inverter.LowestFrequency.Hertz, press.Inverter.HighestFrequency.Hertz);
        if (lowest > most || highest < least) return null;
        var frequency = Frequency.FromHertz(Math.Clamp(HertzFor(material.MiddleSpeed), lowest, highest));
        return (frequency, belt.SpindleSpeed(circuit.SynchronousSpeedAt(frequency)));
    }

    private static Length? ByArm(
        DrillPress press, Handbook handbook, TabulatedFactors factors, CuttingMaterial material, double pilotShare)
    {
        Length? largest = null;
        foreach (var diameter in Sizes)
        {
            var feed = OperationFeeds.OfDrill(material, diameter, handbook).Least;
            var load = TwistDrillLoad.Of(
                factors, material, diameter, feed, DrillCondition.Usual, pilotShare > 0 ? diameter * pilotShare : null);
            if (load.Thrust <= press.Quill.SustainedThrust) largest = diameter;
        }
        return largest;
    }
}
