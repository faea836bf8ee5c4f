using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Spindlewright.Figures.Geometry;
using Spindlewright.Figures.Sheets;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies;

namespace Spindlewright.Figures.Tests;

/// <summary>The sheets for the wall as drawings: everything on the paper, nothing over anything else, no small letters.</summary>
public sealed partial class WallSheetTests
{
    private const double MmPerPt = 25.4 / 72;
    private static readonly Handbook Handbook = Handbook.FromEmbedded();
    private static readonly ConcurrentDictionary<string, StudyResults> Studied = [];

    public static TheoryData<string> Machines =>
        [.. Directory.GetFiles(Repository.File("data/machines"), "*.toml").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Machines))]
    public void Every_sheet_is_well_formed_with_letters_of_ten_points_or_more_on_its_paper(string machine) =>
        Assert.All(Sheets(File.ReadAllText(machine)), sheet =>
        {
            XDocument.Parse(sheet.Svg);
            Assert.All(FontSize().Matches(sheet.Svg), size => Assert.True(
                double.Parse(size.Groups[1].Value, CultureInfo.InvariantCulture) >= PrintedSheet.LeastPt * MmPerPt - 0.006, sheet.Id));
            var paper = new Box(3, 3, sheet.WidthMm - 6, sheet.HeightMm - 6);
            Assert.All(sheet.Texts, text => Assert.True(paper.Holds(text.Box), $"{sheet.Id}: {text.Text}"));
        });

    [Theory]
    [MemberData(nameof(Machines))]
    public void No_text_stands_on_another(string machine) => Assert.All(Sheets(File.ReadAllText(machine)), sheet =>
    {
        // Labels along the lines of a wall chart are turned; their boxes are not those of the page.
        var turned = Turned().Matches(sheet.Svg).Select(match => match.Groups[1].Value).ToHashSet();
        var texts = sheet.Texts.Where(text => !turned.Contains(text.Text)).ToList();
        for (var i = 0; i < texts.Count; i++)
            for (var j = i + 1; j < texts.Count; j++)
                Assert.False(texts[i].Box.Grown(-0.35).Overlaps(texts[j].Box.Grown(-0.35)), $"{sheet.Id}: '{texts[i].Text}' on '{texts[j].Text}'");
    });

    [Fact]
    public void Every_sheet_carries_the_cautions_and_the_bound_stands_where_a_torque_does() =>
        Assert.All(Sheets(Boatyard), sheet =>
        {
            var words = string.Join(' ', sheet.Texts.Select(text => text.Text));
            Assert.True(words.Contains("Guard the chuck", StringComparison.Ordinal) || words.Contains("cannot know the belt", StringComparison.Ordinal));
            if (words.Contains("N·m", StringComparison.Ordinal)) Assert.Contains("ound", words, StringComparison.Ordinal);
            Assert.DoesNotContain("safe", words, StringComparison.OrdinalIgnoreCase);
        });

    [Fact]
    public void The_same_machine_gives_the_same_bytes() =>
        Assert.Equal(Sheets(Boatyard).Select(sheet => sheet.Html()), Sheets(Boatyard).Select(sheet => sheet.Html()));

    [Fact]
    public void Hostile_and_long_names_are_written_as_text_and_cut_to_their_field()
    {
        var text = Boatyard.Replace("name = \"1\"", "name = \"</svg><script>alert(1)</script>\"", StringComparison.Ordinal)
            .Replace("title = \"Boatyard fittings bench\"", $"title = \"<b>{new string('W', 100)}\"", StringComparison.Ordinal);
        Assert.All(Sheets(text), sheet =>
        {
            Assert.DoesNotContain("<script", sheet.Html(), StringComparison.Ordinal);
            Assert.DoesNotContain("<b>", sheet.Html(), StringComparison.Ordinal);
            Assert.All(sheet.Texts, each => Assert.InRange(each.Box.Right, 0, sheet.WidthMm));
        });
    }

    [Fact]
    public void A_plate_too_small_for_its_table_says_what_it_needs_and_the_other_sheets_are_drawn()
    {
        var results = Results(Boatyard + "\n[sheets]\nplate_width = \"60 mm\"\nplate_height = \"40 mm\"\n");
        var fault = Assert.Throws<PartException>(() => WallSheets.All(results, Handbook));
        Assert.Matches("at least \\d+ mm by \\d+ mm", fault.Message);
        List<PartException> left = [];
        var sheets = WallSheets.All(results, Handbook, left.Add);
        Assert.Single(left);
        Assert.DoesNotContain(sheets, sheet => sheet.Id == "speed-plate-true-size");
        Assert.Contains(sheets, sheet => sheet.Id == "machine-card");
    }

    private static string Boatyard => File.ReadAllText(Repository.File("data/machines/boatyard-fittings-bench.toml"));

    private static ImmutableArray<PrintedSheet> Sheets(string text) => WallSheets.All(Results(text), Handbook);

    private static StudyResults Results(string text) => Studied.GetOrAdd(text, Study);

    private static StudyResults Study(string text)
    {
        var read = MachineFile.Read(Encoding.UTF8.GetBytes(text), "bench.toml", Handbook);
        Assert.True(read.Press is not null, string.Join('\n', read.Faults.Lines()));
        return StudyResults.Of(read.Press, Handbook);
    }

    [GeneratedRegex("font-size=\"([0-9.]+)\"")]
    private static partial Regex FontSize();

    [GeneratedRegex("rotate\\([^>]*>\\s*<g[^>]*><text[^>]*>([^<]*)</text>")]
    private static partial Regex Turned();
}
