using System.Globalization;
using Spindlewright.Figures.Looks;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public class LookTests
{
    private static readonly Side?[] Sides = [null, Side.Capability, Side.Hazard];

    public static IEnumerable<(string Name, RoleLook Look)> AllLines =>
        from role in Enum.GetValues<Role>()
        from side in Sides
        select (role.InWords(side), Look.House.For(role, side));

    [Fact]
    public void Every_pair_of_lines_differs_without_its_shade()
    {
        var lines = AllLines.ToList();
        for (var i = 0; i < lines.Count; i++)
            for (var j = i + 1; j < lines.Count; j++)
            {
                var (a, b) = (lines[i].Look, lines[j].Look);
                Assert.True(
                    DashesDiffer(a, b) || Math.Abs(a.WeightPt - b.WeightPt) >= 0.4 || a.LineMarker != b.LineMarker,
                    $"'{lines[i].Name}' and '{lines[j].Name}' look alike in grey");
            }
    }

    [Fact]
    public void The_bound_is_unbroken_ink_and_much_the_heaviest()
    {
        var bound = Look.House.For(Role.Bound);
        Assert.Empty(bound.DashPt);
        Assert.Equal(Look.House.Shades.Ink, bound.Shade);
        Assert.All(Enum.GetValues<Role>().Where(r => r != Role.Bound), r =>
            Assert.True(Look.House.For(r).WeightPt <= bound.WeightPt - 0.6));
    }

    // WCAG 2.1, success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (graphics, 3 : 1); formula of relative luminance
    // from the same recommendation (from memory).
    [Fact]
    public void Text_and_lines_stand_out_from_the_ground_in_light_and_dark()
    {
        var shades = Look.House.Shades;
        foreach (var shade in new[] { shades.Ink, shades.Muted, shades.Blue, shades.Plum })
        {
            Assert.True(Contrast(shade.Light, shades.Paper.Light) >= 4.5, shade.Name);
            Assert.True(Contrast(shade.Dark, shades.Paper.Dark) >= 4.5, shade.Name);
            Assert.True(Contrast(shade.Light, shades.Tint.Light) >= 4.5, shade.Name);
            Assert.True(Contrast(shade.Dark, shades.Tint.Dark) >= 4.5, shade.Name);
        }
    }

    [Fact]
    public void The_formula_of_contrast_gives_the_known_extremes()
    {
        Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);
        Assert.Equal(1, Contrast("#777777", "#777777"), 6);
    }

    [Fact]
    public void No_shade_is_a_colour_of_a_traffic_light()
    {
        foreach (var hex in Look.House.Shades.All.SelectMany(s => new[] { s.Light, s.Dark }))
        {
            var (hue, chroma) = HueOf(hex);
            Assert.True(chroma < 0.12 || hue is > 180 and < 340, $"{hex} has hue {hue:F0}");
        }
    }

    [Fact]
    public void Shades_of_light_are_all_different_so_that_the_dark_form_can_be_looked_up() =>
        Assert.Distinct(Look.House.Shades.All.Select(s => s.Light));

    [Fact]
    public void Css_is_generated_from_the_look()
    {
        var css = LookCss.Write(Look.House);
        foreach (var shade in Look.House.Shades.All)
        {
            Assert.Contains($"--sw-{shade.Name}:{shade.Light}", css, StringComparison.Ordinal);
            Assert.Contains($"--sw-{shade.Name}:{shade.Dark}", css, StringComparison.Ordinal);
        }
        var other = Look.House with { Letters = new() { TitlePt = 17.5 } };
        Assert.Contains("--sw-title:17.5pt", LookCss.Write(other), StringComparison.Ordinal);
        Assert.DoesNotContain("url(", css, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", css, StringComparison.Ordinal);
        Assert.Equal(css.Count(c => c == '{'), css.Count(c => c == '}'));
    }

    [Fact]
    public void Another_look_reaches_the_drawing()
    {
        var look = Look.House with { Shades = new() { Ink = new("ink", "#123456", "#fedcba") } };
        Assert.Contains("#123456", Svg.SvgWriter.Write(Specimens.SpeedBands(), look: look), StringComparison.Ordinal);
        Assert.Contains("#123456", Interactive.PlotlyWriter.Json(Specimens.SpeedBands(), look),
            StringComparison.Ordinal);
    }

    private static bool DashesDiffer(RoleLook a, RoleLook b) =>
        a.DashPt.Length != b.DashPt.Length || a.DashPt.Zip(b.DashPt)
            .Any(d => Math.Max(d.First, d.Second) / Math.Min(d.First, d.Second) >= 1.4);

    private static double Contrast(string a, string b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string hex)
    {
        var parts = Parts(hex).Select(v => v <= 0.03928 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4)).ToArray();
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
    }

    private static double[] Parts(string hex) =>
        [.. Enumerable.Range(0, 3).Select(
            i => int.Parse(hex.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0)];

    private static (double Hue, double Chroma) HueOf(string hex)
    {
        var (r, g, b) = (Parts(hex)[0], Parts(hex)[1], Parts(hex)[2]);
        var (most, least) = (Math.Max(r, Math.Max(g, b)), Math.Min(r, Math.Min(g, b)));
        var chroma = most - least;
        if (chroma == 0)
            return (0, 0);
        var hue = most == r ? (g - b) / chroma % 6 : most == g ? (b - r) / chroma + 2 : (r - g) / chroma + 4;
        return ((hue * 60 + 360) % 360, chroma);
    }
}
