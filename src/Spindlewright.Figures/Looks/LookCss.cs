using System.Globalization;
using System.Text;

namespace Spindlewright.Figures.Looks;

/// <summary>Writes a <see cref="Look"/> as CSS, for pages that hold figures, tables and sheets.</summary>
public static class LookCss
{
    /// <summary>The style sheet: variables, then rules for <c>.sw-…</c> classes only.</summary>
    /// <param name="look">The look.</param>
    /// <param name="darkWhere">
    /// The root's selector under which the dark values hold, for pages that decide themselves; null where the reader's
    /// screen decides.
    /// </param>
    /// <returns>CSS without imports, fonts or addresses.</returns>
    /// <remarks>A drawing carries its light values itself; these rules only change them on a dark screen.</remarks>
    public static string Write(Look look, string? darkWhere = null)
    {
        var css = new StringBuilder();
        css.Append(darkWhere is null ? ":root{color-scheme:light dark;\n" : ":root{\n");
        Variables(css, look, dark: false);
        css.Append(Line($"--sw-type:{look.Letters.Stack};\n--sw-mono:{look.Letters.MonoStack};\n"));
        css.Append(Line($"--sw-title:{look.Letters.TitlePt}pt;\n--sw-label:{look.Letters.LabelPt}pt;\n"));
        css.Append(Line($"--sw-small:{look.Letters.SmallPt}pt;\n--sw-body:{look.Letters.BodyPt}pt;\n"));
        css.Append(Line($"--sw-gap:{look.Space.GapMm}mm}}\n"));
        var screen = darkWhere is null ? "screen and (prefers-color-scheme:dark)" : "screen";
        css.Append($"@media {screen}{{{darkWhere ?? ":root"}{{\n");
        Variables(css, look, dark: true);
        css.Append("}}\n");
        foreach (var shade in look.Shades.All)
            css.Append(Line($".sw-f-{shade.Name}{{fill:var(--sw-{shade.Name})}}"))
                .Append(Line($".sw-s-{shade.Name}{{stroke:var(--sw-{shade.Name})}}\n"));
        css.Append(Rules);
        return css.ToString();
    }

    private static void Variables(StringBuilder css, Look look, bool dark)
    {
        foreach (var shade in look.Shades.All)
            css.Append(Line($"--sw-{shade.Name}:{(dark ? shade.Dark : shade.Light)};\n"));
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private const string Rules = """
        body:has(>.sw-page){background:var(--sw-paper)}
        .sw-page{margin:0 auto;padding:1.2rem;max-width:52rem;background:var(--sw-paper);color:var(--sw-ink);
        font:var(--sw-body)/1.5 var(--sw-type)}
        .sw-figure,.sw-table-box{margin:2rem 0;color:var(--sw-ink);font-family:var(--sw-type);break-inside:avoid}
        .sw-still svg{display:block;width:100%;height:auto}
        .sw-figure figcaption,.sw-footnotes{font-size:.86em;line-height:1.45;color:var(--sw-muted);margin-top:.5rem}
        .sw-figure figcaption p,.sw-footnotes p{margin:.25rem 0;max-width:46rem}
        .sw-caution{color:var(--sw-ink);border-left:.28rem solid var(--sw-ink);background:var(--sw-tint);
        padding:.35rem .7rem}
        .sw-figure details{font-size:.86em;margin-top:.5rem}
        .sw-figure summary{cursor:pointer;color:var(--sw-muted)}
        .sw-scroll{overflow-x:auto}
        .sw-table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-family:var(--sw-type)}
        .sw-table caption{text-align:left;padding-bottom:.4rem;font-size:var(--sw-title);font-weight:700}
        .sw-table caption span{display:block;font-size:.82em;font-weight:400;color:var(--sw-muted)}
        .sw-table thead{border-top:1.5pt solid var(--sw-ink);border-bottom:.6pt solid var(--sw-ink)}
        .sw-table tbody{border-bottom:1.5pt solid var(--sw-ink)}
        .sw-table th,.sw-table td{padding:.22rem .8rem .22rem 0;vertical-align:baseline;text-align:left;font-weight:400}
        .sw-table thead th{font-weight:700;vertical-align:bottom}
        .sw-table .sw-right{text-align:right}
        .sw-table .sw-centre{text-align:center}
        .sw-table tbody tr+tr{border-top:.4pt solid var(--sw-hairline)}
        .sw-table .sw-emphasis{font-weight:700;background:var(--sw-tint)}
        .sw-table .sw-emphasis th,.sw-table .sw-emphasis td{font-weight:700}
        .sw-unit{display:block;font-weight:400;color:var(--sw-muted)}
        .sw-live{width:100%}
        .sw-live .modebar-container{top:-1.7rem!important}
        .sw-live-title{font-size:calc(var(--sw-title)*1.12)}
        @media (min-width:601px){.sw-live-title{padding-right:9rem}}
        @media screen and (max-width:600px){.sw-wide+.sw-narrow:not(.sw-off){display:block}
        .sw-wide:has(+.sw-narrow){display:none}}
        @media print{.sw-live,.sw-live-title,.sw-figure details{display:none!important}
        .sw-still.sw-wide{display:block!important}}

        """;
}
