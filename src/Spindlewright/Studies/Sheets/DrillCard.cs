using Spindlewright.Belts;
using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies.Speeds;
using Spindlewright.Studies.Work;
using UnitsNet;

namespace Spindlewright.Studies.Sheets;

/// <summary>How one drill is pushed into one material.</summary>
/// <param name="Load">Torque and thrust at the feed; null where the arm gives no useful feed.</param>
/// <param name="Pilot">Pilot hole; null for none.</param>
/// <param name="IsAtArm">True where the arm decides the feed: push as hard as the sustained pull.</param>
public sealed record CardFeed(TwistDrillLoad? Load, Length? Pilot, bool IsAtArm);

/// <summary>Where one drill goes in one material.</summary>
/// <param name="Belt">The belt position.</param>
/// <param name="Frequency">Frequency to set.</param>
/// <param name="Speed">Spindle speed under the drill's torque.</param>
/// <param name="IsShortTime">True where heat allows it for a short time only.</param>
/// <param name="Bound">No-credit bound at the spindle of this position.</param>
public sealed record CardSetting(BeltPosition Belt, Frequency Frequency, RotationalSpeed Speed, bool IsShortTime, Torque Bound);

/// <summary>One drill in one material.</summary>
/// <param name="Material">The material.</param>
/// <param name="Diameter">Drill diameter.</param>
/// <param name="Feed">How it is pushed.</param>
/// <param name="Setting">Where it goes; null where it does not.</param>
/// <param name="Reason">Why it does not go; empty where it does.</param>
public sealed record CardEntry(CuttingMaterial Material, Length Diameter, CardFeed Feed, CardSetting? Setting, string Reason);

/// <summary>One card for the machine: which belt position, frequency, feed and pilot for which drill in which material.</summary>
/// <param name="ArmForce">Pull at the lever that an arm keeps up.</param>
/// <param name="Drills">Diameters, smallest first.</param>
/// <param name="Entries">One a material and diameter, material by material.</param>
/// <remarks>
/// Handbook feed where the arm gives it, else the feed that the arm gives, else the same over a pilot hole; below the low end of
/// the handbook's feeds a drill rubs. Of the positions that carry the torque for ever the one with the least bound; where none
/// does, the one with the largest margin for a short time. Middle of the cutting speeds first, then the low end, then half and
/// a quarter of it (slower than the tables only costs time), then the high end. Normal wear, standard point, capability side, low end of the belt's grip.
/// </remarks>
public sealed record DrillCard(Force ArmForce, IReadOnlyList<Length> Drills, IReadOnlyList<CardEntry> Entries)
{
    /// <summary>Makes the card.</summary>
    /// <param name="results">Results of the machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The card.</returns>
    public static DrillCard Of(StudyResults results, Handbook handbook)
    {
        var press = results.Press;
        var drills = SheetChoice.Drills(press);
        var drive = new Drive(press, Side.Capability);
        return new(press.Quill.Lever.ArmForce, drills, [.. SheetChoice.Materials(press, handbook)
            .SelectMany(material => drills.Select(diameter => Entry(results, drive, handbook, material, diameter)))]);
    }

    private static CardEntry Entry(
        StudyResults results, Drive drive, Handbook handbook, CuttingMaterial material, Length diameter)
    {
        var feed = FeedOf(results.Press, handbook, material, diameter);
        if (feed.Load is not { } load) return new(material, diameter, feed, null, "too hard to push");
        if (results.Press.Quill.GreatestThrust is { } column && load.Thrust > column)
            return new(material, diameter, feed, null, "column gives way");
        var setting = SettingOf(results, drive, material, load);
        return new(material, diameter, feed, setting, setting is null ? ReasonOf(results, material, diameter) : "");
    }

    private static CardFeed FeedOf(DrillPress press, Handbook handbook, CuttingMaterial material, Length diameter)
    {
        var factors = new TabulatedFactors(handbook.Drilling);
        var feeds = OperationFeeds.OfDrill(material, diameter, handbook);
        var arm = press.Quill.SustainedThrust;
        var pilot = DrillSizes.Nearest(handbook, diameter * LargestDrillStudy.PilotShare, "metric").Diameter;
        // A pilot of less than the smallest drill of the method breaks sooner than it helps.
        Length?[] pilots = pilot >= TwistDrillLoad.LeastDiameter ? [null, pilot] : [null];
        foreach (var hole in pilots)
        {
            var asTabled = TwistDrillLoad.Of(factors, material, diameter, feeds.Used, DrillCondition.Usual, hole);
            if (asTabled.Thrust <= arm) return new(asTabled, hole, false);
            var byArm = HandFeed.Of(factors, material, diameter, DrillCondition.Usual, arm, hole);
            if (byArm.FeedPerRevolution >= feeds.Least) return new(byArm.Load, hole, true);
        }
        return new(null, null, true);
    }

    private static CardSetting? SettingOf(StudyResults results, Drive drive, CuttingMaterial material, TwistDrillLoad load)
    {
        var (slow, fast) = (material.SlowestSpeed.Value, material.FastestSpeed.Value);
        CardSetting? shortTime = null;
        foreach (var cutting in (Speed[])[material.MiddleSpeed, slow, slow / 2, slow / 4, fast])
        {
            var speed = CuttingSpeed.SpindleSpeed(cutting, load.Diameter);
            var all = Settings(results, drive, speed, load.Torque).ToList();
            if (all.Where(each => !each.Setting.IsShortTime).Select(each => each.Setting).MinBy(each => each.Bound) is { } forEver)
                return forEver;
            shortTime ??= all.Count > 0 ? all.MaxBy(each => each.Margin).Setting : null;
        }
        return shortTime;
    }

    private static IEnumerable<(CardSetting Setting, double Margin)> Settings(
        StudyResults results, Drive drive, RotationalSpeed speed, Torque torque)
    {
        foreach (var spindle in results.Heat.Spindle)
        {
            var belt = spindle.Belt;
            if (FrequencyFor.Of(results.Press, drive, belt, speed, torque).Frequency is not { } frequency) continue;
            if (results.Speeds.Belts.Single(each => each.Belt.Name == belt.Name).Permitted.Frequency < frequency) continue;
            var (continuous, shortTime) = spindle.At(frequency);
            if (torque > shortTime || Slips(results, belt, torque)) continue;
            yield return (new(belt, frequency, speed, torque > continuous, spindle.Bound), shortTime / torque);
        }
    }

    private static bool Slips(StudyResults results, BeltPosition belt, Torque torque) =>
        results.Ratios.Belts.Single(each => each.Belt.Name == belt.Name).Slip is { } slip && torque > slip.Least;

    private static string ReasonOf(StudyResults results, CuttingMaterial material, Length diameter)
    {
        // The fastest speed that is permitted, not the fastest that the settings allow.
        var fastest = results.Press.Spindle.HighestSpeed is { } limit ? UnitMath.Min(limit, results.Speeds.Fastest) : results.Speeds.Fastest;
        return CuttingSpeed.SpindleSpeed(material.FastestSpeed.Value, diameter) < results.Speeds.Slowest ? "spindle too fast"
            : CuttingSpeed.SpindleSpeed(material.SlowestSpeed.Value / 4, diameter) > fastest ? "spindle too slow"
            : "too much torque";
    }
}
