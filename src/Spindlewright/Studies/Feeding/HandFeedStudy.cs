using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Heat;
using UnitsNet;

namespace Spindlewright.Studies.Feeding;

/// <summary>What a hand-fed drill does, with and without a pilot hole.</summary>
/// <param name="Material">The work.</param>
/// <param name="Diameter">Drill diameter.</param>
/// <param name="Pilot">Diameter of the pilot hole.</param>
/// <param name="HandbookFeed">Low end of the handbook's feeds.</param>
/// <param name="Solid">Into the full.</param>
/// <param name="Piloted">With the pilot hole.</param>
/// <param name="NeedsPilot">True where the arm gives less than the handbook's low feed into the full and more with the pilot.</param>
/// <param name="GivesOut">What gives out first with the pilot: thrust, torque, heat or column.</param>
/// <param name="Bound">Least no-credit bound of the positions that turn the drill at its speed; null where none does.</param>
public sealed record HandFeedRow(
    CuttingMaterial Material, Length Diameter, Length Pilot, Length HandbookFeed, HandFeed Solid, HandFeed Piloted,
    bool NeedsPilot, string GivesOut, Torque? Bound);

/// <summary>Feed as the outcome of arm, lever and pinion, over materials and diameters.</summary>
/// <param name="Thrust">Thrust that the arm keeps up.</param>
/// <param name="Rows">One a material and diameter.</param>
public sealed record HandFeedStudy(Force Thrust, IReadOnlyList<HandFeedRow> Rows)
{
    private static readonly double[] DiametersMm = [6, 10, 13, 16, 20, 25];
    private static readonly string[] UsualMaterials = ["mild-steel", "grey-iron"];

    /// <summary>Runs the study.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="heat">Its envelopes.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The rows: the materials of the owner's work, mild steel and grey iron.</returns>
    public static HandFeedStudy Of(DrillPress press, HeatStudy heat, Handbook handbook)
    {
        var materials = press.Work.Select(item => item.Material)
            .Concat(UsualMaterials.Select(id => CuttingMaterial.Of(id, handbook)))
            .DistinctBy(material => material.Id);
        return new(press.Quill.SustainedThrust, [.. materials.SelectMany(material => DiametersMm.Select(
            mm => Row(press, heat, handbook, material, Length.FromMillimeters(mm))))]);
    }

    private static HandFeedRow Row(
        DrillPress press, HeatStudy heat, Handbook handbook, CuttingMaterial material, Length diameter)
    {
        var factors = new TabulatedFactors(handbook.Drilling);
        var pilot = DrillSizes.Nearest(handbook, diameter * Work.LargestDrillStudy.PilotShare, "metric").Diameter;
        var feed = OperationFeeds.OfDrill(material, diameter, handbook).Least;
        HandFeed With(Length? hole) =>
            HandFeed.Of(factors, material, diameter, DrillCondition.Usual, press.Quill.SustainedThrust, hole);
        var (solid, piloted) = (With(null), With(pilot));
        bool Enough(HandFeed fed) => fed.FeedPerRevolution >= feed;
        var speed = CuttingSpeed.SpindleSpeed(material.MiddleSpeed, diameter);
        var choices = Speeds.SpeedChart.ChoicesFor(press, heat, speed);
        var wanted = TwistDrillLoad.Of(factors, material, diameter, feed, DrillCondition.Usual, pilot);
        return new(
            material, diameter, pilot, feed, solid, piloted, !Enough(solid) && Enough(piloted),
            GivesOut(press, wanted, choices), choices.LeastBound?.Bound);
    }

    /// <summary>Whichever of the limits is used the most by the piloted drill at the handbook's low feed.</summary>
    private static string GivesOut(DrillPress press, TwistDrillLoad load, Speeds.SpeedChoices choices)
    {
        List<(string Name, double Use)> limits = [("thrust", load.Thrust / press.Quill.SustainedThrust)];
        if (press.Quill.GreatestThrust is { } column) limits.Add(("column", load.Thrust / column));
        double Best(Func<Speeds.SpeedChoice, Torque> of) =>
            choices.Choices.Select(of).Where(torque => torque > Torque.Zero).Select(torque => load.Torque / torque)
                .DefaultIfEmpty(double.PositiveInfinity).Min();
        if (choices.Choices.Count == 0) return "no belt position turns it at its speed";
        limits.Add(("torque", Best(choice => choice.ShortTime)));
        limits.Add(("heat", Best(choice => choice.Continuous)));
        var (name, use) = limits.MaxBy(limit => limit.Use);
        return use > 1 ? name : FormattableString.Invariant($"nothing; {name} is nearest, {100 * use:0} % used");
    }
}
