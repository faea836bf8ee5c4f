using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using Spindlewright.Kernel.Tests.Commands;
using Program = Spindlewright.Kernel.Tests.Commands.Program;

namespace Spindlewright.Browser.Tests;

/// <summary>The sheets for the wall as a browser prints them.</summary>
public sealed class SheetTests(Chromium chromium, Reports reports)
{
    private const double PxPerMm = 10;

    [Theory]
    [MemberData(nameof(Reports.Machines), MemberType = typeof(Reports))]
    public async Task Every_sheet_prints_on_one_page_of_A4(string machine)
    {
        var pages = Directory.GetFiles(Path.Combine(reports.Folder(machine), "sheets"), "*.html");
        Assert.True(pages.Length >= 5);
        foreach (var page in pages)
        {
            var pdf = Encoding.Latin1.GetString(await PdfOf(page));
            Assert.Equal(1, CountOf(pdf, "/Type /Page\n"));
            Assert.Matches(@"/MediaBox \[0 0 841\.9\d+ 59[45]\.\d+\]", pdf);
        }
    }

    [Fact]
    public async Task No_text_of_a_sheet_is_cut_and_none_is_smaller_than_ten_points_in_the_browser()
    {
        foreach (var page in Directory.GetFiles(Path.Combine(reports.Folder(Reports.Boatyard), "sheets"), "*.html"))
        {
            await using var opened = await chromium.OpenAsync(page, new(1200, 900));
            Assert.Empty(await opened.Page.CutTextsAsync());
            Assert.Empty(await opened.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll("svg text")]
                  .filter(t => parseFloat(getComputedStyle(t).fontSize) * t.ownerSVGElement.getScreenCTM().a < 10 * 96 / 72 - 0.05)
                  .map(t => t.textContent)
                """));
        }
    }

    /// <summary>The check line of the plate at true size is 50 mm long on paper, measured on the print itself.</summary>
    [Fact]
    public async Task The_plate_at_true_size_prints_at_its_size()
    {
        var pdf = Path.Combine(Path.GetTempPath(), $"spindlewright-plate-{Environment.ProcessId}.pdf");
        await File.WriteAllBytesAsync(
            pdf, await PdfOf(Path.Combine(reports.Folder(Reports.Boatyard), "sheets", "speed-plate-true-size.html")),
            TestContext.Current.CancellationToken);
        try
        {
            var (width, height, grey) = Rasterised(pdf);
            Assert.Equal(297 * PxPerMm, width, 3.0);
            var longest = Enumerable.Range((int)(height * 0.9), (int)(height * 0.09)).Max(row => LongestDark(grey, row, width));
            Assert.Equal(50 * PxPerMm, longest, 5.0);
        }
        finally
        {
            File.Delete(pdf);
        }
    }

    [Fact]
    public void The_command_prints_a_pdf_of_every_sheet_and_leaves_no_profile_behind()
    {
        using var folder = new TemporaryFolder();
        var ended = Program.Run("sheets", "--machine", Repository.File("data/machines/school-workshop.toml"), "--out", folder.Path);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        var sheets = Path.Combine(folder.Path, "sheets");
        Assert.Equal(
            Directory.GetFiles(sheets, "*.html").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal),
            Directory.GetFiles(sheets, "*.pdf").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));
        Assert.Empty(Directory.GetDirectories(Path.GetTempPath(), "spindlewright-print-*"));
    }

    private async Task<byte[]> PdfOf(string page)
    {
        await using var opened = await chromium.OpenAsync(page, new(1200, 900));
        return await opened.Page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true });
    }

    private static int CountOf(string text, string part) => text.Split(part).Length - 1;

    private static (int Width, int Height, byte[] Grey) Rasterised(string pdf)
    {
        using var process = Process.Start(new ProcessStartInfo("pdftoppm")
        {
            RedirectStandardOutput = true,
            ArgumentList = { "-gray", "-r", (PxPerMm * 25.4).ToString(CultureInfo.InvariantCulture), pdf },
        })!;
        using var bytes = new MemoryStream();
        process.StandardOutput.BaseStream.CopyTo(bytes);
        process.WaitForExit();
        // P5, width and height, 255, then a byte a pixel.
        var head = Encoding.ASCII.GetString(bytes.GetBuffer(), 0, 40).Split(['\n', ' ']);
        var (width, height) = (int.Parse(head[1], CultureInfo.InvariantCulture), int.Parse(head[2], CultureInfo.InvariantCulture));
        return (width, height, bytes.ToArray()[^(width * height)..]);
    }

    private static int LongestDark(byte[] grey, int row, int width)
    {
        var (longest, run) = (0, 0);
        for (var column = 0; column < width; column++)
        {
            run = grey[row * width + column] < 128 ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }
        return longest;
    }
}
