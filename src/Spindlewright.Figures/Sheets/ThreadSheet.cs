using Spindlewright.Figures.Svg;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;
using UnitsNet;

namespace Spindlewright.Figures.Sheets;

/// <summary>The drill-and-tap table.</summary>
internal static class ThreadSheet
{
    public static PrintedSheet Of(StudyResults results, ThreadTable table)
    {
        var paper = Paper.Lying();
        var top = paper.Head("Drills before tapping", results.Press.Title);
        var sources = table.Entries.Select(entry => entry.Thread.Citation)
            .Concat(table.Entries.Select(entry => entry.Clearance?.Citation).OfType<Foundations.Tables.Citation>())
            .Select(source => $"{source.Source} ({source.Provenance.InWords()})").Distinct();
        var end = paper.Foot(
            [Paper.Cautions[0], "Reverse only from standstill."],
            ["Clearance hole: medium series. Near: a drill of the inch series within 0.06 mm of the tap drill. At most: middle of the tables for "
                + "machine taps; where the spindle stops and reverses within the thread, begin at a tenth of it.", $"Sizes: {string.Join(", ", sources)}."]);
        List<PaperColumn> columns =
        [
            new(["thread"], TextAt.Start), new(["pitch", "mm"]), new(["tap drill", "mm"]), new(["near"]), new(["clearance", "mm"]),
            .. table.Materials.Select(material => new PaperColumn(["at most, r/min", .. Geometry.Lettered.Wrapped(material.Name, 38, 11, true).Take(2)])),
        ];
        new PaperTable("drill-and-tap table", columns, [.. table.Entries.Select(Row)])
            .Draw(paper, new(Paper.Left, top, paper.Inner, end - top), 22);
        return paper.Done("drill-and-tap", $"Drill-and-tap table: {results.Press.Title}");
    }

    private static List<IReadOnlyList<CellLine>> Row(ThreadEntry entry) =>
    [
        [new(entry.Thread.Name, true)], [new(Mm(entry.Thread.Pitch, 2), Scale: 0.8)], [new(Mm(entry.Thread.TapDrill, 2), true)],
        [new(entry.OtherDrill?.InWords ?? "", Scale: 0.7)], [new(entry.Clearance is { } hole ? Mm(hole.Medium, 1) : "")],
        .. entry.Speeds.Select(speed => (IReadOnlyList<CellLine>)[new(speed is { } rpm ? NumberText.Rounded(rpm.RevolutionsPerMinute, 2) : "")]),
    ];

    private static string Mm(Length length, int decimals)
    {
        var text = NumberText.Fixed(length.Millimeters, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
