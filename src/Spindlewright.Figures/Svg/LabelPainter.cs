using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Svg;

/// <summary>Writes labels beside the marks that they name.</summary>
internal sealed class LabelPainter(SvgCanvas canvas, PlotFrame frame, Look look)
{
    /// <summary>Draws the labels and returns those for which there was no room.</summary>
    public IReadOnlyList<string> Draw()
    {
        var placer = Prepared();
        var (placed, lost) = (new List<(PlacedLabel Label, Shade Shade)>(), new List<string>());
        foreach (var (wish, shade) in frame.Figure.StillMarks.OrderBy(Order).SelectMany(Wishes))
            if (placer.Put(wish) is { } label)
                placed.Add((label, shade));
            else
                lost.Add(wish.Text);
        var leaders = string.Concat(
            placed.Where(p => p.Label.Leader is not null).Select(p => Leader(p.Label.Leader!.Value)));
        if (leaders.Length > 0)
            canvas.Path(leaders, Stroke(look.Shades.Muted, 0.5));
        foreach (var group in placed.GroupBy(p => p.Shade))
            canvas.Write(
                new(look.Letters.LabelPt, group.Key, Halo: true), TextAt.Start,
                group.Select(p => (p.Label.Text, new Place(p.Label.Box.Left, p.Label.Box.Top))));
        return lost;
    }

    private static int Order(Mark mark) =>
        mark switch { RangeBar => 0, Rule => 1, { Role: Role.Bound } => 2, TextMark => 4, _ => 3 };

    private static string Leader((Place From, Place To) line) =>
        $"M{N(line.From.X)} {N(line.From.Y)}L{N(line.To.X)} {N(line.To.Y)}";

    private LabelPlacer Prepared()
    {
        var placer = new LabelPlacer(frame.LabelArea);
        foreach (var mark in frame.Figure.StillMarks)
            switch (mark)
            {
                case Curve curve:
                    foreach (var run in MarkPainter.Runs(frame, curve.Extent))
                        placer.Avoid(run, mark.Role == Role.Bound ? 1.6 : 1);
                    break;
                case Rule rule:
                    placer.Avoid(MarkPainter.EndsOf(frame, rule), 1);
                    break;
                case RangeBar bar:
                    placer.Take(MarkPainter.BoxOf(frame, bar));
                    break;
                case Points points:
                    foreach (var (x, y) in points.Xs.Zip(points.Ys).Where(p => double.IsFinite(p.Second)))
                        placer.Take(Around(frame.At(x, y), look.Space.MarkerMm));
                    break;
            }
        return placer;
    }

    private static Box Around(Place at, double half) => new(at.X - half, at.Y - half, 2 * half, 2 * half);

    private IEnumerable<(LabelWish, Shade)> Wishes(Mark mark)
    {
        var shade = look.For(mark.Role, mark.Side).Shade;
        if (mark is RangeBar { ShowEnds: true } bar)
        {
            var box = MarkPainter.BoxOf(frame, bar);
            yield return (Wish(Wording.NumberText.Significant(bar.From), Ends(box, -1)), look.Shades.Ink);
            yield return (Wish(Wording.NumberText.Significant(bar.To), Ends(box, 1)), look.Shades.Ink);
        }
        if (mark.Label.Length > 0 && Anchors(mark) is { Count: > 0 } anchors)
            yield return (Wish(mark.Label, anchors), shade);
    }

    private LabelWish Wish(string text, IReadOnlyList<Anchor> anchors) =>
        new(text, Lettered.WidthMm(text, look.Letters.LabelPt), Lettered.HeightMm(look.Letters.LabelPt), anchors);

    private static Anchor[] Ends(Box box, int side)
    {
        var x = side < 0 ? box.Left : box.Right;
        return
        [
            new(new(x, box.Top + box.Height / 2), side, 0, 0), new(new(x, box.Top), 0, -1, 1),
                new(new(x, box.Bottom), 0, 1, 1),
            new(new(x, box.Top), -side, -1, 1.5), new(new(x, box.Bottom), -side, 1, 1.5),
        ];
    }

