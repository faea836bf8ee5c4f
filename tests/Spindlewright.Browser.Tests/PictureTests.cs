using System.Buffers.Binary;
using System.Text;

namespace Spindlewright.Browser.Tests;

/// <summary>
/// The pictures of the README. They are made anew by running these tests with SPINDLEWRIGHT_WRITE_DOCS=1:
/// <c>SPINDLEWRIGHT_WRITE_DOCS=1 dotnet test --project tests/Spindlewright.Browser.Tests -c Release</c>, then
/// <c>convert docs/pictures/report.png -dither None -colors 48 PNG8:docs/pictures/report.png</c> (ImageMagick), which
/// makes the picture of the report half as large.
/// </summary>
public sealed class PictureTests(Chromium chromium, Reports reports)
{
    private const string Report = "docs/pictures/report.png";
    private const int WidthPx = 1200;
    private const int MostBytes = 150_000;
    private const string Shrink = $"convert {Report} -dither None -colors 48 PNG8:{Report}";

    [Fact]
    public void The_drawing_of_the_boatyard_bench_is_current() => Repository.PageIsCurrent(
        "docs/pictures/torque-against-spindle-speed.svg",
        File.ReadAllText(Path.Combine(reports.Folder(Reports.Boatyard), "figures", "torque-against-spindle-speed.svg")));

    /// <summary>Pixels differ with the version of Chromium, so the picture is checked for its shape only.</summary>
    [Fact]
    public async Task The_picture_of_the_report_has_its_width_and_is_small()
    {
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 })
        {
            await using var opened = await chromium.OpenAsync(reports.Index(Reports.Boatyard), new(WidthPx, 930));
            await opened.Page.ScreenshotAsync(new() { Path = Repository.File(Report) });
        }
        var bytes = await File.ReadAllBytesAsync(Repository.File(Report), TestContext.Current.CancellationToken);
        Assert.Equal("PNG", Encoding.ASCII.GetString(bytes, 1, 3));
        Assert.Equal(WidthPx, BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(16)));
        Assert.True(bytes.Length > 20_000, $"{Report} is nearly empty");
        Assert.True(bytes.Length <= MostBytes, $"{Report} has {bytes.Length} bytes; make it smaller with: {Shrink}");
    }
}
