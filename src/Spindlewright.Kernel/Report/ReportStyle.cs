namespace Spindlewright.Kernel.Report;

/// <summary>What the report's page needs beyond the look's own rules.</summary>
internal static class ReportStyle
{
    internal const string Css = """
        body{margin:0;background:var(--sw-paper)}
        .sw-page h1{font-size:1.9em;line-height:1.2;margin:.6rem 0}
        .sw-page h2{font-size:1.35em;margin:2.6rem 0 .6rem;border-top:1.5pt solid var(--sw-ink);padding-top:.5rem}
        .sw-page h3{font-size:1.05em;margin:1.2rem 0 .3rem}
        .sw-page a{color:inherit}
        .sw-lead{font-size:1.08em}
        .sw-findings dt{font-weight:700;margin-top:.8rem}
        .sw-findings dd{margin:.15rem 0 0}
        @media print{.sw-page{max-width:none;padding:0;font-size:10pt}.sw-page h2{break-after:avoid}.sw-table{font-size:8pt}}

        """;
}
