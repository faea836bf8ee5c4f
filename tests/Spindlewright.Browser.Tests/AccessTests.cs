using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace Spindlewright.Browser.Tests;

/// <summary>The page serves readers who see little, or nothing, or use a dark screen.</summary>
public sealed class AccessTests(Chromium chromium, Reports reports)
{
    // A live chart is one image with a name; what is inside it is looked at below, as axe-core leaves drawings out.
    private static readonly AxeRunContext AllButInsidesOfCharts = new() { Exclude = [new(".sw-live .plot-container")] };

    // Of what passes one element a rule is told: thousands of them would each be given a path.
    private static readonly AxeRunOptions ViolationsInFull = new() { ResultTypes = [ResultType.Violations] };

    /// <summary>Rules of axe-core for WCAG 2; serious and critical findings fail.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Axe_finds_nothing_serious(bool dark)
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop with { Dark = dark });
        await opened.Page.EvaluateAsync("() => document.querySelectorAll('figure details').forEach(d => d.open = true)");
        var found = await opened.Page.RunAxe(AllButInsidesOfCharts, ViolationsInFull);
        Assert.True(found.Passes.Length > 20, "axe-core looked at hardly anything");
        Assert.Empty(found.Violations.Where(IsGrave).Select(each => $"{each.Id}: {string.Join("; ", each.Nodes.Take(3).Select(node => node.Html))}"));
    }

    /// <summary>WCAG 2.2, 1.4.3: text stands out from its ground by 4.5 to 1. axe-core leaves drawings out.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(false, false)]
    public async Task Texts_of_drawings_stand_out_from_the_ground(bool dark, bool scripts)
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop with { Dark = dark }, scripts);
        Assert.True(await opened.Page.TextCountAsync() > 50);
        Assert.Empty(await opened.Page.FaintTextsAsync(4.5));
        Assert.NotEmpty(await opened.Page.FaintTextsAsync(21.5)); // Nothing can reach more than 21: the probe measures.
    }

    [Fact]
    public async Task A_dark_screen_gets_a_dark_ground_and_paper_stays_white()
    {
        await using var dark = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop with { Dark = true });
        await using var paper = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.A4 with { Dark = true });
        const string Ground = "() => getComputedStyle(document.body).backgroundColor";
        Assert.Equal("rgb(20, 24, 29)", await dark.Page.EvaluateAsync<string>(Ground));
        Assert.Equal("rgb(255, 255, 255)", await paper.Page.EvaluateAsync<string>(Ground));
        Assert.Empty(await paper.Page.FaintTextsAsync(4.5));
    }

    private static bool IsGrave(AxeResultItem item) => item.Impact is "serious" or "critical";
}
