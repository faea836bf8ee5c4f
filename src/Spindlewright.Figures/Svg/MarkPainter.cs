using System.Text;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Svg;

/// <summary>Draws the marks, areas first and the bound last, so that nothing covers it.</summary>
internal sealed class MarkPainter(SvgCanvas canvas, PlotFrame frame, Look look)
{
    private const double ToleranceMm = 0.025;

    /// <summary>Draws every mark of the still form.</summary>
    public void Draw()
    {
        var groups = frame.Figure.StillMarks.Where(m => m is not TextMark)
            .GroupBy(m => (Layer: Layer(m), m.Role, m.Side))
                .OrderBy(g => g.Key.Layer).ThenByDescending(g => g.Key.Role);
        foreach (var group in groups)
        {
            var role = look.For(group.Key.Role, group.Key.Side);
            canvas.Group(Attributes(group.First(), role), () =>
            {
                var index = 0;
                foreach (var mark in group)
                    Draw(mark, role, index++);
            });
        }
    }

    /// <summary>The dash of a role as an attribute.</summary>
    public static string Dash(RoleLook role) => role.DashPt.IsEmpty
        ? ""
        : $" stroke-dasharray=\"{string.Join(' ', role.DashPt.Select(d => N(d * Look.MmPerPt)))}\"";

    /// <summary>Attributes of a filled area with its edge.</summary>
    public static string Area(RoleLook role, double opacity) =>
        $" class=\"sw-f-{role.Shade.Name} sw-s-{role.Shade.Name}\" fill=\"{role.Shade.Light}\""
        + $" fill-opacity=\"{N(opacity)}\" stroke=\"{role.Shade.Light}\""
        + $" stroke-width=\"{N(Math.Min(role.WeightPt, 0.9) * Look.MmPerPt)}\"{Dash(role)}";

    /// <summary>Attributes of a marker.</summary>
    public static string MarkerAttributes(RoleLook role, Marker marker, Look look)
    {
        var fill = MarkerPath.IsFilled(marker) ? role.Shade : look.Shades.Paper;
        return $" class=\"sw-f-{fill.Name} sw-s-{role.Shade.Name}\" fill=\"{fill.Light}\" stroke=\"{role.Shade.Light}\""
            + $" stroke-width=\"{N(0.9 * Look.MmPerPt)}\" stroke-dasharray=\"none\"";
    }

    /// <summary>The unbroken runs of a line on paper.</summary>
    public static IEnumerable<IReadOnlyList<Place>> Runs(PlotFrame frame, IEnumerable<(double X, double Y)> points)
    {
        var run = new List<Place>();
        foreach (var (x, y) in points.Append((double.NaN, double.NaN)))
        {
            if (double.IsFinite(x) && double.IsFinite(y))
            {
                run.Add(frame.At(x, y));
                continue;
            }
            if (run.Count > 0)
                yield return Thinned.Of(run, ToleranceMm);
            run = [];
        }
    }

    private static int Layer(Mark mark) => mark switch
    {
        Band => 0,
        RangeBar => 1,
        Rule => 2,
        Points => 5,
        { Role: Role.Bound } => 4,
        _ => 3,
    };

    private static string Attributes(Mark mark, RoleLook role) => mark switch
    {
        Band => Area(role, role.BandOpacity),
        RangeBar => Area(role, role.BarOpacity),
        Points => Stroke(role.Shade, 0.6),
        _ => Stroke(role.Shade, role.WeightPt) + Dash(role) + " stroke-linejoin=\"round\"",
    };

    private void Draw(Mark mark, RoleLook role, int index)
    {
        switch (mark)
        {
            case Curve curve: DrawCurve(curve, role, index); break;
            case Points points: DrawPoints(points, role); break;
            case Band band: DrawBand(band); break;
            case RangeBar bar: canvas.Rect(BoxOf(frame, bar), ""); break;
            case Rule rule: canvas.Path(PathOf(EndsOf(frame, rule))); break;
        }
    }

    /// <summary>Where a bar lies on paper.</summary>
    public static Box BoxOf(PlotFrame frame, RangeBar bar)
    {
        var (a, b) = (frame.At(bar.From, bar.At - bar.Thickness / 2), frame.At(bar.To, bar.At + bar.Thickness / 2));
        return new(a.X, Math.Min(a.Y, b.Y), b.X - a.X, Math.Abs(a.Y - b.Y));
    }

