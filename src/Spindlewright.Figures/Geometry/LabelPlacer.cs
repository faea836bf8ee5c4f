namespace Spindlewright.Figures.Geometry;

/// <summary>A place beside which a label may stand, and on which side of it.</summary>
/// <param name="At">The place.</param>
/// <param name="ToX">−1 left of it, 0 centred, 1 right of it.</param>
/// <param name="ToY">−1 above it, 0 centred, 1 below it.</param>
/// <param name="Cost">How little it is liked; 0 is best.</param>
internal readonly record struct Anchor(Place At, int ToX, int ToY, double Cost);

/// <summary>A label that wants a place.</summary>
/// <param name="Text">The words.</param>
/// <param name="Width">Their width, mm.</param>
/// <param name="Height">Their height, mm.</param>
/// <param name="Anchors">Where they may stand, the wish first.</param>
internal sealed record LabelWish(string Text, double Width, double Height, IReadOnlyList<Anchor> Anchors);

/// <summary>A label that has its place; a leader runs to what it names where it stands away from it.</summary>
internal sealed record PlacedLabel(string Text, Box Box, (Place From, Place To)? Leader);

/// <summary>Finds places for labels so that none overlaps another and few lines run through one.</summary>
/// <remarks>One pass in the order of asking, so the same figure gets the same places.</remarks>
/// <param name="area">Where labels may stand.</param>
internal sealed class LabelPlacer(Box area)
{
    private const double GapMm = 0.9;
    private const double GoodEnough = 6;
    private const double CrossingCost = 7;

    private readonly List<Box> taken = [];
    private readonly List<(Place From, Place To, double Weight)> lines = [];

    /// <summary>What is taken so far.</summary>
    public IReadOnlyList<Box> Taken => taken;

    /// <summary>Keeps labels off a box.</summary>
    public void Take(Box box) => taken.Add(box);

    /// <summary>Makes labels avoid a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="weight">How much: 1 for any line, more for one that must be seen whole.</param>
    public void Avoid(IReadOnlyList<Place> line, double weight)
    {
        for (var i = 1; i < line.Count; i++)
            lines.Add((line[i - 1], line[i], weight));
    }

    /// <summary>Places a label; null where there is no room at all.</summary>
    public PlacedLabel? Put(LabelWish wish)
    {
        PlacedLabel? best = null;
        var least = double.PositiveInfinity;
        void Try(Box box, double cost, (Place, Place)? leader)
        {
            if (cost >= least || !area.Holds(box) || taken.Exists(box.Grown(0.2).Overlaps))
                return;
            cost += Crossings(box);
            if (cost < least)
                (best, least) = (new(wish.Text, box, leader), cost);
        }
        foreach (var anchor in wish.Anchors)
            Try(Beside(anchor, wish), anchor.Cost, null);
        if (least > GoodEnough && wish.Anchors.Count > 0)
            foreach (var (box, cost, leader) in Around(wish))
                Try(box, cost, leader);
        if (best is not null)
            taken.Add(best.Box);
        return best;
    }

    private double Crossings(Box box)
    {
        var cost = 0.0;
        foreach (var (from, to, weight) in lines)
            if (box.Meets(from, to))
                cost += CrossingCost * weight;
        return cost;
    }

    private static Box Beside(Anchor anchor, LabelWish wish) => new(
        Start(anchor.At.X, anchor.ToX, wish.Width), Start(anchor.At.Y, anchor.ToY, wish.Height), wish.Width,
            wish.Height);

    private static double Start(double at, int to, double length) => to switch
    {
        > 0 => at + GapMm,
        < 0 => at - GapMm - length,
        _ => at - length / 2,
    };

    private static IEnumerable<(Box Box, double Cost, (Place, Place)? Leader)> Around(LabelWish wish)
    {
        var at = wish.Anchors[0].At;
        for (var radius = 5.0; radius <= 60; radius += 2.5)
            for (var step = 0; step < 16; step++)
            {
                var angle = step * Math.PI / 8;
                var middle = new Place(at.X + radius * 1.3 * Math.Cos(angle), at.Y - radius * Math.Sin(angle));
                var box = new Box(middle.X - wish.Width / 2, middle.Y - wish.Height / 2, wish.Width, wish.Height);
                yield return (box, 4 + radius * 0.35, (at, box.Nearest(at)));
            }
    }
}
