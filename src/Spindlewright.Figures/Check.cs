using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Spindlewright.Foundations;

namespace Spindlewright.Figures;

/// <summary>Guards that only figures and tables need; the rest stand in <see cref="Guard"/>.</summary>
internal static partial class Check
{
    public static string Id(string id, string part) =>
        id is not null && KebabCase().IsMatch(id)
            ? id
            : throw new PartException(part, "id", $"'{id}'", "lower-case words joined by hyphens, such as speed-bands");

    public static string Words(string text, string part, string quantity) =>
        string.IsNullOrWhiteSpace(text) ? throw new PartException(part, quantity, "empty", "some words") : text;

    public static ImmutableArray<T> OrEmpty<T>(ImmutableArray<T> items) => items.IsDefault ? [] : items;

    public static ImmutableArray<T> NotEmpty<T>(ImmutableArray<T> items, string part, string quantity) =>
        items.IsDefaultOrEmpty ? throw new PartException(part, quantity, "empty", "at least one") : items;

    /// <summary>Finite numbers, or NaN where a gap is wanted.</summary>
    public static ImmutableArray<double> WithGaps(
        ImmutableArray<double> values, int count, string part, string quantity)
    {
        NotEmpty(values, part, quantity);
        if (values.Length != count)
            throw new PartException(part, quantity, $"{values.Length} values", $"{count} values", "one for each x");
        for (var i = 0; i < values.Length; i++)
            if (double.IsInfinity(values[i]))
                throw new PartException(part, $"{quantity} [{i}]", "infinite", "finite numbers, or NaN for a gap");
        return values;
    }

    public static ImmutableArray<double> AllFinite(ImmutableArray<double> values, string part, string quantity)
    {
        NotEmpty(values, part, quantity);
        for (var i = 0; i < values.Length; i++)
            Guard.Finite(values[i], part, string.Create(CultureInfo.InvariantCulture, $"{quantity} [{i}]"));
        return values;
    }

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex KebabCase();
}
