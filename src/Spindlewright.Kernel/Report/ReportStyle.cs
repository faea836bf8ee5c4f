namespace Spindlewright.Kernel.Report;

/// <summary>What the report's page and those of notebooks need beyond the look's own rules.</summary>
internal static class ReportStyle
{
    internal const string Css = """
        body{margin:0;background:var(--sw-paper)}
        .sw-page{overflow-wrap:break-word}
        .sw-page h1{font-size:1.9em;line-height:1.2;margin:.6rem 0}
        .sw-page h2{font-size:1.35em;margin:2.6rem 0 .6rem;border-top:1.5pt solid var(--sw-ink);padding-top:.5rem}
        .sw-page h3{font-size:1.05em;margin:1.2rem 0 .3rem}
        .sw-page a{color:inherit;text-decoration-thickness:.06em;text-underline-offset:.15em}
        .sw-page li{margin:.15rem 0}
        .sw-report header>h1{margin:0 0 .5rem}
        .sw-report main>section:first-child>h2{margin:1rem 0 .3rem}
        .sw-how{font-size:.92em;margin:.2rem 0}
        .sw-how+.sw-figure{margin-top:.6rem}
        .sw-report .sw-caution{margin:.5rem 0}
        .sw-report .sw-figure{margin:1rem 0 2.2rem}
        .sw-lead{margin:.6rem 0}
        .sw-title-block{display:flex;flex-wrap:wrap;margin:0;border-top:1.5pt solid var(--sw-ink);
        border-bottom:.6pt solid var(--sw-ink)}
        .sw-title-block>div{flex:1 1 auto;padding:.25rem .7rem .3rem 0}
        .sw-title-block dt{font-size:.78em;color:var(--sw-muted)}
        .sw-title-block dd{margin:0;font-size:.86em}
        .sw-before{font-size:.92em}
        .sw-page .sw-before h2{font-size:1em;border:0;padding:0;margin:.7rem 0 .1rem}
        .sw-before ul{margin:0;padding-left:1.1rem}
        .sw-contents{font-size:.88em}
        .sw-contents ul{list-style:none;margin:0;padding:0}
        .sw-contents>ul{display:flex;flex-wrap:wrap;gap:.1rem 1.1rem;margin:.9rem 0 0;padding:.4rem 0;
        border-top:.6pt solid var(--sw-ink);border-bottom:.6pt solid var(--sw-ink)}
        .sw-contents ul ul{display:none}
        .sw-findings{margin:0}
        .sw-findings>div{padding:.5rem 0;border-top:.4pt solid var(--sw-hairline);break-inside:avoid}
        .sw-findings>div:first-child{border-top:0}
        .sw-findings dt{font-weight:400;color:var(--sw-muted)}
        .sw-findings dd{margin:0}
        .sw-findings p{margin:0}
        .sw-answer{font-weight:700}
        .sw-page details>summary{cursor:pointer}
        @media (min-width:48rem){.sw-findings>div{display:grid;grid-template-columns:11rem minmax(0,1fr);column-gap:1.4rem}}
        @media screen and (min-width:72rem){
        .sw-report{display:grid;max-width:70rem;grid-template-columns:13.5rem minmax(0,52rem);column-gap:2.5rem;
        grid-template-rows:auto 1fr}
        .sw-report>header,.sw-report>main{grid-column:2}
        .sw-contents{grid-column:1;grid-row:1/3}
        .sw-contents>ul{display:block;position:sticky;top:1.2rem;margin:0;max-height:calc(100vh - 3rem);overflow-y:auto}
        .sw-contents li{margin:.3rem 0}
        .sw-contents ul ul{display:block;padding-left:.9rem;color:var(--sw-muted)}
        .sw-contents ul ul a{text-decoration:none}
        .sw-contents ul ul a:hover{text-decoration:underline}}
        @page{size:A4;margin:16mm 15mm 17mm;@bottom-right{content:counter(page) " / " counter(pages);
        font:8pt Arimo,"Liberation Sans",Arial,sans-serif}}
        @page wide{size:A4 landscape}
        @media print{
        .sw-page{max-width:none;padding:0;font-size:9.5pt;line-height:1.4}
        .sw-page h2{break-after:avoid;margin-top:1.6rem}
        .sw-page h3{break-after:avoid}
        .sw-contents a{text-decoration:none}
        .sw-findings>div{grid-template-columns:36mm minmax(0,1fr)}
        .sw-report .sw-figure{margin:.8rem 0 1.4rem}
        .sw-report .sw-still svg{max-width:150mm}
        .sw-how+.sw-figure .sw-still svg{max-width:135mm}
        .sw-contents>ul{font-size:.9em;gap:0 .9rem;margin-top:.5rem}
        .sw-scroll{overflow:visible}
        .sw-table{font-size:8pt;line-height:1.3}
        .sw-table caption{font-size:10pt}
        .sw-table th,.sw-table td{padding-right:2.2mm}
        .sw-table-box{margin:1.2rem 0}
        .sw-table-box:has(tbody>tr:nth-child(16)){break-inside:auto}
        .sw-table caption,.sw-table thead{break-after:avoid}
        .sw-table tr{break-inside:avoid}
        .sw-figure figcaption,.sw-footnotes{font-size:8pt}
        .sw-appendix:not([open]),.sw-appendix>summary{display:none}
        .sw-appendix{page:wide}}

        """;
}
