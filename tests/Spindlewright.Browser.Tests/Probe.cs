using System.Text;
using Microsoft.Playwright;

namespace Spindlewright.Browser.Tests;

/// <summary>Questions that are asked inside a page.</summary>
internal static class Probe
{
    public static string Source { get; } = Read();

    /// <summary>By how many px the page runs over its window; 0 for not at all.</summary>
    public static Task<double> OverflowPxAsync(this IPage page) => page.EvaluateAsync<double>("() => swProbe.overflow()");

    /// <summary>Elements that reach past the right edge without a scrolling box around them.</summary>
    public static Task<string[]> WideElementsAsync(this IPage page) => page.EvaluateAsync<string[]>("() => swProbe.wide()");

    /// <summary>Texts of visible drawings that lie outside the drawing or its clip.</summary>
    public static Task<string[]> CutTextsAsync(this IPage page) => page.EvaluateAsync<string[]>("() => swProbe.cutTexts()");

    /// <summary>Texts of visible drawings whose contrast with the ground is below a ratio.</summary>
    public static Task<string[]> FaintTextsAsync(this IPage page, double ratio) =>
        page.EvaluateAsync<string[]>("ratio => swProbe.faintTexts(ratio)", ratio);

    /// <summary>How many texts of visible drawings there are.</summary>
    public static Task<int> TextCountAsync(this IPage page) => page.EvaluateAsync<int>("() => swProbe.texts().length");

    private static string Read()
    {
        using var stream = typeof(Probe).Assembly.GetManifestResourceStream("probe.js")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
