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
    /// <returns>Speed plate, the same at true size, machine card, drill-and-tap table, one wall chart a material.</returns>
    /// <exception cref="PartException">Something does not fit on its paper; the message says what room it asks for.</exception>
    public static ImmutableArray<PrintedSheet> All(StudyResults results, Handbook handbook) =>
    [
        SpeedPlateSheet.Wall(results),
        SpeedPlateSheet.TrueSize(results),
        DrillCardSheet.Of(results, DrillCard.Of(results, handbook)),
        ThreadSheet.Of(results, ThreadTable.Of(results, handbook)),
        .. SheetChoice.Materials(results.Press, handbook).Select(material =>
            WallChartSheet.Of(results, WallChart.Of(results, material, handbook))),
    ];
}
