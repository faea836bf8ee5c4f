using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Something that stands on a <see cref="Sheet"/>.</summary>
public abstract record SheetBlock
{
    private protected SheetBlock()
    {
    }
}

/// <summary>A figure on a sheet.</summary>
/// <param name="Figure">The figure; its still form is printed.</param>
/// <param name="HeightMm">Height of the drawing; null for the usual shape at the sheet's width.</param>
public sealed record FigureBlock(Figure Figure, double? HeightMm = null) : SheetBlock;

/// <summary>A table on a sheet.</summary>
/// <param name="Table">The table.</param>
public sealed record TableBlock(Table Table) : SheetBlock;

/// <summary>A paragraph on a sheet.</summary>
/// <param name="Text">The words.</param>
/// <param name="IsCaution">True to set it apart as a caution.</param>
public sealed record TextBlock(string Text, bool IsCaution = false) : SheetBlock;

/// <summary>A page to print and hang up: figures, tables and words.</summary>
public sealed record Sheet
{
    /// <summary>Makes a sheet and checks it.</summary>
    /// <param name="id">Unique, lower-case words joined by hyphens.</param>
    /// <param name="title">Its heading.</param>
    /// <param name="blocks">What stands on it, from top to bottom.</param>
    /// <param name="widthMm">Width of the paper, 50 to 1200 mm; A4 upright unless given.</param>
    /// <param name="heightMm">Height of the paper, 50 to 1200 mm.</param>
    /// <param name="marginMm">Margin on all sides, 0 to a third of the width.</param>
    /// <exception cref="PartException">Nothing on it, or no such paper.</exception>
    public Sheet(
        string id, string title, ImmutableArray<SheetBlock> blocks, double widthMm = 210, double heightMm = 297,
        double marginMm = 15)
    {
        Id = Check.Id(id, "sheet");
        Title = Check.Words(title, Part, "title");
        Blocks = Check.NotEmpty(blocks, Part, "blocks");
        WidthMm = Guard.Within(widthMm, 50, 1200, Part, "width (mm)");
        HeightMm = Guard.Within(heightMm, 50, 1200, Part, "height (mm)");
        MarginMm = Guard.Within(marginMm, 0, widthMm / 3, Part, "margin (mm)");
    }

    /// <summary>Unique, lower-case words joined by hyphens.</summary>
    public string Id { get; }

    /// <summary>Its heading.</summary>
    public string Title { get; }

    /// <summary>What stands on it, from top to bottom.</summary>
    public ImmutableArray<SheetBlock> Blocks { get; }

    /// <summary>Width of the paper in millimetres.</summary>
    public double WidthMm { get; }

    /// <summary>Height of the paper in millimetres.</summary>
    public double HeightMm { get; }

    /// <summary>Margin on all sides in millimetres.</summary>
    public double MarginMm { get; }

    private string Part => $"sheet {Id}";
}
