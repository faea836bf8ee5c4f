using Spindlewright.Kernel.Showing;
using Spindlewright.Kernel.Tests.Engine;
using Spindlewright.Notebooks.Protocol;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Showing;

/// <summary>How values look below a cell, through a real child and the parent that draws.</summary>
public sealed class ShowingTests(WarmEngine warm) : IAsyncLifetime
{
    private const string Html = "text/html";
    private const string Study = "var handbook = Handbook.FromEmbedded(); var press = ThisMachine(handbook);";

    private IExecutionSession session = null!;

    public async ValueTask InitializeAsync() => session = await warm.Engine.OpenAsync(new SessionSettings());

    public ValueTask DisposeAsync() => session.DisposeAsync();

    [Theory]
    [InlineData("Power.FromWatts(750)", "0.75 kW")]
    [InlineData("Torque.FromNewtonMeters(5.01)", "5.01 N·m")]
    [InlineData("Temperature.FromDegreesCelsius(95)", "95 °C")]
    [InlineData("Density.FromGramsPerCubicCentimeter(7.85)", "7.85 g/cm³")]
    public async Task A_quantity_is_its_value_and_unit(string code, string text) => Assert.Equal(text, Only(await ShownAsync(code)));

    [Fact]
    public async Task A_table_and_an_operating_point_are_tables_in_both_forms()
    {
        var table = await ShownAsync("new Table(\"t\", \"Pulleys\", [new(\"diameter\", \"mm\")], [[50.0], [75.0]])");
        Assert.Contains("<table", table.Find(Html), StringComparison.Ordinal);
        Assert.Contains("diameter\n", table.Find(MimeBundle.PlainText), StringComparison.Ordinal);
        var point = await ShownAsync($"{Study} CircuitSolver.Solve(press.Motor.Circuit.Capability, Frequency.FromHertz(50), ElectricPotential.FromVolts(130), slip: 1)");
        Assert.Contains("<table", point.Find(Html), StringComparison.Ordinal);
        Assert.Contains("N·m", point.Find(MimeBundle.PlainText), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_figure_travels_as_its_record_and_is_drawn_by_the_parent()
    {
        var sent = await ShownAsync("""
            new Figure("f", "Volts", new Axis("frequency", "Hz"), new Axis("volts", "V"), [new Curve(Role.AsModelled, [0, 50], [0, 230])])
            """);
        Assert.Equal([MimeBundle.FigureRecord, MimeBundle.PlainText], sent.Data.Keys);
        var drawn = new FigureDrawing().Transform(sent);
        Assert.Equal(["image/svg+xml", Html, MimeBundle.PlainText], drawn.Data.Keys.Order(StringComparer.Ordinal));
        Assert.StartsWith("<svg ", drawn.Find("image/svg+xml"), StringComparison.Ordinal);
        Assert.Contains("<svg ", drawn.Find(Html), StringComparison.Ordinal);
        Assert.StartsWith("Volts: ", drawn.Find(MimeBundle.PlainText), StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_is_no_figure_is_told_and_does_not_end_the_run() =>
        Assert.Contains("cannot be drawn", new FigureDrawing().Transform(
            MimeBundle.Empty.With(MimeBundle.FigureRecord, "{\"id\":1}")).Find(MimeBundle.PlainText), StringComparison.Ordinal);

    [Fact]
    public async Task Cautions_and_findings_are_read_as_text()
    {
        var caution = await ShownAsync("Cautions.Sections[1]");
        Assert.Contains("<li>Guard the chuck.", caution.Find(Html), StringComparison.Ordinal);
        Assert.Contains("- Guard the chuck.", caution.Find(MimeBundle.PlainText), StringComparison.Ordinal);
        Assert.Equal("Belt: it slips.", Only(await ShownAsync("new Finding(\"Belt\", \"it slips.\")")));
    }

    [Fact]
    public async Task A_chart_of_the_readers_own_comes_with_its_data_and_asks_nothing_of_the_network()
    {
        var chart = await ShownAsync("""
            var trace = new Plotly.NET.Trace2D("scatter");
            trace.SetProperty("x", new[] { 1.0, 2.0, 3.0 });
            trace.SetProperty("y", new[] { 1.5, double.NaN, 2.5 });
            Plotly.NET.GenericChart.ofTraceObject(false, trace)
            """);
        Assert.Equal("An interactive chart.", chart.Find(MimeBundle.PlainText));
        var html = chart.Find(Html)!;
        Assert.Contains("id=\"own-chart-1\"", html, StringComparison.Ordinal);
        Assert.Contains("1.5,null,2.5", html, StringComparison.Ordinal);
        Assert.DoesNotMatch("""(src|href)="|require\(|https://cdn""", html);
    }

    [Theory]
    [InlineData("record Pulley(string Name, Length Diameter); new Pulley(\"small\", Length.FromMillimeters(50))", "Diameter: 50 mm")]
    [InlineData("new[] { 1.5, 2.5 }", "[ 1.5, 2.5 ]")]
    [InlineData("new { a = 1, b = \"<&>\" }", "b: <&>")]
    [InlineData(Study + " press.Belts", "Ratio: 3.4")]
    [InlineData("(object)null", "<null>")]
    public async Task What_nobody_registered_is_plain_text(string code, string part) =>
        Assert.Contains(part, Only(await ShownAsync(code)), StringComparison.Ordinal);

    private async Task<MimeBundle> ShownAsync(string code)
    {
        var ran = await session.RunAsync(code);
        Assert.True(ran.Error is null, ran.Error?.Message);
        return Assert.Single(ran.Events.OfType<ReturnEvent>()).Data;
    }

    private static string Only(MimeBundle bundle)
    {
        Assert.Equal([MimeBundle.PlainText], bundle.Data.Keys);
        return bundle.Find(MimeBundle.PlainText)!;
    }
}
