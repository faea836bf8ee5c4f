namespace Spindlewright.Figures.Looks;

/// <summary>A named shade with its value on paper and on a dark screen.</summary>
/// <param name="Name">Lower-case name; CSS knows it as <c>--sw-NAME</c>.</param>
/// <param name="Light">Value on paper, <c>#rrggbb</c>.</param>
/// <param name="Dark">Value on a dark screen, <c>#rrggbb</c>.</param>
public sealed record Shade(string Name, string Light, string Dark);

/// <summary>The shades of the house: ink on paper, with marking-out blue and plum as second inks.</summary>
/// <remarks>
/// No shade carries a meaning of its own: dash, weight and marker tell roles apart, so that a grey print and a reader
/// who does not see colours lose nothing.
/// </remarks>
public sealed record Palette
{
    /// <summary>The ground.</summary>
    public Shade Paper { get; init; } = new("paper", "#ffffff", "#14181d");

    /// <summary>A ground set apart: cautions, heads of tables.</summary>
    public Shade Tint { get; init; } = new("tint", "#f1f2f4", "#20262d");

    /// <summary>Text and the bound.</summary>
    public Shade Ink { get; init; } = new("ink", "#16191d", "#f0ede6");

    /// <summary>Second text.</summary>
    public Shade Muted { get; init; } = new("muted", "#50555c", "#aeb4bb");

    /// <summary>Grid lines.</summary>
    public Shade Hairline { get; init; } = new("hairline", "#d4d8dd", "#39424b");

    /// <summary>Marking-out blue: what the model gives.</summary>
    public Shade Blue { get; init; } = new("blue", "#1b4f86", "#8fbbe8");

    /// <summary>Plum: what is asked for or met.</summary>
    public Shade Plum { get; init; } = new("plum", "#73305f", "#d9a3c9");

    /// <summary>All of them.</summary>
    public IReadOnlyList<Shade> All => [Paper, Tint, Ink, Muted, Hairline, Blue, Plum];
}
