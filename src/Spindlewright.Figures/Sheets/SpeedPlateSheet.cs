using Spindlewright.Belts;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Svg;
using Spindlewright.Figures.Wording;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;
using static System.FormattableString;

namespace Spindlewright.Figures.Sheets;

/// <summary>The speed plate: spindle speeds by belt position and frequency, for the wall and at its true size for the machine.</summary>
internal static class SpeedPlateSheet
{
    private const double CheckLineMm = 50;

    /// <summary>The plate as a sheet of A4.</summary>
    public static PrintedSheet Wall(StudyResults results)
    {
        var plate = SpeedPlate.Of(results);
        var paper = Paper.Lying();
        var top = paper.Head("Spindle speeds, r/min", results.Press.Title);
        var end = paper.Foot(Paper.Cautions, [HowToRead, LimitNote(plate), LoadNote(plate)]);
        Table(plate, withTorque: true).Draw(paper, new(Paper.Left, top, paper.Inner, end - top), 27);
        return paper.Done("speed-plate", $"Speed plate: {results.Press.Title}");
    }

    /// <summary>The plate at its true size, to cut out.</summary>
    public static PrintedSheet TrueSize(StudyResults results)
    {
        var wishes = results.Press.Sheets;
        var (width, height) = (wishes.PlateWidth.Millimeters, wishes.PlateHeight.Millimeters);
        var paper = Paper.Lying();
        var box = new Box((paper.Width - width) / 2, (paper.Height - height) / 2 - 4, width, height);
        Plate(paper, results, box);
        CutMarks(paper, box);
        var line = paper.Height - 11;
        paper.Line(Paper.Left, line, Paper.Left + CheckLineMm, line, 1);
        foreach (var x in new[] { Paper.Left, Paper.Left + CheckLineMm }) paper.Line(x, line - 2, x, line + 2, 1);
        paper.Text(
            Invariant($"This line is {CheckLineMm:0} mm long when the sheet is printed at 100 %. Cut at the marks: {width:0.#} mm by {height:0.#} mm."),
            Paper.Left + CheckLineMm + 5, line - 2.2, PrintedSheet.LeastPt);
        return paper.Done("speed-plate-true-size", $"Speed plate at true size: {results.Press.Title}");
    }

    private static void Plate(Paper paper, StudyResults results, Box box)
    {
        const double Inset = 3;
        var plate = SpeedPlate.Of(results, most: box.Width >= 130 ? 5 : 4);
        var inner = box.Grown(-Inset);
        var head = Lettered.Wrapped($"{results.Press.Title}: spindle speed, r/min", inner.Width, 11, bold: true).Take(2).ToList();
        var foot = Lettered.Wrapped($"{ShortHowToRead} {Paper.Cautions[1]}", inner.Width, PrintedSheet.LeastPt);
        var top = inner.Top;
        foreach (var text in head)
        {
            paper.Text(text, inner.Left, top, 11, bold: true);
            top += Lettered.HeightMm(11);
        }
        var below = inner.Bottom - foot.Count * Lettered.HeightMm(PrintedSheet.LeastPt);
        for (var i = 0; i < foot.Count; i++)
            paper.Text(foot[i], inner.Left, below + i * Lettered.HeightMm(PrintedSheet.LeastPt), PrintedSheet.LeastPt);
        Table(plate, withTorque: false).Draw(paper, new(inner.Left, top + 1, inner.Width, below - top - 2), 20);
    }

    /// <summary>Strokes outside the corners, so that none is left on the plate.</summary>
    private static void CutMarks(Paper paper, Box box)
    {
        const double Off = 2, Long = 8;
        foreach (var (x, sideways) in new[] { (box.Left, -1), (box.Right, 1) })
            foreach (var (y, updown) in new[] { (box.Top, -1), (box.Bottom, 1) })
            {
                paper.Line(x + sideways * Off, y, x + sideways * (Off + Long), y, 0.5);
                paper.Line(x, y + updown * Off, x, y + updown * (Off + Long), 0.5);
            }
    }

    private static PaperTable Table(SpeedPlate plate, bool withTorque)
    {
        List<PaperColumn> columns =
        [
            new(["belt"]), .. plate.Frequencies.Select(each => new PaperColumn([Invariant($"{each.Hertz:0.#} Hz")])), new(["at most"]),
        ];
        if (withTorque) columns.Add(new(["torque", "loaded / bound"]));
        return new("speed plate", columns, [.. plate.Rows.Select(row => Row(row, withTorque))]);
    }

    private static List<IReadOnlyList<CellLine>> Row(PlateRow row, bool withTorque)
    {
        List<IReadOnlyList<CellLine>> cells =
        [
            withTorque && Pulleys(row.Belt) is { Length: > 0 } pulleys
                ? [new(Paper.ShortName(row.Belt), true), new(pulleys, Scale: 0.4)] : [new(Paper.ShortName(row.Belt), true)],
            .. row.Speeds.Select(Speed),
            [new(row.HighestPermitted is { } most ? Invariant($"{Math.Floor(most.Hertz + 1e-6):0} Hz") : "not given", true, row.HighestPermitted is null ? 0.5 : 1)],
        ];
        if (withTorque)
            cells.Add([new(Newtonmetres(row.StatedTorque.NewtonMeters), Scale: 0.55), new(Newtonmetres(row.Bound.NewtonMeters), true, 0.55)]);
        return cells;
    }

    private static IReadOnlyList<CellLine> Speed(PlateSpeed speed) => speed.PassesLimit ? [new("over", Scale: 0.5)]
        : [new(speed.Loaded is { } loaded ? Rpm(loaded.RevolutionsPerMinute) : "stalls", true, speed.Loaded is null ? 0.5 : 1),
            new(Rpm(speed.Unloaded.RevolutionsPerMinute), Scale: 0.5)];

    private static string Pulleys(BeltPosition belt) => string.Join(", ", belt.Pulleys.Select(pair =>
        Invariant($"{pair.Driving.Millimeters:0.#}/{pair.Driven.Millimeters:0.#}")));

    private static string Rpm(double rpm) => NumberText.Fixed(rpm, 0);

    private static string Newtonmetres(double torque) => $"{NumberText.Significant(torque, 3)} N·m";

    private const string HowToRead =
        "Large: loaded with the torque on the right. Small: unloaded. Over: past the highest speed of the spindle.";

    private const string ShortHowToRead = "Large: loaded, half rated torque. Small: unloaded.";

    private static string LimitNote(SpeedPlate plate) => plate.Rows.Any(row => row.HighestPermitted is null)
        ? "At most: not determined, since the highest speed of the spindle is not given."
        : "At most: highest frequency at which the spindle stays within its highest speed.";

    private static string LoadNote(SpeedPlate plate) => plate.Rows.Any(row => row.Speeds.Any(speed => speed.Loaded is null))
        ? "Stalls: the motor does not turn this load there. Bound: what a hand or a loose workpiece could meet."
        : "Bound: what a hand or a loose workpiece could meet.";
}
