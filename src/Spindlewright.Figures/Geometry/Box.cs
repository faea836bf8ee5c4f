namespace Spindlewright.Figures.Geometry;

/// <summary>A place on paper, mm from the upper left corner.</summary>
internal readonly record struct Place(double X, double Y)
{
    public double DistanceTo(Place other) => Math.Sqrt((X - other.X) * (X - other.X) + (Y - other.Y) * (Y - other.Y));
}

/// <summary>An upright rectangle on paper, mm.</summary>
internal readonly record struct Box(double Left, double Top, double Width, double Height)
{
    public double Right => Left + Width;

    public double Bottom => Top + Height;

    public bool Overlaps(Box other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    public bool Holds(Box other) =>
        other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    public Box Grown(double by) => new(Left - by, Top - by, Width + 2 * by, Height + 2 * by);

    /// <summary>The place in or on the box nearest to another.</summary>
    public Place Nearest(Place to) => new(Math.Clamp(to.X, Left, Right), Math.Clamp(to.Y, Top, Bottom));

    /// <summary>True where a straight line passes through the box (Liang and Barsky's clipping).</summary>
    public bool Meets(Place from, Place to)
    {
        var (enter, leave) = (0.0, 1.0);
        return Clip(from.X - to.X, from.X - Left, ref enter, ref leave)
            && Clip(to.X - from.X, Right - from.X, ref enter, ref leave)
            && Clip(from.Y - to.Y, from.Y - Top, ref enter, ref leave)
            && Clip(to.Y - from.Y, Bottom - from.Y, ref enter, ref leave);
    }

    private static bool Clip(double slope, double room, ref double enter, ref double leave)
    {
        if (slope == 0)
            return room >= 0;
        var at = room / slope;
        if (slope < 0)
            enter = Math.Max(enter, at);
        else
            leave = Math.Min(leave, at);
        return enter <= leave;
    }
}
