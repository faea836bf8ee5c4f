using Spindlewright.Cutting;
using Spindlewright.Cutting.Operations;
using Spindlewright.Foundations.Tables;
using UnitsNet;

namespace Spindlewright.Studies.Sheets;

/// <summary>A thread with its holes and tapping speeds.</summary>
/// <param name="Thread">The thread.</param>
/// <param name="OtherDrill">Drill of the inch series nearest to the tap drill; null where none is near.</param>
/// <param name="Clearance">Clearance holes of a bolt; null where the table has none.</param>
/// <param name="Speeds">Spindle speed of tapping, one a material of the table.</param>
public sealed record ThreadEntry(
    ThreadRow Thread, DrillSizeRow? OtherDrill, ClearanceHoleRow? Clearance, IReadOnlyList<RotationalSpeed?> Speeds);

/// <summary>Holes before tapping, clearance holes and tapping speeds of the owner's threads.</summary>
/// <param name="Materials">Materials of the tapping speeds.</param>
/// <param name="Entries">One a thread.</param>
public sealed record ThreadTable(IReadOnlyList<CuttingMaterial> Materials, IReadOnlyList<ThreadEntry> Entries)
{
    /// <summary>Most materials that have a column.</summary>
    public const int MostMaterials = 4;

    /// <summary>A drill of another series counts as near within this; more would change the height of thread cut noticeably. Own choice.</summary>
    private static readonly Length Near = Length.FromMillimeters(0.06);

    /// <summary>Makes the table.</summary>
    /// <param name="results">Results of the machine.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The table.</returns>
    public static ThreadTable Of(StudyResults results, Handbook handbook)
    {
        var materials = SheetChoice.Materials(results.Press, handbook).Take(MostMaterials).ToList();
        return new(materials, [.. SheetChoice.Threads(results.Press, handbook).Select(thread => new ThreadEntry(
            thread, Other(thread, handbook),
            handbook.ClearanceHoles.FirstOrDefault(row => Math.Abs((row.Major - thread.Major).Millimeters) < 1e-6),
            [.. materials.Select(material =>
                OperationSpeeds.Of(OperationKind.Tapping, material, handbook)?.Spindle(thread.Major))]))]);
    }

    private static DrillSizeRow? Other(ThreadRow thread, Handbook handbook)
    {
        var nearest = DrillSizes.Of(handbook, "number", "letter", "fractional")
            .MinBy(row => Math.Abs((row.Diameter - thread.TapDrill).Millimeters))!;
        return Math.Abs((nearest.Diameter - thread.TapDrill).Millimeters) <= Near.Millimeters ? nearest : null;
    }
}
