using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Which way a rule runs.</summary>
public enum RuleDirection
{
    /// <summary>Level, at one value of y.</summary>
    Level,

    /// <summary>Upright, at one value of x.</summary>
    Upright,
}

/// <summary>A straight line across the whole drawing at one value, with its label.</summary>
public sealed record Rule : Mark
{
    /// <summary>Makes a rule.</summary>
    /// <param name="role">What it stands for.</param>
    /// <param name="direction">Level at one y, or upright at one x.</param>
    /// <param name="at">The value, in the unit of the axis it crosses.</param>
    /// <param name="label">Written along it, such as "chuck, highest 3000 r/min".</param>
    /// <param name="series">What it belongs to.</param>
    /// <param name="side">Which side of a paired default it uses.</param>
    /// <param name="legend">Legend entry; the role's words unless given.</param>
    /// <exception cref="PartException">Not finite, or without a label.</exception>
    public Rule(
        Role role, RuleDirection direction, double at, string label, string? series = null, Side? side = null,
        string? legend = null)
        : base(role, side, series, Check.Words(label, "rule", "label"), legend)
    {
        Direction = direction;
        At = Guard.Finite(at, Part, "position");
    }

    /// <summary>Level or upright.</summary>
    public RuleDirection Direction { get; }

    /// <summary>The value, in the unit of the axis it crosses.</summary>
    public double At { get; }

    internal override IEnumerable<(double X, double Y)> Extent =>
        [Direction == RuleDirection.Level ? (double.NaN, At) : (At, double.NaN)];
}
