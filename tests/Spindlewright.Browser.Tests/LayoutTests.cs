using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Spindlewright.Browser.Tests;

/// <summary>The page fits desktop, telephone and A4.</summary>
public sealed partial class LayoutTests(Chromium chromium, Reports reports)
{
    public static TheoryData<string, int> MachinesAndWidths => new(
        from machine in new[] { Reports.Boatyard, Reports.School, Reports.SixPole }
        from width in new[] { Screen.Desktop.WidthPx, Screen.Phone.WidthPx, Screen.A4.WidthPx }
        select (machine, width));

    [Theory]
    [MemberData(nameof(MachinesAndWidths))]
    public async Task Nothing_runs_over_the_edge_and_no_text_of_a_drawing_is_cut(string machine, int widthPx)
    {
        var screen = new Screen(widthPx, 900, Print: widthPx == Screen.A4.WidthPx);
        await using var opened = await chromium.OpenAsync(reports.Index(machine), screen);
        Assert.Equal(0, await opened.Page.OverflowPxAsync());
        Assert.Empty(await opened.Page.WideElementsAsync());
        Assert.True(await opened.Page.TextCountAsync() > 50);
        Assert.Empty(await opened.Page.CutTextsAsync());
    }

    /// <summary>A check that cannot fail is none: a label moved out of its drawing is found.</summary>
    [Fact]
    public async Task A_text_pushed_out_of_its_drawing_and_a_wide_element_are_found()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Phone, scripts: false);
        await opened.Page.EvaluateAsync("""
            () => {
              swProbe.texts()[0].setAttribute("transform", "translate(500 0)");
              document.querySelector("h1").style.width = "1000px";
            }
            """);
        Assert.Single(await opened.Page.CutTextsAsync());
        Assert.Contains("h1.", await opened.Page.WideElementsAsync());
        Assert.True(await opened.Page.OverflowPxAsync() > 500);
    }

    [Fact]
    public async Task Wide_tables_scroll_inside_their_box_on_a_telephone()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Phone);
        var box = opened.Page.Locator("#torques .sw-scroll");
        Assert.True(await box.EvaluateAsync<bool>("b => b.scrollWidth > b.clientWidth"));
        await box.EvaluateAsync("b => b.scrollLeft = 10000");
        Assert.True(await box.EvaluateAsync<double>("b => b.scrollLeft") > 0);
    }

    [Theory]
    [MemberData(nameof(Reports.Machines), MemberType = typeof(Reports))]
    public async Task It_prints_on_upright_A4_without_cutting_a_table(string machine)
    {
        await using var opened = await chromium.OpenAsync(reports.Index(machine), Screen.A4);
        Assert.Empty(await opened.Page.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll("table")].filter(t => t.getClientRects().length
              && t.getBoundingClientRect().right > document.documentElement.clientWidth + 1).map(t => t.caption.textContent)
            """));
        var pdf = Encoding.Latin1.GetString(await opened.Page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true }));
        var pages = MediaBox().Matches(pdf).Select(box => box.Groups[1].Value).ToList();
        // Some thirty figures and some fifty tables; many more pages would mean that something breaks where it should not.
        Assert.InRange(pages.Count, 4, 60);
        Assert.All(pages, size => Assert.Equal("594.95996 841.91998", size));
    }

    [Fact]
    public async Task The_picture_begins_on_the_first_screen_and_every_entry_of_the_contents_leads_somewhere()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop);
        var plot = await opened.Page.Locator("#torque-against-spindle-speed .plot").First.BoundingBoxAsync();
        Assert.True(plot!.Y + plot.Height <= Screen.Desktop.HeightPx, $"the plot ends at {plot.Y + plot.Height} px");
        var entries = await opened.Page.Locator(".sw-contents a").EvaluateAllAsync<string[]>("links => links.map(a => a.hash)");
        Assert.True(entries.Length > 10);
        Assert.Distinct(entries);
        foreach (var entry in entries) Assert.Equal(1, await opened.Page.Locator(entry).CountAsync());
    }

    [GeneratedRegex(@"/MediaBox \[0 0 ([\d. ]+)\]")]
    private static partial Regex MediaBox();
}