    /// <summary>The two ends of a rule on paper.</summary>
    public static IReadOnlyList<Place> EndsOf(PlotFrame frame, Rule rule) => rule.Direction == RuleDirection.Level
        ? [new(frame.Plot.Left, frame.YMap.Place(rule.At)), new(frame.Plot.Right, frame.YMap.Place(rule.At))]
        : [new(frame.XMap.Place(rule.At), frame.Plot.Bottom), new(frame.XMap.Place(rule.At), frame.Plot.Top)];

    private void DrawCurve(Curve curve, RoleLook role, int index)
    {
        var runs = Runs(frame, curve.Extent).ToList();
        if (runs.Count == 0)
            return;
        canvas.Path(string.Concat(runs.Select(PathOf)));
        if (role.LineMarker == Marker.None)
            return;
        var markers = string.Concat(runs.SelectMany(run => Along(run, index))
            .Select(p => MarkerPath.Of(role.LineMarker, p, look.Space.MarkerMm)));
        if (markers.Length > 0)
            canvas.Path(markers, MarkerAttributes(role, role.LineMarker, look));
    }

    /// <summary>Places a fixed distance apart along a line; lines of one role start at different distances.</summary>
    private IEnumerable<Place> Along(IReadOnlyList<Place> run, int index)
    {
        var length = Enumerable.Range(1, run.Count - 1).Sum(i => run[i].DistanceTo(run[i - 1]));
        var pitch = look.Space.MarkerPitchMm;
        var next = Math.Min(length / 2, pitch * (0.4 + index % 3 * 0.2));
        var passed = 0.0;
        for (var i = 1; i < run.Count; i++)
        {
            var step = run[i].DistanceTo(run[i - 1]);
            for (; step > 0 && next <= passed + step; next += pitch)
            {
                var t = (next - passed) / step;
                yield return new(run[i - 1].X + t * (run[i].X - run[i - 1].X),
                    run[i - 1].Y + t * (run[i].Y - run[i - 1].Y));
            }
            passed += step;
        }
    }

    private void DrawPoints(Points points, RoleLook role)
    {
        var (shapes, intervals) = (new StringBuilder(), new StringBuilder());
        for (var i = 0; i < points.Xs.Length; i++)
        {
            if (double.IsFinite(points.Ys[i]))
                shapes.Append(MarkerPath.Of(
                    role.PointMarker, frame.At(points.Xs[i], points.Ys[i]), look.Space.MarkerMm));
            if (points.Lower.Length == 0 || !double.IsFinite(points.Lower[i]) || !double.IsFinite(points.Upper[i]))
                continue;
            var (foot, head) = (frame.At(points.Xs[i], points.Lower[i]), frame.At(points.Xs[i], points.Upper[i]));
            intervals.Append($"M{N(foot.X - 0.8)} {N(foot.Y)}h1.6M{N(foot.X)} {N(foot.Y)}V{N(head.Y)}m-0.8 0h1.6");
        }
        if (intervals.Length > 0)
            canvas.Path(intervals.ToString());
        if (shapes.Length > 0)
            canvas.Path(shapes.ToString(), MarkerAttributes(role, role.PointMarker, look));
    }

    private void DrawBand(Band band)
    {
        var upper = Runs(frame, band.Xs.Zip(band.Upper, (x, y) => (x, y)).Zip(band.Lower, Both)).ToList();
        var lower = Runs(frame, band.Xs.Zip(band.Lower, (x, y) => (x, y)).Zip(band.Upper, Both)).ToList();
        foreach (var (over, under) in upper.Zip(lower))
            canvas.Path(PathOf([.. over, .. under.Reverse()]) + "z");
    }

    /// <summary>A point that exists only where its partner does.</summary>
    private static (double X, double Y) Both((double X, double Y) point, double partner) =>
        double.IsFinite(partner) ? point : (double.NaN, double.NaN);

    private static string PathOf(IReadOnlyList<Place> run)
    {
        var path = new StringBuilder($"M{N(run[0].X)} {N(run[0].Y)}");
        for (var i = 1; i < run.Count; i++)
            path.Append($"L{N(run[i].X)} {N(run[i].Y)}");
        return run.Count == 1 ? path.Append("h0.3").ToString() : path.ToString();
    }
}
