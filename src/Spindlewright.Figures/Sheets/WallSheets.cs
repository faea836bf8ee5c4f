using System.Collections.Immutable;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;

namespace Spindlewright.Figures.Sheets;

/// <summary>All sheets for the workshop wall.</summary>
public static class WallSheets
{
    /// <summary>Draws the sheets of a machine.</summary>
    /// <param name="results">Its results.</param>
    /// <param name="handbook">Tables.</param>
    /// <param name="leaveOut">Told why a sheet that does not fit its paper is left out; null to refuse them all then.</param>
    /// <returns>Speed plate, the same at true size, machine card, drill-and-tap table, one wall chart a material.</returns>
    /// <exception cref="PartException">Something does not fit on its paper; the message says what room it asks for.</exception>
    public static ImmutableArray<PrintedSheet> All(StudyResults results, Handbook handbook, Action<PartException>? leaveOut = null)
    {
        List<Func<PrintedSheet>> drawings =
        [
            () => SpeedPlateSheet.Wall(results),
            () => SpeedPlateSheet.TrueSize(results),
            () => DrillCardSheet.Of(results, DrillCard.Of(results, handbook)),
            () => ThreadSheet.Of(results, ThreadTable.Of(results, handbook)),
            .. SheetChoice.Materials(results.Press, handbook).Select(material =>
                (Func<PrintedSheet>)(() => WallChartSheet.Of(results, WallChart.Of(results, material, handbook)))),
        ];
        var sheets = ImmutableArray.CreateBuilder<PrintedSheet>();
        foreach (var draw in drawings)
            try
            {
                sheets.Add(draw());
            }
            catch (PartException fault) when (leaveOut is not null)
            {
                leaveOut(fault);
            }
        return sheets.ToImmutable();
    }
}
