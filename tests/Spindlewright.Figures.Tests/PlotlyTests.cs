using System.Text.Json;
using Spindlewright.Figures.Interactive;
using Spindlewright.Figures.Looks;
using P = global::Plotly.NET;

namespace Spindlewright.Figures.Tests;

public class PlotlyTests
{
    private static JsonElement Json(Figure figure) => JsonDocument.Parse(PlotlyWriter.Json(figure)).RootElement;

    [Fact]
    public void Every_mark_becomes_a_trace_and_nothing_is_NaN()
    {
        foreach (var figure in Specimens.All)
        {
            var text = PlotlyWriter.Json(figure);
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("template", text.Replace("hovertemplate", "", StringComparison.Ordinal),
                StringComparison.Ordinal);
            Assert.Equal(figure.StillMarks.Sum(m => m is Band ? 2 : 1),
                Json(figure).GetProperty("data").GetArrayLength());
        }
    }

    [Fact]
    public void A_gap_is_null()
    {
        var y = Json(FigureRecordTests.Make(new Curve(Role.SetCurve, [1, 2, 3], [1, double.NaN, 3]))).GetProperty(
            "data")[0].GetProperty("y");
        Assert.Equal(JsonValueKind.Null, y[1].ValueKind);
        Assert.Equal(3, y[2].GetDouble());
    }

    [Fact]
    public void Frames_and_slider_steps_match_and_move_the_right_traces()
    {
        var figure = Specimens.VoltsPerHertz();
        var json = Json(figure);
        var frames = json.GetProperty("frames");
        var slider = json.GetProperty("layout").GetProperty("sliders")[0];
        Assert.Equal(5, frames.GetArrayLength());
        Assert.Equal(2, slider.GetProperty("active").GetInt32());
        Assert.Equal(
            frames.EnumerateArray().Select(f => f.GetProperty("name").GetString()),
            slider.GetProperty("steps").EnumerateArray().Select(s => s.GetProperty("args")[0][0].GetString()));
        var moved = frames[0].GetProperty("traces")[0].GetInt32();
        Assert.Equal("as set", json.GetProperty("data")[moved].GetProperty("name").GetString());
        Assert.Equal(0, frames[0].GetProperty("data")[0].GetProperty("y")[0].GetDouble());
        Assert.Equal(18.4, frames[4].GetProperty("data")[0].GetProperty("y")[0].GetDouble(), 6); // 8 % of 230 V
    }

    [Fact]
    public void A_still_figure_has_no_frames_and_no_slider()
    {
        var json = Json(Specimens.SpeedBands());
        Assert.Equal(0, json.GetProperty("frames").GetArrayLength());
        Assert.False(json.GetProperty("layout").TryGetProperty("sliders", out _));
    }

    [Fact]
    public void Roles_look_as_in_the_drawing_and_the_bound_lies_on_top()
    {
        var data = Json(Specimens.TorqueAgainstSpeed()).GetProperty("data").EnumerateArray().ToList();
        Assert.Equal("bound", data[^1].GetProperty("name").GetString());
        var weights = data.ToLookup(
            t => t.GetProperty("name").GetString()!, t => t.GetProperty("line").GetProperty("width").GetDouble());
        Assert.True(weights["bound"].Min() > weights["as modelled"].Max());
        Assert.Equal(Math.Round(Look.House.For(Role.Bound).WeightPt * 96 / 72, 2), weights["bound"].First());
        Assert.Equal("8px,3.2px", data.First(t => t.GetProperty("name").GetString() == "ideal boost").GetProperty(
            "line").GetProperty("dash").GetString());
        Assert.Equal(3, data.Count(t => t.GetProperty("showlegend").GetBoolean()));
    }

    [Fact]
    public void A_logarithmic_axis_gives_its_range_in_decades_and_names_run_downwards()
    {
        var layout = Json(Specimens.SpeedBands()).GetProperty("layout");
        Assert.Equal("log", layout.GetProperty("xaxis").GetProperty("type").GetString());
        Assert.Equal(Math.Log10(5000), layout.GetProperty("xaxis").GetProperty("range")[1].GetDouble(), 5);
        var y = layout.GetProperty("yaxis").GetProperty("range");
        Assert.True(y[0].GetDouble() > y[1].GetDouble());
    }

    [Fact]
    public void The_chart_is_one_of_Plotly_NET_that_others_can_go_on_with()
    {
        var chart = PlotlyWriter.Chart(Specimens.SpeedBands());
        Assert.Equal(7, P.GenericChart.countTrace(chart));
    }

    [Fact]
    public void Labels_of_bands_and_bars_are_shown()
    {
        var figure = FigureRecordTests.Make(
            new Band(Role.Handbook, [1, 2], [1, 1], [2, 3], label: "carbide"),
                new RangeBar(Role.Limit, 2, 1, 2, label: "chuck"));
        var texts = Json(figure).GetProperty("data").EnumerateArray().Where(t => t.TryGetProperty("text", out _))
            .Select(t => string.Join('|', t.GetProperty("text").EnumerateArray().Select(x => x.GetString()))).ToList();
        Assert.Equal(["|carbide", "\u00a01\u00a0|||\u00a02\u00a0\u00a0chuck|||"], texts);
    }

    [Fact]
    public void A_readers_own_chart_becomes_a_fragment_with_gaps_and_a_stable_id()
    {
        var trace = new P.Trace2D("scatter");
        trace.SetProperty("x", new[] { 1.0, double.NaN });
        trace.SetProperty("name", "NaN");
        var chart = P.GenericChart.ofTraceObject(false, trace);
        var html = Html.ChartHtml.Write(chart, "own-chart");
        Assert.Equal(html, Html.ChartHtml.Write(chart, "own-chart"));
        Assert.Matches("\"x\":\\[1(.0)?,null\\]", html);
        Assert.Contains("\"name\":\"NaN\"", html, StringComparison.Ordinal);
        Assert.Contains("id=\"own-chart\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_script_and_its_licence_come_from_the_package()
    {
        Assert.InRange(PlotlyScript.Source.Length, 1_000_000, 10_000_000);
        Assert.Contains("plotly.js", PlotlyScript.Source[..200], StringComparison.Ordinal);
        Assert.Contains("MIT", PlotlyScript.Licence, StringComparison.Ordinal);
        Assert.DoesNotContain("</script", PlotlyScript.Source, StringComparison.OrdinalIgnoreCase);
    }
}
