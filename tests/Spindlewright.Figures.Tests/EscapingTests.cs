using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Spindlewright.Figures.Html;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Svg;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

/// <summary>Whatever a machine file calls its things shows as text everywhere.</summary>
public partial class EscapingTests
{
    private const string Nasty = "<script>alert('x')</script> & <b>\"bold\"</b> %{x} $a$ ]]> \u0001 \ud800 é";

    private static Figure Figure => new(
        "nasty", Nasty, new(Nasty, "Hz" + Nasty), new(Nasty, "V"),
        [
            new Curve(Role.SetCurve, [1, 2], [1, 2], Nasty, Nasty, legend: Nasty),
            new Rule(Role.Limit, RuleDirection.Level, 2, Nasty),
            new TextMark(1, 1, Nasty),
            new Points(Role.Measured, [1], [1], Nasty, Nasty, legend: "m" + Nasty),
        ],
        new FrameSet(Nasty, Nasty, [new(1, [new Curve(Role.AsFound, [1, 2], [1, 2], Nasty, Nasty)])], 0),
        [new(Nasty, Nasty, Provenance.Yours)], [Nasty], [Nasty]);

    private static Table Table => new(
        "nasty-table", Nasty, [new(Nasty, Nasty, Alignment.Left), new(Nasty)], [[Nasty, 1.0]], Nasty, [Nasty],
        [new("", Nasty, Provenance.Yours)]);

    [Fact]
    public void In_svg()
    {
        var svg = SvgWriter.Write(Figure);
        var root = XDocument.Parse(svg).Root!;
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "script" or "b");
        Assert.Contains("<script>alert('x')</script>", root.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void In_html_of_figures_and_tables()
    {
        foreach (var html in new[] { FigureHtml.Write(Figure), TableHtml.Write(Table) })
        {
            Assert.DoesNotContain("<script>", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
            Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
            Assert.DoesNotContain('\u0001', html);
        }
    }

    [Fact]
    public void In_the_data_block_of_the_chart()
    {
        var html = FigureHtml.Write(Figure);
        var block = Block().Match(html).Groups[1].Value;
        Assert.DoesNotContain('<', block);
        JsonDocument.Parse(block);
        Assert.Single(Regex.Matches(html, "</script>"));
    }

    [Fact]
    public void In_titles_names_and_labels_of_the_chart()
    {
        var json = JsonDocument.Parse(PlotlyWriter.Json(Figure)).RootElement;
        var title = json.GetProperty("layout").GetProperty("title").GetProperty("text").GetString()!;
        Assert.StartsWith("<b>&lt;script&gt;", title, StringComparison.Ordinal);
        Assert.EndsWith("</b>", title, StringComparison.Ordinal);
        foreach (var text in Strings(json).Where(s => s.Contains("alert", StringComparison.Ordinal) && s != title))
        {
            // Of a hover template only our own tag, which ends it, is left.
            var own = text.EndsWith("<extra>%{meta}</extra>", StringComparison.Ordinal)
                ? text[..text.IndexOf("<extra>", StringComparison.Ordinal)] : text;
            Assert.DoesNotContain('<', own);
        }
        Assert.DoesNotContain(Strings(json), s =>
            s.Contains("%{x} ", StringComparison.Ordinal) && !s.StartsWith("%{x:", StringComparison.Ordinal));
    }

    [Fact]
    public void In_plain_text_nothing_is_lost()
    {
        Assert.Contains(Nasty, Wording.FigureText.Plain(Figure), StringComparison.Ordinal);
        Assert.Contains("<script>", Wording.TableText.Write(Table), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => [element.GetString()!],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Strings(p.Value)),
        _ => [],
    };

    [GeneratedRegex("<script type=\"application/json\" data-sw-chart>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Block();
}
