using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Sizing;

/// <summary>Drills of one material from the largest down, as demands on a candidate.</summary>
/// <param name="Material">The material.</param>
/// <param name="Piloted">True with a pilot that clears the chisel edge.</param>
/// <param name="Rungs">One a drill that arm and column push, largest first.</param>
/// <param name="Pushed">The largest drill that arm and column push at all; null for none of the sizes tried.</param>
public sealed record DrillLadder(CuttingMaterial Material, bool Piloted, IReadOnlyList<WorkDemand> Rungs, Length? Pushed)
{
    /// <summary>The ladders of the materials of the owner's work, into the full and piloted.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Two a material.</returns>
    public static IReadOnlyList<DrillLadder> Of(DrillPress press, Handbook handbook) =>
    [
        .. press.Work.Select(item => item.Material).DistinctBy(material => material.Id)
            .SelectMany(material => new[] { Of(press, handbook, material, false), Of(press, handbook, material, true) }),
    ];

    private static DrillLadder Of(DrillPress press, Handbook handbook, CuttingMaterial material, bool piloted)
    {
        var factors = new TabulatedFactors(handbook.Drilling);
        var thrust = press.Quill.GreatestThrust is { } column ? UnitMath.Min(column, press.Quill.SustainedThrust) : press.Quill.SustainedThrust;
        List<WorkDemand> rungs = [];
        foreach (var diameter in Work.LargestDrillStudy.Sizes.Reverse())
        {
            var feeds = OperationFeeds.OfDrill(material, diameter, handbook);
            var pilot = piloted ? diameter * Work.LargestDrillStudy.PilotShare : (Length?)null;
            var fed = HandFeed.Of(factors, material, diameter, DrillCondition.Usual, thrust, pilot).FeedPerRevolution;
            if (fed is not { } most || most < feeds.Least) continue;
            var feed = UnitMath.Min(most, feeds.Used);
            var load = TwistDrillLoad.Of(factors, material, diameter, feed, DrillCondition.Usual, pilot);
            RotationalSpeed At(Speed cutting) => CuttingSpeed.SpindleSpeed(cutting, diameter);
            // Slower than the table only costs time: half of its low end still counts, as in the study of largest drills.
            rungs.Add(new(
                new(Drill(diameter, material), material, diameter, feed, DrillCondition.Usual, At(material.MiddleSpeed)), piloted, load.Torque,
                At(material.SlowestSpeed.Value) / 2, At(material.MiddleSpeed), At(material.FastestSpeed.Value), Duration.Zero, Duration.Zero, 1, null));
        }
        return new(material, piloted, rungs, rungs.Count > 0 ? rungs[0].Item.Diameter : null);
    }

    private static string Drill(Length diameter, CuttingMaterial material) =>
        FormattableString.Invariant($"{diameter.Millimeters:0.#} mm in {material.Name}");
}
