using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>How positions follow values along an axis.</summary>
public enum AxisScale
{
    /// <summary>In proportion.</summary>
    Linear,

    /// <summary>In proportion to the logarithm; values above zero only.</summary>
    Logarithmic,
}

/// <summary>A tick that the figure asks for by name, such as a standard drill size or a belt position.</summary>
/// <param name="Position">Where, in the axis' unit.</param>
/// <param name="Label">What stands there.</param>
public sealed record AxisTick(double Position, string Label);

/// <summary>One axis of a figure.</summary>
public sealed record Axis
{
    /// <summary>Makes an axis.</summary>
    /// <param name="label">The quantity in words, such as "spindle speed".</param>
    /// <param name="unit">Its unit as printed, such as "r/min"; empty for a number or a name.</param>
    /// <param name="scale">Linear or logarithmic.</param>
    /// <param name="range">What the axis spans, in its unit; null to fit the marks.</param>
    /// <param name="ticks">Ticks wanted by name; none for round numbers.</param>
    /// <param name="isNames">True where the ticks are names and the numbers mean nothing.</param>
    /// <exception cref="PartException">No label, an empty range, or zero on a logarithmic axis.</exception>
    public Axis(
        string label, string unit, AxisScale scale = AxisScale.Linear, Interval? range = null,
        ImmutableArray<AxisTick> ticks = default, bool isNames = false)
    {
        Label = Check.Words(label, "axis", "label");
        Unit = unit ?? throw new PartException(Part, "unit", "null", "a unit, or empty");
        (Scale, Range, Ticks, IsNames) = (scale, range, Check.OrEmpty(ticks), isNames);
        if (range is { } span)
        {
            Accept(Guard.Finite(span.Least, Part, "lower end"), "lower end");
            Guard.Finite(span.Most, Part, "upper end");
            if (span.Width <= 0)
                throw new PartException(Part, "range", span.ToString(), "an upper end above the lower end");
        }
        foreach (var tick in Ticks)
            Accept(Guard.Finite(tick.Position, Part, $"tick '{tick.Label}'"), $"tick '{tick.Label}'");
        if (isNames && (Ticks.IsEmpty || range is null))
            throw new PartException(Part, "names", "no ticks or no range", "both", "see Axis.Names");
    }

    /// <summary>The quantity in words.</summary>
    public string Label { get; }

    /// <summary>Its unit as printed; may be empty.</summary>
    public string Unit { get; }

    /// <summary>Linear or logarithmic.</summary>
    public AxisScale Scale { get; }

    /// <summary>What the axis spans; null to fit the marks.</summary>
    public Interval? Range { get; }

    /// <summary>Ticks wanted by name; empty for round numbers.</summary>
    public ImmutableArray<AxisTick> Ticks { get; }

    /// <summary>True where the ticks are names and the numbers mean nothing.</summary>
    public bool IsNames { get; }

    /// <summary>The label with its unit, such as "Spindle speed (r/min)".</summary>
    /// <returns>The heading of the axis.</returns>
    public string Heading()
    {
        var words = Label.WithCapital();
        return Unit.Length == 0 ? words : $"{words} ({Unit})";
    }

    /// <summary>An axis of names: the first at position 1, the next at 2, and so on.</summary>
    /// <param name="label">What the names are, such as "belt position".</param>
    /// <param name="names">The names in order.</param>
    /// <returns>The axis; upright it reads from the top.</returns>
    public static Axis Names(string label, params ReadOnlySpan<string> names)
    {
        if (names.IsEmpty)
            throw new PartException("axis", "names", "none", "at least one");
        var ticks = ImmutableArray.CreateBuilder<AxisTick>(names.Length);
        for (var i = 0; i < names.Length; i++)
            ticks.Add(new(i + 1, names[i]));
        return new(label, "", AxisScale.Linear, new Interval(0.4, names.Length + 0.6), ticks.ToImmutable(),
            isNames: true);
    }

    internal void Accept(double value, string what)
    {
        if (Scale == AxisScale.Logarithmic && value <= 0)
            throw new PartException(
                Part, what, Wording.NumberText.Significant(value, 6), "above 0", "a logarithmic axis has no zero");
    }

    private string Part => $"axis '{Label}'";
}
