using System.Collections.Concurrent;
using Microsoft.Playwright;
using Spindlewright.Kernel.Tests;

namespace Spindlewright.Jupyter.Tests;

/// <summary>A real notebook page in Chromium: opens a notebook, runs all of it, and its figures draw without a network.</summary>
public sealed class BrowserTests(JupyterFolder jupyter) : IClassFixture<JupyterFolder>
{
    private const string Chromium = "/usr/bin/chromium";
    private const string Notebook = "01-stall-torque-at-low-speed.ipynb";
    private const float PatienceMs = 120_000;

    /// <summary>This notebook page has no dark form of its own; people give it one like this.</summary>
    private const string DressDark = """
        document.addEventListener("DOMContentLoaded", () => {
          const style = document.createElement("style");
          style.textContent = "body,#notebook,#notebook-container,div.cell,.rendered_html{background:#181c20;color:#e8e6e0}";
          document.head.appendChild(style);
        });
        """;

    [Fact]
    public async Task A_notebook_runs_and_its_figures_draw_in_a_light_page_and_in_a_dark_one()
    {
        Tool.Need("chromium", File.Exists(Chromium), $"no {Chromium}");
        var folder = Directory.CreateDirectory(Path.Combine(jupyter.Path, "notebooks")).FullName;
        File.WriteAllText(Path.Combine(folder, Notebook), WithoutOutputs(Repository.File($"notebooks/{Notebook}")));
        using var server = await JupyterServer.StartAsync(jupyter.Path, folder);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Chromium,
            Args = ["--no-sandbox", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"],
        });
        var (page, outside) = await OpenAsync(browser, server);
        await RunAllAsync(page);
        await LooksAsTheReportAsync(page, dark: false);

        await page.EvaluateAsync("() => Jupyter.notebook.save_notebook()");
        await page.AddInitScriptAsync(DressDark);
        await page.ReloadAsync();
        await LooksAsTheReportAsync(page, dark: true);

        Assert.Empty(outside);
        var kernels = server.Kernels();
        Assert.True(kernels.Length >= 2);
        await browser.CloseAsync();
        server.Process.Kill();
        await Gone.WithinAsync(Gone.Patience, kernels);
    }

    private static async Task<(IPage Page, ConcurrentQueue<string> Outside)> OpenAsync(IBrowser browser, JupyterServer server)
    {
        // The reader's system prefers dark: a page that is light must stay readable all the same.
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1200, Height = 1000 }, ColorScheme = ColorScheme.Dark });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(PatienceMs);
        var outside = new ConcurrentQueue<string>();
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url) is { Scheme: "http" or "https" or "ws", Host: not "127.0.0.1" })
                outside.Enqueue(request.Url);
        };
        await page.GotoAsync(new Uri(server.Address, $"notebooks/{Notebook}").AbsoluteUri);
        await page.WaitForFunctionAsync("() => window.Jupyter && Jupyter.notebook && Jupyter.notebook.kernel && Jupyter.notebook.kernel.is_connected()");
        return (page, outside);
    }

    private static async Task RunAllAsync(IPage page)
    {
        await page.EvaluateAsync("() => Jupyter.notebook.execute_all_cells()");
        await page.WaitForFunctionAsync("() => Jupyter.notebook.get_cells().every(c => c.cell_type !== 'code' || typeof c.input_prompt_number === 'number')");
        Assert.Equal(0, await page.Locator(".output_error").CountAsync());
    }

    private static async Task LooksAsTheReportAsync(IPage page, bool dark)
    {
        await page.WaitForFunctionAsync("() => document.querySelector('figure[data-sw-figure]') && [...document.querySelectorAll('figure[data-sw-figure]')].every(f => f.dataset.swState)");
        await SaveAsync(page, dark);
        var states = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('figure[data-sw-figure]')].map(f => f.dataset.swState)");
        Assert.All(states, state => Assert.Equal("live", state));
        Assert.Equal(states.Length, await page.Locator(".sw-live .main-svg >> nth=0").CountAsync());
        Assert.Equal(dark ? "dark" : "light", await page.EvaluateAsync<string>("() => document.documentElement.dataset.swGround"));
        // Paper of the chart and letters of a table, as the house's look says.
        Assert.Equal(
            dark ? "rgb(20, 24, 29)" : "rgb(255, 255, 255)",
            await page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('.sw-live .main-svg')).backgroundColor"));
        Assert.Equal(
            dark ? "rgb(240, 237, 230)" : "rgb(22, 25, 29)",
            await page.EvaluateAsync<string>("() => getComputedStyle(document.querySelector('.sw-table td')).color"));
    }

    /// <summary>Where asked for, so that somebody can look.</summary>
    private static async Task SaveAsync(IPage page, bool dark)
    {
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_SCREENSHOTS") is not { Length: > 0 } folder)
            return;
        var name = dark ? "jupyter-dark" : "jupyter-light";
        foreach (var (selector, part) in new[] { (".sw-figure", "figure"), (".sw-table-box", "table"), (".output_area", "first") })
        {
            await page.Locator(selector).First.ScrollIntoViewIfNeededAsync();
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{part}.png") });
        }
    }

    private static string WithoutOutputs(string file)
    {
        var notebook = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(file))!;
        foreach (var cell in notebook["cells"]!.AsArray().Where(cell => cell!["cell_type"]!.GetValue<string>() == "code"))
        {
            cell!["outputs"]!.AsArray().Clear();
            cell["execution_count"] = null;
        }

        return notebook.ToJsonString();
    }
}
