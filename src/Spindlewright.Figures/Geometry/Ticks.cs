using System.Globalization;
using Spindlewright.Foundations;
using Spindlewright.Figures.Wording;

namespace Spindlewright.Figures.Geometry;

/// <summary>Where an axis has its ticks: those with a label and a grid line, and those between.</summary>
internal sealed record Ticks(IReadOnlyList<AxisTick> Major, IReadOnlyList<double> Minor)
{
    private const double Slack = 1e-9;

    /// <summary>The ticks of an axis drawn so many millimetres long.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="range">What it spans.</param>
    /// <param name="lengthMm">Its length.</param>
    /// <param name="pitchMm">The room that a label wants.</param>
    public static Ticks For(Axis axis, Interval range, double lengthMm, double pitchMm)
    {
        if (axis.Ticks.Length > 0)
            return new([.. axis.Ticks.Where(t => Inside(t.Position, range))], []);
        return axis.Scale == AxisScale.Logarithmic
            ? Logarithmic(range, lengthMm, pitchMm)
            : Linear(range, Math.Max(2, lengthMm / pitchMm));
    }

    /// <summary>The step of 1, 2 or 5 times a power of ten that cuts a span into at most so many parts.</summary>
    public static double NiceStep(double span, double parts)
    {
        var raw = span / parts;
        var decade = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = new[] { 1.0, 2, 5, 10 }.First(m => m * decade >= raw * (1 - Slack));
        return step * decade;
    }

    private static Ticks Linear(Interval range, double parts)
    {
        var step = NiceStep(range.Width, parts);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + Slack));
        var leading = step / Math.Pow(10, Math.Floor(Math.Log10(step) + Slack));
        var minorStep = step / (Math.Abs(leading - 2) < 0.1 ? 4 : 5);
        var major = Multiples(range, step).Select(v => new AxisTick(v, NumberText.Fixed(v, decimals))).ToList();
        var minor = Multiples(range, minorStep).Where(v => major.All(m => Math.Abs(m.Position - v) > minorStep / 2))
            .ToList();
        return new(major, minor);
    }

    private static IEnumerable<double> Multiples(Interval range, double step)
    {
        var last = (long)Math.Floor(range.Most / step + Slack);
        for (var i = (long)Math.Ceiling(range.Least / step - Slack); i <= last; i++)
            yield return i * step;
    }

    private static Ticks Logarithmic(Interval range, double lengthMm, double pitchMm)
    {
        var decadeMm = lengthMm / Math.Log10(range.Most / range.Least);
        int[] labelled = decadeMm > pitchMm * 9 ? [1, 2, 3, 4, 5, 6, 8]
            : decadeMm > pitchMm * 4 ? [1, 2, 3, 5]
            : decadeMm > pitchMm * 2.4 ? [1, 2, 5]
            : [1];
        var all = DecadeMarks(range).ToList();
        if (all.Count(t => labelled.Contains(t.Digit)) < 2)
            labelled = [1, 2, 3, 4, 5, 6, 7, 8, 9];
        var every = Math.Max(1, (int)Math.Ceiling(pitchMm / decadeMm));
        bool HasLabel((double Value, int Digit, int Decade) t) => labelled.Contains(t.Digit) && t.Decade % every == 0;
        return new(
            [.. all.Where(HasLabel).Select(t => new AxisTick(t.Value, NumberText.Significant(t.Value, 1)))],
            [.. all.Where(t => !HasLabel(t)).Select(t => t.Value)]);
    }

    private static IEnumerable<(double Value, int Digit, int Decade)> DecadeMarks(Interval range)
    {
        var last = (int)Math.Floor(Math.Log10(range.Most) + Slack);
        for (var decade = (int)Math.Floor(Math.Log10(range.Least)); decade <= last; decade++)
            for (var digit = 1; digit <= 9; digit++)
            {
                // Parsed rather than computed, so that 0.3 is 0.3 and not three times 0.1.
                var value = double.Parse(
                    string.Create(CultureInfo.InvariantCulture, $"{digit}e{decade}"), CultureInfo.InvariantCulture);
                if (Inside(value, range))
                    yield return (value, digit, decade);
            }
    }

    private static bool Inside(double value, Interval range)
    {
        // At the lower end of a logarithmic axis only the end itself can tell what is small.
        var slack = Slack * (range.Least > 0 ? range.Least : range.Width);
        return value >= range.Least - slack && value <= range.Most + slack;
    }
}
