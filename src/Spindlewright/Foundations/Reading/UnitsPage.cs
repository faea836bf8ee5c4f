using System.Globalization;
using System.Text;

namespace Spindlewright.Foundations.Reading;

/// <summary>Prints the table of units as the reference page <c>docs/units.md</c>.</summary>
public static class UnitsPage
{
    /// <summary>The page.</summary>
    /// <returns>Markdown with LF line ends.</returns>
    public static string Markdown()
    {
        var page = new StringBuilder();
        page.Append(Rules);
        foreach (var kind in QuantityKinds.All) Add(page, kind);
        return page.ToString();
    }

    private const string Rules =
        """
        # How to write values

        This page is generated from the table that the reader uses.

        A value is a number and a unit: `0.75 kW`, `50Hz`, `1420 r/min`. The space between them may be left out
        (but `31/min` is 31 per minute: a unit that begins with a digit is set apart, `3 1/min`).

        - The decimal mark is a point. A comma is refused, since `1,500` is one and a half in one country and fifteen
          hundred in the next. For the same reason thousands are not set apart: write `1500`, not `1 500`, `1'500` or
          `1.500` (which is one and a half).
        - `.250 in` and `1e-3 s` are read. `5.` is not.
        - Fractions and mixed numbers are read with inches, feet, pounds and horsepower: `7/8 in`, `1 1/4 in`,
          `1-1/4 in`, `3/4 hp`. With other units they are refused.
        - The unit is required, except where a kind below says that a plain number is read.
        - Letter case counts: `kW` is read, `KW` and `kw` are refused with the right way to write them. Abbreviations of
          words may stand in capitals (`HP`, `RPM`, `SFM`).
        - `N·m`, `N m`, `Nm`, `N.m`, `N-m` and `N*m` are the same; so are `²`, `^2` and `2`, `µ` and `u`, `/` and ` per `.
        - One number with one unit: `220-240 V`, `5 ft 3 in` and `~230 V` are refused. NaN and infinity are never read.
        - Numbers before the unit lie between 1e-15 and 1e15, or are 0.


        """;

    private static void Add(StringBuilder page, QuantityKind kind)
    {
        page.Append(CultureInfo.InvariantCulture, $"## {kind.Name.WithCapital()}\n\n");
        if (kind.Bare is not null) page.Append("A plain number is read.\n\n");
        if (kind.Note.Length > 0) page.Append(kind.Note).Append("\n\n");
        var rows = kind.Units.Where(unit => unit.Symbol.Length > 0).ToList();
        if (rows.Count == 0) return;
        page.Append("| unit | may also be typed | one of it is | fractions |\n| --- | --- | --- | --- |\n");
        foreach (var unit in rows)
        {
            var others = unit.Spellings.Skip(1).Select(spelling => $"`{spelling}`");
            page.Append(CultureInfo.InvariantCulture, $"| `{unit.Symbol}` | {string.Join(", ", others)} | ")
                .Append(CultureInfo.InvariantCulture, $"{unit.Definition} | {(unit.TakesFractions ? "yes" : "")} |\n");
        }
        page.Append('\n');
    }
}
