using System.Text.RegularExpressions;
using System.Xml.Linq;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Looks;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public partial class HtmlTests
{
    private static readonly Table Speeds = new(
        "speeds", "Speeds", [new("belt position", Align: Alignment.Left),
            new("lowest", "r/min", Format: NumberFormat.Fixed(1)), new("overpowering speed", "r/min")],
        [["1", 58.04, "none"], ["2", 94, double.NaN], ["3", 12345.25, 31.4159]], "At 7 Hz.", ["Unloaded."],
        [new("", "Handbook", Provenance.SecondHand)], [1]);

    [Fact]
    public void A_figure_holds_its_drawing_caption_data_and_chart()
    {
        var html = FigureHtml.Write(Specimens.TorqueAgainstSpeed());
        foreach (var part in new[] { "<svg ", "<figcaption>", "<strong>Caution:</strong>", "Sources: ", "<details>",
            "data-sw-chart", "belt position 3, bound" })
            Assert.Contains(part, html, StringComparison.Ordinal);
    }

    [Fact]
    public void Ids_are_unique_in_a_page_and_a_figure_can_stand_twice()
    {
        var page = string.Concat(Specimens.All.Select(f => FigureHtml.Write(f)))
            + FigureHtml.Write(Specimens.SpeedBands(), new(IdSuffix: "-again"));
        Assert.Distinct(IdPattern().Matches(page).Select(m => m.Groups[1].Value));
    }

    [Fact]
    public void Parts_can_be_left_out()
    {
        var html = FigureHtml.Write(Specimens.SpeedBands(), new(Narrow: false, Interactive: false, Data: false));
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<details", html, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(html, "<svg "));
        XDocument.Parse(html);
    }

    [Fact]
    public void A_table_is_well_formed_and_names_the_scope_of_its_heads()
    {
        var root = XDocument.Parse(TableHtml.Write(Speeds)).Root!;
        var table = root.Descendants("table").Single();
        Assert.Equal(3, table.Descendants("th").Count(h => h.Attribute("scope")?.Value == "col"));
        Assert.Equal(3, table.Descendants("th").Count(h => h.Attribute("scope")?.Value == "row"));
        Assert.Equal(["r/min", "r/min"], table.Descendants("span").Where(s => s.Attribute("class")?.Value == "sw-unit")
            .Select(s => s.Value));
        Assert.Equal(["58.0", "none", "94.0", "–", "12\u202f345.3", "31.4"], table.Descendants("td")
            .Select(d => d.Value));
        Assert.Single(table.Descendants("tr"), r => r.Attribute("class")?.Value == "sw-emphasis");
        Assert.Contains("Handbook (second hand)", root.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_as_plain_text_is_aligned() => Assert.Equal(
        """
        Speeds
        At 7 Hz.

        belt position    lowest  overpowering speed
                          r/min               r/min
        -------------  --------  ------------------
        1                  58.0                none
        2                  94.0                   –  <
        3              12 345.3                31.4

        Unloaded.
        Source: Handbook (second hand)

        """.Replace("12 345", "12\u202f345", StringComparison.Ordinal), Wording.TableText.Write(Speeds));

    [Fact]
    public void A_table_survives_the_way_through_json()
    {
        var json = FigureJson.Write(Speeds);
        Assert.Equal(json, FigureJson.Write(FigureJson.ReadTable(json)));
        Assert.Equal(TableHtml.Write(Speeds), TableHtml.Write(FigureJson.ReadTable(json)));
    }

    [Fact]
    public void A_row_that_does_not_fit_is_refused()
    {
        var fault = Assert.Throws<PartException>(() => new Table("t", "t", [new("a"), new("b")], [[1, 2], [3]]));
        Assert.Contains("row 2", fault.Message, StringComparison.Ordinal);
        Assert.Throws<PartException>(() => new Table("t", "t", [new("a")], [[1]], emphasis: [1]));
        Assert.Throws<PartException>(() => Cell.Of(double.PositiveInfinity));
    }

    [Fact]
    public void The_upgrade_script_carries_the_dark_shades_and_no_address()
    {
        var script = UpgradeScript.Source();
        Assert.DoesNotContain("DARK", script, StringComparison.Ordinal);
        Assert.Contains($"\"{Look.House.Shades.Ink.Light}\":\"{Look.House.Shades.Ink.Dark}\"", script,
            StringComparison.Ordinal);
        Assert.DoesNotContain("http", script, StringComparison.Ordinal);
    }

    [Fact]
    public void The_data_table_lists_ends_of_long_lines_and_names_of_positions()
    {
        var table = DataTable.Of(Specimens.TorqueAgainstSpeed());
        Assert.Contains(table.Rows, r =>
            r[0].Words == "belt position 1, as modelled" && Math.Abs(r[1].Number!.Value - 55.4166667) < 1e-4);
        Assert.Equal(5 * (2 + 9 + 9), table.Rows.Length);
        Assert.Contains("1  (3.6 : 1)", FigureHtml.Write(Specimens.SpeedBands()), StringComparison.Ordinal);
    }

    [GeneratedRegex(" id=\"([^\"]*)\"")]
    private static partial Regex IdPattern();
}
