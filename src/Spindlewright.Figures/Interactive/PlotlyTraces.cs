using System.Globalization;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;
using P = global::Plotly.NET;

namespace Spindlewright.Figures.Interactive;

/// <summary>Turns marks into traces. Every kind becomes a scatter trace, so that frames can move all of them.</summary>
internal sealed class PlotlyTraces(Figure figure, Look look, Interval xRange, Interval yRange)
{
    private readonly HashSet<string> inLegend = [];

    /// <summary>The traces of one mark.</summary>
    public IEnumerable<P.Trace> Of(Mark mark)
    {
        var role = look.For(mark.Role, mark.Side);
        switch (mark)
        {
            case Curve curve:
                yield return Lined(mark, role, curve.Xs, curve.Ys, LastLabel(curve.Ys, mark.Label));
                break;
            case Points points:
                yield return Dotted(points, role);
                break;
            case Band band:
                yield return Edge(band, role);
                yield return Filled(Labelled(
                    Trace(band, role, band.Xs, band.Upper), LastLabel(band.Upper, band.Label)), role, role.BandOpacity)
                    .With(("fill", "tonexty"));
                break;
            case RangeBar bar:
                yield return Bar(bar, role);
                break;
            case Rule rule:
                yield return Ruled(rule, role);
                break;
            case TextMark text:
                yield return Trace(mark, role, [text.X], [text.Y]).With(
                    ("mode", "text"), ("text", new[] { PlotlyText.Escape(text.Label) }), ("textposition", "top right"),
                    ("showlegend", false), ("hoverinfo", "skip"));
                break;
        }
    }

    /// <summary>Seven digits are more than a screen shows; a gap becomes null.</summary>
    public static double?[] Numbers(IEnumerable<double> values) => [.. values.Select(Rounded)];

