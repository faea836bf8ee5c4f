using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Looks;
using static Spindlewright.Figures.Svg.SvgCanvas;

namespace Spindlewright.Figures.Svg;

/// <summary>Outlines of markers as path data.</summary>
internal static class MarkerPath
{
    /// <summary>True for shapes that are filled with their shade; open ones are filled with paper.</summary>
    public static bool IsFilled(Marker marker) =>
        marker is Marker.Circle or Marker.Square or Marker.Diamond or Marker.TriangleUp;

    /// <summary>The outline of a marker about a place.</summary>
    public static string Of(Marker marker, Place at, double halfMm)
    {
        var (x, y, r) = (at.X, at.Y, halfMm);
        return marker switch
        {
            Marker.Circle or Marker.Ring =>
                $"M{N(x - r)} {N(y)}a{N(r)} {N(r)} 0 1 0 {N(2 * r)} 0a{N(r)} {N(r)} 0 1 0 {N(-2 * r)} 0z",
            Marker.Square or Marker.OpenSquare =>
                $"M{N(x - r * 0.9)} {N(y - r * 0.9)}h{N(1.8 * r)}v{N(1.8 * r)}h{N(-1.8 * r)}z",
            Marker.Diamond or Marker.OpenDiamond =>
                Polygon((x, y - 1.25 * r), (x + 1.25 * r, y), (x, y + 1.25 * r), (x - 1.25 * r, y)),
            Marker.Plus => $"M{N(x - 1.1 * r)} {N(y)}h{N(2.2 * r)}M{N(x)} {N(y - 1.1 * r)}v{N(2.2 * r)}",
            Marker.Cross =>
                $"M{N(x - r)} {N(y - r)}l{N(2 * r)} {N(2 * r)}M{N(x - r)} {N(y + r)}l{N(2 * r)} {N(-2 * r)}",
            Marker.TriangleUp => Polygon((x, y - 1.2 * r), (x + 1.1 * r, y + 0.8 * r), (x - 1.1 * r, y + 0.8 * r)),
            Marker.TriangleDown => Polygon((x, y + 1.2 * r), (x + 1.1 * r, y - 0.8 * r), (x - 1.1 * r, y - 0.8 * r)),
            _ => "",
        };
    }

    private static string Polygon(params ReadOnlySpan<(double X, double Y)> corners)
    {
        var path = "";
        foreach (var (x, y) in corners)
            path += $"{(path.Length == 0 ? "M" : "L")}{N(x)} {N(y)}";
        return path + "z";
    }
}
