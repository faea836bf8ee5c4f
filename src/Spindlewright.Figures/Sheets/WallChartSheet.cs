using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Svg;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;
using UnitsNet;
using static System.FormattableString;

namespace Spindlewright.Figures.Sheets;

/// <summary>The wall chart of a material: speed against drill diameter, and beside it a scale of hertz for every belt position.</summary>
internal sealed class WallChartSheet
{
    private const double LeastMm = 1, MostMm = 60;
    private const double LabelPt = 12;
    private const double LinePt = 11;
    private const double ScalePitch = 17;

    private static readonly double[] DrillsMm = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 60];

    private readonly StudyResults results;
    private readonly WallChart chart;
    private readonly Paper paper = Paper.Lying();
    private readonly AxisMap x, y;
    private readonly Box plot;

    private WallChartSheet(StudyResults results, WallChart chart)
    {
        (this.results, this.chart) = (results, chart);
        var top = paper.Head($"{Title(chart)}: spindle speed by drill", results.Press.Title) + Lettered.HeightMm(LabelPt) + 1;
        var end = paper.Foot(Paper.Cautions, Notes()) - Lettered.HeightMm(LabelPt) * 2 - 1;
        var scales = chart.Scales.Count * Pitch + 12;
        plot = new(Paper.Left + 15, top, paper.Inner - 15 - scales, end - top);
        var (slowest, fastest) = (chart.Scales.Min(scale => scale.Ticks[0].Speed), chart.Scales.Max(scale => scale.Ticks[^1].Speed));
        x = new(new("drill or tool diameter", "mm", AxisScale.Logarithmic), Interval.Of(LeastMm, MostMm), plot.Left, plot.Right);
        y = new(
            new("spindle speed", "r/min", AxisScale.Logarithmic),
            Interval.Of(slowest.RevolutionsPerMinute / 1.06, fastest.RevolutionsPerMinute * 1.06), plot.Bottom, plot.Top);
    }

    private double Pitch => Math.Min(ScalePitch, 110.0 / chart.Scales.Count);

    /// <summary>Draws the sheet of a material.</summary>
    public static PrintedSheet Of(StudyResults results, WallChart chart)
    {
        if (chart.Scales.Count == 0)
            throw new PartException(
                "wall chart", "belt positions", "none that may be turned at any frequency of the settings", "at least one");
        var sheet = new WallChartSheet(results, chart);
        sheet.Grid();
        sheet.Lines();
        sheet.Scales();
        return sheet.paper.Done($"wall-chart-{chart.Material.Id}", $"Wall chart, {chart.Material.Name}: {results.Press.Title}");
    }

    private static string Title(WallChart chart) => chart.Material.Name.WithCapital();

    private List<string> Notes() =>
    [
        "From the drill's size up to the line, then level to the right: the scale of a belt position shows the hertz to set, unloaded.",
        "Heavy line: drilling with high-speed steel, middle of the tables; thin lines beside it: their ends.",
        .. chart.Scales.Any(scale => scale.EndsAtLimit) ? (string[])["A scale that ends in a bar ends at the highest speed of the spindle."] : [],
        $"Cutting speeds: {string.Join(", ", chart.Citations.Select(source => $"{source.Source} ({source.Provenance.InWords()})").Distinct().Take(4))}.",
    ];

    private void Grid()
    {
        foreach (var mm in DrillsMm)
        {
            paper.Line(x.Place(mm), plot.Top, x.Place(mm), plot.Bottom, 0.35);
            paper.Text(Invariant($"{mm:0.#}"), x.Place(mm), plot.Bottom + 1, LabelPt, TextAt.Middle);
        }
        paper.Text("drill or tool diameter, mm", (plot.Left + plot.Right) / 2, plot.Bottom + 1 + Lettered.HeightMm(LabelPt), LabelPt, TextAt.Middle);
        paper.Text("r/min", plot.Left - 1, plot.Top - Lettered.HeightMm(LabelPt) - 1, LabelPt, TextAt.End, bold: true);
        var last = double.PositiveInfinity;
        foreach (var rpm in Speeds().OrderByDescending(each => each.Labelled ? 0 : 1).ThenBy(each => each.Rpm))
        {
            var at = y.Place(rpm.Rpm);
            paper.Line(plot.Left, at, plot.Right, at, rpm.Labelled ? 0.5 : 0.2);
            if (!rpm.Labelled || last - at < Lettered.HeightMm(LabelPt)) continue;
            paper.Text(NumberText.Fixed(rpm.Rpm, 0), plot.Left - 1.5, at - Lettered.HeightMm(LabelPt) / 2, LabelPt, TextAt.End);
            last = at;
        }
        paper.Canvas.Rect(plot, SvgCanvas.Stroke(Paper.Ink, 1));
    }

    /// <summary>1, 1.5, 2, 3, 4, 5, 6, 8 in every decade; those of 1, 2, 3 and 5 with a number.</summary>
    private IEnumerable<(double Rpm, bool Labelled)> Speeds() =>
        from decade in new[] { 1.0, 10, 100, 1000, 10_000 }
        from digit in new[] { 1, 1.5, 2, 3, 4, 5, 6, 8 }
        where y.Shows(decade * digit)
        select (decade * digit, digit is 1 or 2 or 3 or 5);

    private void Lines()
    {
        var place = 0;
        foreach (var line in chart.Lines)
        {
            var isDrilling = line.Range is not null && line.Words.StartsWith("drilling", StringComparison.Ordinal);
            if (isDrilling)
                foreach (var end in new[] { line.Range!.Value.Slowest, line.Range.Value.Fastest })
                    if (Math.Abs(end / line.CuttingSpeed - 1) > 1e-9) Stroke(line with { CuttingSpeed = end }, 0.6, "");
            if (Stroke(line, isDrilling ? 2.6 : 1.1, Dashes(line, isDrilling)) is not var (from, to)) continue;
            Label(line, from, to, place++, isDrilling);
        }
    }

    private static string Dashes(WallLine line, bool isDrilling) => isDrilling ? ""
        : line.IsOwn ? " stroke-dasharray=\"0.9 0.9\""
        : line.Words.StartsWith("tapping", StringComparison.Ordinal) ? " stroke-dasharray=\"6 1.2 1 1.2\"" : " stroke-dasharray=\"4 1.4\"";

    /// <summary>The part of a line within the plot; null where there is none.</summary>
    private (double FromMm, double ToMm)? Stroke(WallLine line, double weightPt, string dashes)
    {
        // n = v/(π d), so that the ends of the speed axis give the ends of the diameters.
        double DiameterAt(double rpm) => line.CuttingSpeed.MetersPerSecond * 60_000 / (Math.PI * rpm);
        var (from, to) = (Math.Max(LeastMm, DiameterAt(y.Range.Most)), Math.Min(MostMm, DiameterAt(y.Range.Least)));
        if (from >= to) return null;
        double Y(double mm) => y.Place(line.At(Length.FromMillimeters(mm)).RevolutionsPerMinute);
        paper.Line(x.Place(from), Y(from), x.Place(to), Y(to), weightPt, dashes);
        return (from, to);
    }

    private void Label(WallLine line, double fromMm, double toMm, int place, bool bold)
    {
        // Labels of neighbouring lines stand at alternating places along them.
        var share = place % 2 == 0 ? 0.36 : 0.68;
        var mm = Math.Exp(Math.Log(fromMm) + share * (Math.Log(toMm) - Math.Log(fromMm)));
        var (px, py) = (x.Place(mm), y.Place(line.At(Length.FromMillimeters(mm)).RevolutionsPerMinute));
        var slope = Math.Atan2(
            plot.Height / Math.Log(y.Range.Most / y.Range.Least), plot.Width / Math.Log(MostMm / LeastMm)) * 180 / Math.PI;
        const double Off = 0.9;
        var radians = slope * Math.PI / 180;
        paper.Sloped(line.Words, px + Off * Math.Sin(radians), py - Off * Math.Cos(radians), slope, LinePt, bold);
    }

    private void Scales()
    {
        var left = plot.Right + 12;
        foreach (var scale in chart.Scales)
        {
            double Y(WallTick tick) => y.Place(tick.Speed.RevolutionsPerMinute);
            paper.Line(left, Y(scale.Ticks[0]), left, Y(scale.Ticks[^1]), 2);
            if (scale.EndsAtLimit) paper.Line(left - 2.2, Y(scale.Ticks[^1]), left + 2.2, Y(scale.Ticks[^1]), 2.4);
            var name = Lettered.Shortened(scale.Belt.Name, Pitch - 1, PrintedSheet.LeastPt, bold: true);
            paper.Text(
                name, left, plot.Top - Lettered.HeightMm(15) - 0.5, Paper.Fitting(name, Pitch - 1, 15, true), TextAt.Middle, bold: true);
            List<double> taken = [];
            // The ends first: they matter most where there is no room for all.
            foreach (var tick in new[] { scale.Ticks[^1], scale.Ticks[0] }.Concat(scale.Ticks.Skip(1).SkipLast(1)))
            {
                paper.Line(left, Y(tick), left + 1.6, Y(tick), 0.8);
                if (taken.Any(each => Math.Abs(each - Y(tick)) < Lettered.HeightMm(LabelPt) * 0.95)) continue;
                taken.Add(Y(tick));
                paper.Text(Invariant($"{Math.Floor(tick.Frequency.Hertz + 1e-6):0}"), left + 2.2, Y(tick) - Lettered.HeightMm(LabelPt) / 2, LabelPt);
            }
            left += Pitch;
        }
        paper.Text("hertz to set, by belt position", paper.Right, plot.Bottom + 1 + Lettered.HeightMm(LabelPt), LabelPt, TextAt.End);
    }
}
