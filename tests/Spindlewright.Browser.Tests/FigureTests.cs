using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Spindlewright.Browser.Tests;

/// <summary>Every figure of a report draws, interactive or still, without a network.</summary>
public sealed partial class FigureTests(Chromium chromium, Reports reports)
{
    private const string Figures = "figure[data-sw-figure]";

    [Theory]
    [MemberData(nameof(Reports.Machines), MemberType = typeof(Reports))]
    public async Task Every_figure_goes_live_with_marks_and_a_name(string machine)
    {
        await using var opened = await chromium.OpenAsync(reports.Index(machine), Screen.Desktop);
        var figures = await opened.Page.Locator(Figures).AllAsync();
        Assert.Equal(Directory.GetFiles(Path.Combine(reports.Folder(machine), "figures"), "*.svg").Length, figures.Count);
        foreach (var figure in figures)
        {
            await Expect(figure).ToHaveAttributeAsync("data-sw-state", "live");
            await Expect(figure.Locator(".sw-still").First).ToBeHiddenAsync();
            Assert.True(await figure.Locator(".sw-live .scatterlayer .trace").CountAsync() > 1);
            await HasName(figure.Locator(".sw-live"));
        }
        opened.DidNothingElse();
    }

    [Theory]
    [InlineData(Reports.Boatyard, 1280)]
    [InlineData(Reports.Boatyard, 390)]
    [InlineData(Reports.School, 1280)]
    [InlineData(Reports.SixPole, 1280)]
    public async Task Without_scripts_one_drawing_of_each_figure_stands(string machine, int widthPx)
    {
        await using var opened = await chromium.OpenAsync(reports.Index(machine), new(widthPx, 900), scripts: false);
        Assert.Equal(0, await opened.Page.Locator(".sw-live").CountAsync());
        foreach (var figure in await opened.Page.Locator(Figures).AllAsync()) await StandsStill(figure);
        Assert.Empty(await opened.Page.CutTextsAsync());
        opened.DidNothingElse();
    }

    [Fact]
    public async Task On_paper_one_drawing_of_each_figure_stands_and_no_chart()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.A4);
        foreach (var figure in await opened.Page.Locator(Figures).AllAsync())
        {
            await Expect(figure.Locator(".sw-live")).ToBeHiddenAsync();
            await StandsStill(figure);
        }
    }

    [Fact]
    public async Task The_legend_names_every_kind_of_mark_once()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop);
        foreach (var figure in await opened.Page.Locator(Figures).AllAsync())
            Assert.Distinct(await figure.Locator(".legendtext").AllTextContentsAsync());
        Assert.Equal(
            ["bound", "as modelled, capability to hazard side", "ideal boost, hazard side"],
            await opened.Page.Locator("#torque-against-spindle-speed .legendtext").AllTextContentsAsync());
    }

    /// <summary>The drawings also lie beside the report as files of their own.</summary>
    [Fact]
    public async Task Every_drawing_opens_as_a_file()
    {
        foreach (var file in Directory.GetFiles(Path.Combine(reports.Folder(Reports.Boatyard), "figures")))
        {
            await using var opened = await chromium.OpenAsync(file, Screen.Desktop, scripts: false);
            Assert.True(await opened.Page.Locator("svg path").CountAsync() > 1, file);
            opened.DidNothingElse();
        }
    }

    private static async Task StandsStill(ILocator figure)
    {
        var drawing = figure.Locator(".sw-still:visible svg");
        await Expect(drawing).ToHaveCountAsync(1);
        var box = await drawing.BoundingBoxAsync();
        Assert.True(box is { Width: > 250, Height: > 100 }, $"{box?.Width} x {box?.Height}");
        Assert.True(await drawing.Locator("path, rect, polyline").CountAsync() > 5);
        await HasName(drawing);
    }

    private static async Task HasName(ILocator image)
    {
        await Expect(image).ToHaveRoleAsync(AriaRole.Img);
        await Expect(image).ToHaveAccessibleNameAsync(SomeWords());
    }

    [GeneratedRegex(@"\w+ \w+ \w+")]
    private static partial Regex SomeWords();
}
