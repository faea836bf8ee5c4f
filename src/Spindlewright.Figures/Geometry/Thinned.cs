namespace Spindlewright.Figures.Geometry;

/// <summary>Drops points of a line that nobody could see (Ramer, Douglas and Peucker's method).</summary>
internal static class Thinned
{
    /// <summary>The points that keep the line within so many millimetres of where it was.</summary>
    public static IReadOnlyList<Place> Of(IReadOnlyList<Place> line, double toleranceMm)
    {
        if (line.Count < 3)
            return line;
        var keep = new bool[line.Count];
        keep[0] = keep[^1] = true;
        var open = new Stack<(int From, int To)>();
        open.Push((0, line.Count - 1));
        while (open.TryPop(out var part))
        {
            var (far, distance) = Farthest(line, part.From, part.To);
            if (distance <= toleranceMm)
                continue;
            keep[far] = true;
            open.Push((part.From, far));
            open.Push((far, part.To));
        }
        return [.. line.Where((_, i) => keep[i])];
    }

    private static (int Index, double Distance) Farthest(IReadOnlyList<Place> line, int from, int to)
    {
        var (index, most) = (from, 0.0);
        for (var i = from + 1; i < to; i++)
        {
            var distance = Off(line[i], line[from], line[to]);
            if (distance > most)
                (index, most) = (i, distance);
        }
        return (index, most);
    }

    private static double Off(Place p, Place a, Place b)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var squared = dx * dx + dy * dy;
        var along = squared == 0 ? 0 : Math.Clamp(((p.X - a.X) * dx + (p.Y - a.Y) * dy) / squared, 0, 1);
        return p.DistanceTo(new(a.X + along * dx, a.Y + along * dy));
    }
}
