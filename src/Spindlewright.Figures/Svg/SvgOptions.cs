namespace Spindlewright.Figures.Svg;

/// <summary>Size and parts of a drawing.</summary>
/// <param name="WidthMm">Width, 60 to 1200 mm.</param>
/// <param name="HeightMm">Height without the foot, mm; null for the usual shape.</param>
/// <param name="IdSuffix">Added to every id, so that a figure can stand twice in one page; may be empty.</param>
/// <param name="MarginMm">Margin on all sides, mm; none where the page around it has its own.</param>
/// <param name="Foot">True to print notes, cautions and sources under it, as a picture alone needs.</param>
public sealed record SvgOptions(
    double WidthMm = 170, double? HeightMm = null, string IdSuffix = "", double MarginMm = 3, bool Foot = true)
{
    /// <summary>For a page as wide as a sheet of A4.</summary>
    public static SvgOptions Wide { get; } = new();

    /// <summary>For a telephone held upright.</summary>
    public static SvgOptions Narrow { get; } = new(98, MarginMm: 1, IdSuffix: "-narrow");
}
