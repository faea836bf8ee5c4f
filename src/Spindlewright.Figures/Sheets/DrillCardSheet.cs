using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Svg;
using Spindlewright.Figures.Wording;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;
using static System.FormattableString;

namespace Spindlewright.Figures.Sheets;

/// <summary>The card for the machine: material by drill, and in each field where it goes and how.</summary>
internal static class DrillCardSheet
{
    public static PrintedSheet Of(StudyResults results, DrillCard card)
    {
        var paper = Paper.Lying();
        var top = paper.Head("Which belt, which hertz", results.Press.Title);
        var bounds = card.Entries.Select(entry => entry.Setting).OfType<CardSetting>().DistinctBy(setting => setting.Belt.Name)
            .OrderBy(setting => setting.Belt.Name, StringComparer.Ordinal)
            .Select(setting => Invariant($"{Paper.ShortName(setting.Belt)}: {NumberText.Significant(setting.Bound.NewtonMeters, 3)} N·m")).ToList();
        var end = paper.Foot(
            Paper.Cautions,
            ["In a field: belt position and hertz; r/min; feed in mm a turn; pilot hole in mm.",
                Invariant($"Push: the arm's {card.ArmForce.Newtons:0} N at the lever decide the feed. Short: heat allows it for a short time only."),
                .. bounds.Count > 0 ? (string[])[$"Bound, what a hand or a loose workpiece could meet, by belt position: {string.Join("; ", bounds)}."] : []]);
        var materials = card.Entries.GroupBy(entry => entry.Material.Id).ToList();
        List<PaperColumn> columns =
        [
            new(["material"], TextAt.Start), .. card.Drills.Select(drill => new PaperColumn([Invariant($"{drill.Millimeters:0.##} mm")])),
        ];
        new PaperTable("machine card", columns, [.. materials.Select(group => Row([.. group]))])
            .Draw(paper, new(Paper.Left, top, paper.Inner, end - top), 20);
        return paper.Done("machine-card", $"Machine card: {results.Press.Title}");
    }

    private static List<IReadOnlyList<CellLine>> Row(List<CardEntry> entries) =>
    [
        [.. Lettered.Wrapped(entries[0].Material.Name, 30, PrintedSheet.LeastPt, bold: true).Take(4).Select(line => new CellLine(line, true, 0))],
        .. entries.Select(Field),
    ];

    private static IReadOnlyList<CellLine> Field(CardEntry entry)
    {
        if (entry.Setting is not { } setting)
            return [.. entry.Reason.Split(' ').Chunk(2).Select(words => new CellLine(string.Join(' ', words), Scale: 0))];
        List<CellLine> lines =
        [
            new(Invariant($"{Paper.ShortName(setting.Belt)} · {setting.Frequency.Hertz:0} Hz"), true),
            new(Invariant($"{NumberText.Rounded(setting.Speed.RevolutionsPerMinute, 2)} r/min"), Scale: 0.7),
            new(Invariant($"{(entry.Feed.IsAtArm ? "push, " : "")}{entry.Feed.Load!.FeedPerRevolution.Millimeters:0.00}"), Scale: 0.7),
        ];
        var also = entry.Feed.Pilot is { } pilot ? Invariant($"pilot {pilot.Millimeters:0.#}") : "";
        if (setting.IsShortTime) also += also.Length > 0 ? ", short" : "short";
        if (also.Length > 0) lines.Add(new(also, Scale: 0.7));
        return lines;
    }
}