    private static double? Rounded(double value) => double.IsFinite(value)
        ? double.Parse(value.ToString("G7", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        : null;

    private P.Trace2D Trace(
        Mark mark, RoleLook role, IEnumerable<double> xs, IEnumerable<double> ys, bool listed = true) =>
        new P.Trace2D("scatter").With(
            ("x", Numbers(xs)), ("y", Numbers(ys)), ("name", PlotlyText.Escape(mark.Legend)),
            ("meta", PlotlyText.Escape(mark.FullName)),
            ("legendgroup", PlotlyText.Escape(mark.Legend)), ("showlegend", listed && inLegend.Add(mark.Legend)),
            ("legendrank", 1000 + (int)mark.Role), ("hovertemplate", Hover()), ("cliponaxis", false),
            ("connectgaps", false),
            ("line", new P.Line().With(
                ("color", role.Shade.Light), ("width", Px(role.WeightPt)), ("dash", Dash(role)))),
            ("textfont", Letters(role.Shade)));

    private P.Font Letters(Shade shade) =>
        new P.Font().With(("color", shade.Light), ("size", PlotlyLayout.SizePx(look)));

    private static string Ended(double value) => "\u00a0" + NumberText.Significant(value) + "\u00a0";

    private P.Trace2D Lined(Mark mark, RoleLook role, IEnumerable<double> xs, IEnumerable<double> ys, string[]? labels)
    {
        var markers = role.LineMarker != Marker.None;
        var mode = "lines" + (markers || labels is not null ? "+markers" : "") + (labels is null ? "" : "+text");
        // Text keeps its distance from a marker; an unseen one keeps it from the line.
        var marker = markers ? MarkerOf(role, role.LineMarker).With(("maxdisplayed", 8))
            : labels is null ? null
            : Unseen();
        return Trace(mark, role, xs, ys).With(
            ("mode", mode), ("text", labels), ("textposition", labels is null ? null : "middle right"),
            ("marker", marker));
    }

    private P.Trace2D Ruled(Rule rule, RoleLook role)
    {
        var label = PlotlyText.Escape(rule.Label);
        if (rule.Direction == RuleDirection.Level)
        {
            var (atRight, below) = Quietest(rule.At);
            var place = (below ? "bottom " : "top ") + (atRight ? "left" : "right");
            string[] labels = atRight ? ["", label] : [label, ""];
            return Lined(rule, role, [xRange.Least, xRange.Most], [rule.At, rule.At], labels)
                .With(("showlegend", false), ("textposition", place));
        }
        var (foot, head) = figure.Y.IsNames ? (yRange.Most, yRange.Least) : (yRange.Least, yRange.Most);
        var right = new AxisMap(figure.X, xRange, 0, 1).Place(rule.At) > 0.6;
        return Lined(rule, role, [rule.At, rule.At], [foot, head], ["", label])
            .With(("showlegend", false), ("textposition", right ? "bottom left" : "bottom right"));
    }

    /// <summary>The corner of a level rule with the fewest points beside it; the upper left if all are alike.</summary>
    private (bool AtRight, bool Below) Quietest(double level)
    {
        var (x, y) = (new AxisMap(figure.X, xRange, 0, 1), new AxisMap(figure.Y, yRange, 0, 1));
        var points = figure.StillMarks.SelectMany(m => m.Extent)
            .Select(p => (X: x.Place(p.X), Off: y.Place(p.Y) - y.Place(level))).ToList();
        int Crowd((bool AtRight, bool Below) corner) => points.Count(p =>
            (corner.AtRight ? p.X > 0.6 : p.X < 0.4) && (corner.Below ? -p.Off : p.Off) is > -0.01 and < 0.08);
        return new[] { (false, false), (true, false), (false, true), (true, true) }.MinBy(Crowd);
    }

    private static P.TraceObjects.Marker Unseen() =>
        new P.TraceObjects.Marker().With(("size", 8), ("color", "rgba(0,0,0,0)"));

    private P.Trace2D Dotted(Points points, RoleLook role)
    {
        var labels = LastLabel(points.Ys, points.Label);
        P.Trace2D trace = Trace(points, role, points.Xs, points.Ys).With(
            ("mode", labels is null ? "markers" : "markers+text"), ("text", labels),
            ("textposition", labels is null ? null : "top right"), ("marker", MarkerOf(role, role.PointMarker)));
        if (points.Lower.Length > 0)
            trace.With(("error_y", new P.TraceObjects.Error().With(
                ("type", "data"), ("symmetric", false), ("color", role.Shade.Light), ("thickness", 1.0),
                ("array", Numbers(points.Upper.Zip(points.Ys, (u, y) => u - y))),
                ("arrayminus", Numbers(points.Ys.Zip(points.Lower, (y, l) => y - l))))));
        return trace;
    }

    /// <summary>The lower edge of a band, which the upper one is filled to.</summary>
    private P.Trace2D Edge(Band band, RoleLook role) =>
        Trace(band, role, band.Xs, band.Lower, listed: false).With(("mode", "lines"));

    private P.Trace2D Bar(RangeBar bar, RoleLook role)
    {
        var (low, high) = (bar.At - bar.Thickness / 2, bar.At + bar.Thickness / 2);
        // The outline starts and turns half-way up, where its ends are printed.
        var outline = Trace(
            bar, role, [bar.From, bar.From, bar.To, bar.To, bar.To, bar.From, bar.From],
                [bar.At, high, high, bar.At, low, low, bar.At]);
        var (left, right) = bar.ShowEnds ? (Ended(bar.From), Ended(bar.To)) : ("", "");
        if (bar.Label.Length > 0)
            right += "\u00a0" + PlotlyText.Escape(bar.Label);
        var texts = left.Length + right.Length == 0 ? null : new[] { left, "", "", right, "", "", "" };
        return Filled(Labelled(outline, texts), role, role.BarOpacity).With(
            ("fill", "toself"), ("hoveron", "points"), ("textfont", Letters(look.Shades.Ink)),
            ("textposition", new[] { "middle left", "", "", "middle right", "", "", "" }));
    }

    private static P.Trace2D Labelled(P.Trace2D trace, string[]? texts) => trace.With(
        ("mode", texts is null ? "lines" : "lines+text"), ("text", texts), ("textposition", "middle right"));

    private static P.Trace2D Filled(P.Trace2D trace, RoleLook role, double opacity) => trace.With(
        ("fillcolor", Translucent(role.Shade.Light, opacity)),
        ("line", new P.Line().With(
            ("color", role.Shade.Light), ("width", Px(Math.Min(role.WeightPt, 0.9))), ("dash", Dash(role)))));

    private P.TraceObjects.Marker MarkerOf(RoleLook role, Marker marker) => new P.TraceObjects.Marker().With(
        ("symbol", Symbol(marker)), ("size", Math.Round(look.Space.MarkerMm * 2 * 96 / 25.4 + 0.6, 1)),
        // What is open is filled with the ground, so that it reads on a bar or a line too.
        ("color", (IsOpen(marker) ? look.Shades.Paper : role.Shade).Light),
        ("line", new P.Line().With(("color", role.Shade.Light), ("width", 1.4))));

    private string Hover() => figure.Y.IsNames
        ? $"%{{x:.4~g}} {PlotlyText.Escape(figure.X.Unit)}<extra>%{{meta}}</extra>"
        : $"%{{x:.4~g}} {PlotlyText.Escape(figure.X.Unit)}, %{{y:.4~g}} {PlotlyText.Escape(figure.Y.Unit)}"
            + "<extra>%{meta}</extra>";

    private static string[]? LastLabel(IReadOnlyList<double> ys, string label)
    {
        var last = ys.Count - 1;
        while (last >= 0 && !double.IsFinite(ys[last]))
            last--;
        if (label.Length == 0 || last < 0)
            return null;
        var labels = Enumerable.Repeat("", ys.Count).ToArray();
        labels[last] = PlotlyText.Escape(label);
        return labels;
    }

    private static string Dash(RoleLook role) => role.DashPt.IsEmpty
        ? "solid"
        : string.Join(',', role.DashPt.Select(d => Px(d).ToString("0.##", CultureInfo.InvariantCulture) + "px"));

    private static double Px(double pt) => Math.Round(pt * Look.PxPerPt, 2);

    private static string Translucent(string hex, double opacity) =>
        hex + ((int)Math.Round(opacity * 255)).ToString("x2", CultureInfo.InvariantCulture);

    private static bool IsOpen(Marker marker) =>
        marker is Marker.Ring or Marker.OpenSquare or Marker.OpenDiamond or Marker.TriangleDown;

    private static string Symbol(Marker marker) => marker switch
    {
        Marker.Circle or Marker.Ring => "circle",
        Marker.Square or Marker.OpenSquare => "square",
        Marker.Diamond or Marker.OpenDiamond => "diamond",
        Marker.Plus => "cross-thin-open",
        Marker.Cross => "x-thin-open",
        Marker.TriangleUp => "triangle-up",
        Marker.TriangleDown => "triangle-down",
        _ => throw new ArgumentOutOfRangeException(nameof(marker), marker, "no shape"),
    };
}
