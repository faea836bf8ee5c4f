using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Studies.Findings;

/// <summary>What speeds, arm and belts come to, in sentences.</summary>
internal static class CuttingFindings
{
    internal static IEnumerable<Finding> Of(StudyResults results)
    {
        yield return SlowestSpeed(results);
        yield return Arm(results);
        yield return Belts(results);
    }

    private static Finding SlowestSpeed(StudyResults results)
    {
        var study = results.CuttingSpeeds;
        Length Of(string id) => study.Materials.Single(row => row.Material.Id == id).TooFastFromFixed;
        Length Now(string id) => study.Materials.Single(row => row.Material.Id == id).TooFastFrom;
        return new(
            "Large drills and the slowest speed",
            Invariant($"At {study.SlowestFixed.RevolutionsPerMinute:0} r/min, the slowest fixed speed{(study.SlowestFixedIsOwn ? " as found" : " of many bench drills")}, a drill of high-speed steel is too fast from {Of("grey-iron").Millimeters:0} mm in grey iron and {Of("mild-steel").Millimeters:0} mm in mild steel."),
            Invariant($"At the {study.Slowest.RevolutionsPerMinute:0} r/min of the lowest frequency, unloaded, from {Now("grey-iron").Millimeters:0} and {Now("mild-steel").Millimeters:0} mm."));
    }

    private static Finding Arm(StudyResults results)
    {
        var mild = results.LargestDrills.Materials.Single(row => row.Material.Id == "mild-steel");
        string Size(Length? diameter) => diameter is { } known ? Invariant($"{known.Millimeters:0.#} mm") : "no drill";
        return new(
            "What the arm can feed",
            Invariant($"The lever turns the arm's pull into {results.Feeding.Thrust.Newtons:0} N of thrust: at the low end of the handbook's feeds enough for {Size(mild.ByArm)} into the full in mild steel, {Size(mild.ByArmWithPilot)} with a pilot hole."),
            "On a hand-fed drill the feed is what the arm gives; a larger drill cuts less a turn, and at last nothing.");
    }

    private static Finding Belts(StudyResults results)
    {
        var rows = results.Ratios.Belts.Where(row => row.SlipOverShortTime is not null).ToList();
        if (rows.Count == 0) return new("Belt slip", "Not determined: no [belting] is described, or no pulleys.");
        var worst = rows.MinBy(row => row.SlipOverShortTime)!;
        return new(
            "Belt slip",
            Invariant($"At the low end of tension and friction a belt slips first on position {worst.Belt.Name}, from {worst.Slip!.Least.NewtonMeters:0.0} N·m: {worst.SlipOverShortTime:0.00} times the short-time torque of {worst.ShortTime.NewtonMeters:0.0} N·m (bound {worst.Bound.NewtonMeters:0.0} N·m)."),
            "A slipping belt protects nobody: tightened, cleaned or new it holds more, and the bound credits none.");
    }
}
