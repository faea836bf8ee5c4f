using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Svg;

namespace Spindlewright.Figures.Tests;

public partial class SvgTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";
    private static readonly SvgOptions[] Forms = [SvgOptions.Wide, SvgOptions.Narrow, new(250, 180), new(60)];

    [Fact]
    public void The_same_figure_gives_the_same_bytes_also_under_another_culture()
    {
        var before = Specimens.All.Select(f => SvgWriter.Write(f)).ToList();
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = ",", NegativeSign = "~",
            NumberGroupSeparator = "." };
        var own = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = odd;
            Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(before, Specimens.All.Select(f => SvgWriter.Write(f)));
            Assert.Equal(Specimens.All.Select(f => f.AltText), Specimens.All
                .Select(f => Wording.FigureText.Describe(f)));
        }
        finally
        {
            CultureInfo.CurrentCulture = own;
        }
        Assert.Equal(Specimens.All.Select(f => Interactive.PlotlyWriter.Json(f)), Specimens.All
            .Select(f => Interactive.PlotlyWriter.Json(f)));
    }

    [Fact]
    public void A_drawing_is_well_formed_has_its_size_in_mm_and_names_itself()
    {
        foreach (var figure in Specimens.All)
        {
            var svg = XDocument.Parse(SvgWriter.Write(figure)).Root!;
            Assert.Equal("170mm", svg.Attribute("width")!.Value);
            Assert.StartsWith("0 0 170 ", svg.Attribute("viewBox")!.Value, StringComparison.Ordinal);
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.Equal(figure.Title, svg.Element(Ns + "title")!.Value);
            Assert.Equal(figure.AltText, svg.Element(Ns + "desc")!.Value);
            var ids = svg.DescendantsAndSelf().Attributes("id").Select(a => a.Value).ToList();
            Assert.All(svg.Attribute("aria-labelledby")!.Value.Split(' '), id => Assert.Contains(id, ids));
        }
    }

    [Fact]
    public void Ids_are_unique_in_a_page_of_all_figures_in_both_forms()
    {
        var all = Specimens.All.SelectMany(f => new[] { SvgWriter.Write(f), SvgWriter.Write(f, SvgOptions.Narrow) });
        Assert.Distinct(all.SelectMany(s => XDocument.Parse(s).Descendants().Attributes("id")).Select(a => a.Value));
    }

    [Fact]
    public void A_drawing_asks_for_nothing_from_outside_and_is_small()
    {
        foreach (var svg in Specimens.All.Select(f => SvgWriter.Write(f)))
        {
            Assert.Single(AddressPattern().Matches(svg));
            Assert.DoesNotContain("<script", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("@font-face", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
            Assert.InRange(svg.Length, 2000, 15000);
        }
    }

    [Fact]
    public void No_text_overlaps_another_or_leaves_the_drawing()
    {
        foreach (var figure in Specimens.All)
            foreach (var form in Forms)
                AcceptTexts(figure, form);
    }

    [Fact]
    public void No_text_overlaps_in_random_figures()
    {
        var mark =
            from n in Gen.Int[2, 30]
            from role in Gen.Enum<Role>()
            from label in Gen.String[Gen.Char['a', 'z'], 0, 14]
            from ys in Gen.Double[0.01, 900].Array[n]
            from kind in Gen.Int[0, 4]
            select Of(kind, role, ys, label);
        var figures =
            from marks in mark.Array[1, 9]
            from log in Gen.Bool
            select new Figure("random", "A figure of no meaning", new("abscissa", "Hz"),
                new("ordinate", "V", log ? AxisScale.Logarithmic : AxisScale.Linear),
                    [.. marks, new Curve(Role.Bound, [1, 9], [5, 700])]);
        figures.Sample(
            figure =>
            {
                AcceptTexts(figure, SvgOptions.Wide);
                AcceptTexts(figure, SvgOptions.Narrow);
                XDocument.Parse(SvgWriter.Write(figure));
            },
            iter: 150);
    }

    [Fact]
    public void A_gap_breaks_the_line()
    {
        var whole = PathsOf(FigureRecordTests.Make(new Curve(Role.SetCurve, [1, 2, 3, 4, 5], [1, 4, 1, 4, 1])));
        var broken = PathsOf(FigureRecordTests.Make(
            new Curve(Role.SetCurve, [1, 2, 3, 4, 5], [1, 4, double.NaN, 4, 1])));
        var weight = SvgCanvas.N(Look.House.For(Role.SetCurve).WeightPt * Look.MmPerPt);
        string Line(List<XElement> paths) =>
            paths.Last(p => p.Parent!.Attribute("stroke-width")?.Value == weight).Attribute("d")!.Value;
        Assert.Equal(1, Line(whole).Count(c => c == 'M'));
        Assert.Equal(2, Line(broken).Count(c => c == 'M'));
    }

    [Fact]
    public void Grid_lines_of_a_logarithmic_axis_stand_at_their_logarithms()
    {
        var frame = new PlotFrame(Specimens.SpeedBands(), Look.House, SvgOptions.Wide);
        double Of(double value) => frame.XMap.Place(value);
        Assert.Equal((Of(1000) - Of(100)) * Math.Log10(2), Of(200) - Of(100), 9);
        Assert.Contains($"M{SvgCanvas.N(Of(200))} ", SvgWriter.Write(Specimens.SpeedBands()), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_what_spills_over_a_given_range_is_clipped()
    {
        Assert.DoesNotContain("clipPath", SvgWriter.Write(Specimens.SpeedBands()), StringComparison.Ordinal);
        var tight = new Figure("tight", "t", new("x", "Hz", range: new(0, 1)), new("y", "V"),
            [new Curve(Role.SetCurve, [0, 2], [1, 2])]);
        Assert.Contains("clip-path=\"url(#tight-clip)\"", SvgWriter.Write(tight), StringComparison.Ordinal);
    }

    [Fact]
    public void The_bound_is_drawn_over_every_other_line()
    {
        var svg = SvgWriter.Write(Specimens.TorqueAgainstSpeed());
        string Weight(Role role) => $"stroke-width=\"{SvgCanvas.N(Look.House.For(role).WeightPt * Look.MmPerPt)}\"";
        Assert.True(svg.LastIndexOf(Weight(Role.Bound), StringComparison.Ordinal) > svg.LastIndexOf(
            Weight(Role.AsModelled), StringComparison.Ordinal));
    }

    [Fact]
    public void What_finds_no_room_is_named_under_the_drawing()
    {
        var labels = Enumerable.Range(0, 200).Select(i => $"a long label of its own, number {i}").ToList();
        var figure = FigureRecordTests.Make([.. labels.Select(l => (Mark)new TextMark(1, 1, l))]);
        var text = XDocument.Parse(SvgWriter.Write(figure)).Descendants(Ns + "text").Select(t => t.Value).ToList();
        Assert.All(labels, l => Assert.Contains(l, string.Join(' ', text), StringComparison.Ordinal));
        AcceptTexts(figure, SvgOptions.Wide);
    }

    [Fact]
    public void A_thinned_line_stays_within_its_tolerance()
    {
        List<Place> line = [.. Enumerable.Range(0, 400).Select(i => new Place(i * 0.25, 20 * Math.Sin(i / 40.0)))];
        var thin = Thinned.Of(line, 0.025);
        Assert.InRange(thin.Count, 10, 120);
        foreach (var p in line)
        {
            var i = Math.Max(1, thin.ToList().FindIndex(t => t.X >= p.X));
            var t = (p.X - thin[i - 1].X) / (thin[i].X - thin[i - 1].X);
            Assert.True(Math.Abs(thin[i - 1].Y + t * (thin[i].Y - thin[i - 1].Y) - p.Y) < 0.05);
        }
    }

    private static void AcceptTexts(Figure figure, SvgOptions form)
    {
        var (svg, texts) = SvgWriter.Draw(figure, form, Look.House);
        var box = XDocument.Parse(svg).Root!.Attribute("viewBox")!.Value.Split(' ')
            .Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var paper = new Box(-0.05, -0.05, box[2] + 0.1, box[3] + 0.1);
        for (var i = 0; i < texts.Count; i++)
        {
            Assert.True(paper.Holds(texts[i].Box),
                $"{figure.Id}: '{texts[i].Text}' leaves the drawing of {form.WidthMm} mm");
            for (var j = i + 1; j < texts.Count; j++)
                Assert.False(
                    texts[i].Box.Grown(-0.15).Overlaps(texts[j].Box.Grown(-0.15)),
                    $"{figure.Id}: '{texts[i].Text}' and '{texts[j].Text}' overlap at {form.WidthMm} mm");
        }
    }

    private static Mark Of(int kind, Role role, double[] ys, string label)
    {
        double[] xs = [.. ys.Select((_, i) => i + 1.0)];
        return kind switch
        {
            0 => new Points(role, [.. xs], [.. ys], label: label),
            1 => new Band(role, [.. xs], [.. ys.Select(y => y / 2)], [.. ys], label: label),
            2 => new Rule(role, ys[0] > 300 ? RuleDirection.Level : RuleDirection.Upright, ys[0] > 300 ? ys[1] : 3,
                "rule " + label),
            3 => new TextMark(xs[0], ys[0], "text " + label, role),
            _ => new Curve(role, [.. xs], [.. ys], label: label),
        };
    }

    private static List<XElement> PathsOf(Figure figure) =>
        [.. XDocument.Parse(SvgWriter.Write(figure)).Descendants(Ns + "path")];

    [GeneratedRegex("https?://|data:|//")]
    private static partial Regex AddressPattern();
}