    private List<Anchor> Anchors(Mark mark) => mark switch
    {
        Curve curve => AlongLine([.. MarkPainter.Runs(frame, curve.Extent)]),
        Points points => [.. points.Xs.Zip(points.Ys).Where(p => double.IsFinite(p.Second)).TakeLast(1)
            .SelectMany(p => About(frame.At(p.First, p.Second)))],
        Band band => AlongLine([.. MarkPainter.Runs(frame, band.Xs.Zip(band.Upper))]),
        TextMark text => [.. About(frame.At(text.X, text.Y))],
        RangeBar bar => Middle(MarkPainter.BoxOf(frame, bar)),
        Rule rule => AlongRule(rule, MarkPainter.EndsOf(frame, rule)),
        _ => [],
    };

    private static List<Anchor> Middle(Box box)
    {
        var x = box.Left + box.Width / 2;
        return [new(new(x, box.Top), 0, -1, 0), new(new(x, box.Bottom), 0, 1, 0.5),
            new(new(box.Right + 8, box.Top + box.Height / 2), 1, 0, 1)];
    }

    private static IEnumerable<Anchor> About(Place at) =>
    [
        new(at, 1, -1, 0), new(at, 1, 0, 0.2), new(at, 0, -1, 0.4), new(at, -1, -1, 0.6), new(at, -1, 0, 0.8),
            new(at, 1, 1, 1),
        new(at, 0, 1, 1.2), new(at, -1, 1, 1.4),
    ];

    private static List<Anchor> AlongLine(IReadOnlyList<IReadOnlyList<Place>> runs)
    {
        if (runs.Count == 0)
            return [];
        var (first, last) = (runs[0][0], runs[^1][^1]);
        List<Anchor> anchors =
        [
            new(last, 1, 0, 0), new(last, 1, -1, 0.4), new(last, -1, -1, 0.8), new(last, 0, -1, 1),
                new(last, -1, 1, 1.6),
            new(first, 1, -1, 2), new(first, -1, 0, 2.4), new(first, 0, -1, 2.6),
        ];
        var longest = runs.MaxBy(r => r.Count)!;
        foreach (var part in new[] { 0.5, 0.75, 0.25 })
        {
            var at = Part(longest, part);
            anchors.AddRange([new(at, 0, -1, 3), new(at, 1, -1, 3.4), new(at, 0, 1, 3.8), new(at, -1, -1, 4)]);
        }
        return anchors;
    }

    private static Place Part(IReadOnlyList<Place> run, double part)
    {
        var at = part * (run.Count - 1);
        var i = Math.Min((int)at, run.Count - 2);
        if (i < 0)
            return run[0];
        return new(run[i].X + (at - i) * (run[i + 1].X - run[i].X), run[i].Y + (at - i) * (run[i + 1].Y - run[i].Y));
    }

    private static List<Anchor> AlongRule(Rule rule, IReadOnlyList<Place> ends)
    {
        var anchors = new List<Anchor>();
        var cost = 0.0;
        foreach (var part in rule.Direction == RuleDirection.Level ? [0.01, 0.3, 0.6]
            : new[] { 0.96, 0.8, 0.6, 0.4, 0.2, 0.06 })
        {
            var at = Part(ends, part);
            anchors.AddRange(rule.Direction == RuleDirection.Level
                ? [new(at, 1, -1, cost), new(at, 1, 1, cost + 0.3)]
                : [new(at, 1, 0, cost), new(at, -1, 0, cost + 0.3)]);
            cost += 0.8;
        }
        if (rule.Direction == RuleDirection.Level)
            anchors.AddRange([new(ends[1], -1, -1, 2.6), new(ends[1], -1, 1, 2.8)]);
        return anchors;
    }
}
