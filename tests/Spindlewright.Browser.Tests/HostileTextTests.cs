using System.Xml.Linq;
using Microsoft.Playwright;

namespace Spindlewright.Browser.Tests;

/// <summary>Texts of a machine file show as text everywhere; none becomes an element or a script.</summary>
public sealed class HostileTextTests(Chromium chromium, Reports reports)
{
    private const string Elements = "() => [...document.querySelectorAll('*')].map(e => e.localName).filter(n => ['script', 'img', 'b', 'i', 'iframe', 'object'].includes(n)).sort().join()";

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task It_shows_as_text_and_nothing_is_injected(bool scripts)
    {
        await using var plain = await chromium.OpenAsync(reports.Index(Reports.Boatyard), Screen.Desktop, scripts);
        await using var hostile = await chromium.OpenAsync(reports.Index(HostileMachine.Name), Screen.Desktop, scripts);
        Assert.Equal(
            await plain.Page.EvaluateAsync<string>(Elements), await hostile.Page.EvaluateAsync<string>(Elements));
        Assert.StartsWith(HostileMachine.Title, await hostile.Page.TitleAsync(), StringComparison.Ordinal);
        Assert.Equal(HostileMachine.Title, await hostile.Page.Locator("h1").TextContentAsync());
        var shown = await hostile.Page.Locator("body").InnerTextAsync();
        Assert.All(HostileMachine.Texts, text => Assert.Contains(text, shown, StringComparison.Ordinal));
        Assert.Equal(0, await hostile.Page.OverflowPxAsync());
        hostile.DidNothingElse();
    }

    [Fact]
    public async Task Labels_and_hover_texts_of_charts_show_it_as_text()
    {
        await using var opened = await chromium.OpenAsync(reports.Index(HostileMachine.Name), Screen.Desktop);
        var figure = opened.Page.Locator("#torque-against-spindle-speed");
        var labels = await figure.Locator(".sw-live .textpoint text").AllTextContentsAsync();
        foreach (var name in new[] { HostileMachine.Image, HostileMachine.Template })
        {
            Assert.Contains($"position {name}", labels.Select(Plain));
            await Hover(figure, name);
            await opened.Page.WaitForFunctionAsync(
                "name => [...document.querySelectorAll('.hoverlayer text')].some(t => t.textContent.replace(/\\u2060/g, '').includes(name))",
                name);
        }
        opened.DidNothingElse();
    }

    [Fact]
    public async Task Drawings_stay_well_formed_and_show_it_as_text()
    {
        foreach (var file in Directory.GetFiles(Path.Combine(reports.Folder(HostileMachine.Name), "figures")))
        {
            Assert.Equal("svg", XDocument.Load(file).Root!.Name.LocalName);
            await using var opened = await chromium.OpenAsync(file, Screen.Desktop, scripts: false);
            opened.DidNothingElse();
        }
        var torque = XDocument.Load(Path.Combine(reports.Folder(HostileMachine.Name), "figures", "torque-against-spindle-speed.svg"));
        Assert.Contains(torque.Descendants(), e => e.Name.LocalName == "text" && e.Value.Contains(HostileMachine.Image, StringComparison.Ordinal));
    }

    /// <summary>Hovers over the bound of a belt position, as a pointer would; the text appears a moment later.</summary>
    private static async Task Hover(ILocator figure, string belt) => await figure.EvaluateAsync("""
        (figure, belt) => {
          const chart = figure.querySelector(".js-plotly-plot"), plain = s => s.replace(/\u2060/g, "");
          const words = html => Object.assign(document.createElement("textarea"), { innerHTML: html }).value;
          const at = chart.data.findIndex(t => t.name === "bound" && plain(words(t.meta)).includes(belt));
          window.Plotly.Fx.hover(chart, [{ curveNumber: at, pointNumber: 0 }]);
        }
        """, belt);

    /// <summary>Without the word joiners that keep plotly.js from reading templates and mathematics.</summary>
    private static string Plain(string text) => text.Replace("\u2060", "", StringComparison.Ordinal);
}
