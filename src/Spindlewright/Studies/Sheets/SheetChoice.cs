using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using UnitsNet;

namespace Spindlewright.Studies.Sheets;

/// <summary>What stands on the sheets: as wished for in the machine file, or usual things.</summary>
public static class SheetChoice
{
    /// <summary>Most materials that a sheet has room for.</summary>
    public const int MostMaterials = 8;

    private static readonly string[] UsualMaterials = ["mild-steel", "grey-iron"];
    private static readonly double[] UsualDrillsMm = [3, 4, 5, 6, 8, 10, 13, 16, 20];
    private const double UsualThreadsUpToMm = 12;

    /// <summary>The materials.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Those wished for; else those of the owner's work and experience; else mild steel and grey iron.</returns>
    public static IReadOnlyList<CuttingMaterial> Materials(DrillPress press, Handbook handbook)
    {
        if (press.Sheets.Materials.Count > 0) return Named(press, handbook, press.Sheets.Materials);
        var own = press.Work.Select(item => item.Material)
            .Concat(Named(press, handbook, press.Experience.Select(row => row.MaterialId)))
            .DistinctBy(material => material.Id).Take(MostMaterials).ToList();
        return own.Count > 0 ? own : Named(press, handbook, UsualMaterials);
    }

    /// <summary>The threads.</summary>
    /// <param name="press">The machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>Those wished for; else the coarse metric ones up to M12 and those of the owner's work.</returns>
    public static IReadOnlyList<ThreadRow> Threads(DrillPress press, Handbook handbook)
    {
        if (press.Sheets.Threads.Count > 0) return [.. press.Sheets.Threads.Select(name => handbook.Threads[name])];
        bool Same(Length one, Length other) => Math.Abs((one - other).Millimeters) < 1e-6;
        bool OfWork(ThreadRow row) => press.Work.Any(item =>
            item.Operation.Tap is { } tap && Same(tap.Major, row.Major) && Same(tap.Pitch, row.Pitch));
        return [.. handbook.Threads.Where(row => OfWork(row)
            || (row.IsCoarse && row.Name.StartsWith('M') && row.Major.Millimeters <= UsualThreadsUpToMm))];
    }

    /// <summary>The drills of the card.</summary>
    /// <param name="press">The machine.</param>
    /// <returns>Diameters, smallest first.</returns>
    public static IReadOnlyList<Length> Drills(DrillPress press) => press.Sheets.Drills.Count > 0
        ? press.Sheets.Drills : [.. UsualDrillsMm.Select(mm => Length.FromMillimeters(mm))];

    private static List<CuttingMaterial> Named(DrillPress press, Handbook handbook, IEnumerable<string> ids) =>
        [.. ids.Select(id => press.OwnMaterials.FirstOrDefault(own => own.Id == id) ?? CuttingMaterial.Of(id, handbook))
            .DistinctBy(material => material.Id)];
}
