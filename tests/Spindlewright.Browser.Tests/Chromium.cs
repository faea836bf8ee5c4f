using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Spindlewright.Browser.Tests;

/// <summary>The system's Chromium without a network; nothing is downloaded.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Path = "/usr/bin/chromium";

    /// <summary>Unloaded a page is ready in two seconds; a shared machine gets more.</summary>
    private const float PatienceMs = 120_000;

    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Path)) return;
        Assertions.SetDefaultExpectTimeout(PatienceMs);
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Path, Args = ["--no-sandbox"] });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
    }

    /// <summary>Opens a file and, where scripts run, waits until every chart has drawn or given up.</summary>
    internal async Task<OpenedPage> OpenAsync(string file, Screen screen, bool scripts = true)
    {
        Tool.Need("chromium", browser is not null, $"no {Path}");
        var context = await browser!.NewContextAsync(new()
        {
            Offline = true,
            JavaScriptEnabled = scripts,
            ViewportSize = new() { Width = screen.WidthPx, Height = screen.HeightPx },
            ColorScheme = screen.Dark ? ColorScheme.Dark : ColorScheme.Light,
        });
        context.SetDefaultTimeout(PatienceMs);
        var page = await context.NewPageAsync();
        var opened = new OpenedPage(page, Watch(page));
        await page.GotoAsync(new Uri(file).AbsoluteUri);
        if (screen.Print) await page.EmulateMediaAsync(new() { Media = Media.Print });
        if (scripts)
            await page.WaitForFunctionAsync("() => [...document.querySelectorAll('figure[data-sw-figure]')].every(f => f.dataset.swState)");
        await page.EvaluateAsync(Probe.Source);
        return opened;
    }

    /// <summary>Whatever a page that stands alone must not do.</summary>
    private static ConcurrentQueue<string> Watch(IPage page)
    {
        var faults = new ConcurrentQueue<string>();
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning") faults.Enqueue($"console {message.Type}: {message.Text}");
        };
        page.PageError += (_, error) => faults.Enqueue($"page error: {error}");
        page.RequestFailed += (_, request) => faults.Enqueue($"failed request: {request.Url}");
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url).Scheme is not ("file" or "data" or "blob")) faults.Enqueue($"request: {request.Url}");
        };
        page.Dialog += (_, dialog) =>
        {
            faults.Enqueue($"dialog: {dialog.Message}");
            _ = dialog.DismissAsync();
        };
        return faults;
    }
}

/// <summary>What a page is looked at on.</summary>
/// <param name="WidthPx">Width of the window.</param>
/// <param name="HeightPx">Its height.</param>
/// <param name="Dark">Whether the reader prefers dark.</param>
/// <param name="Print">Whether it is laid out for paper.</param>
internal sealed record Screen(int WidthPx, int HeightPx, bool Dark = false, bool Print = false)
{
    public static readonly Screen Desktop = new(1280, 900);
    public static readonly Screen Phone = new(390, 844);

    /// <summary>A4 between the margins of the page rule: 180 mm at 96 px an inch.</summary>
    public static readonly Screen A4 = new(680, 996, Print: true);
}

/// <summary>A page in the browser and what it did that it must not.</summary>
internal sealed record OpenedPage(IPage Page, ConcurrentQueue<string> Faults) : IAsyncDisposable
{
    public void DidNothingElse() => Assert.Empty(Faults);

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
