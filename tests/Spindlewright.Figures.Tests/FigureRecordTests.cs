using System.Collections.Immutable;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public class FigureRecordTests
{
    private static readonly Axis Hz = new("frequency", "Hz");
    private static readonly Axis Volts = new("voltage", "V");
    private static readonly Mark Line = new Curve(Role.SetCurve, [1, 2], [3, 4]);

    public static Figure Make(params ImmutableArray<Mark> marks) => new("some-figure", "Some figure", Hz, Volts, marks);

    [Theory]
    [InlineData("")]
    [InlineData("Torque")]
    [InlineData("two words")]
    [InlineData("trailing-")]
    [InlineData("<script>")]
    public void An_id_that_is_not_kebab_case_is_refused(string id) =>
        Assert.Contains("hyphens", Assert.Throws<PartException>(() => new Figure(id, "t", Hz, Volts, [Line])).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_logarithmic_axis_refuses_zero_and_less_and_says_which_mark(double value)
    {
        var log = new Axis("speed", "r/min", AxisScale.Logarithmic);
        var fault = Assert.Throws<PartException>(
            () => new Figure("f", "t", log, Volts, [new Curve(Role.SetCurve, [10, value], [1, 2], "position 2")]));
        Assert.Contains("position 2, as set", fault.Message, StringComparison.Ordinal);
        Assert.Contains("no zero", fault.Message, StringComparison.Ordinal);
        Assert.Contains("figure f", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Infinity_is_refused_and_NaN_is_a_gap()
    {
        Assert.Throws<PartException>(() => new Curve(Role.SetCurve, [1, 2], [1, double.PositiveInfinity]));
        Assert.Throws<PartException>(() => new Curve(Role.SetCurve, [1, double.NaN], [1, 2]));
        Assert.Equal(2, Make(new Curve(Role.SetCurve, [1, 2], [1, double.NaN])).Marks[0].Extent.Count());
    }

    [Fact]
    public void Nothing_but_gaps_is_no_figure() =>
        Assert.Throws<PartException>(() => Make(new Curve(Role.SetCurve, [1], [double.NaN])));

    [Fact]
    public void Unequal_lengths_upside_down_bands_and_turned_bars_are_refused()
    {
        Assert.Throws<PartException>(() => new Curve(Role.SetCurve, [1, 2], [1]));
        Assert.Throws<PartException>(() => new Band(Role.Handbook, [1, 2], [1, 5], [2, 4]));
        Assert.Throws<PartException>(() => new Band(Role.Handbook, [2, 1], [1, 1], [2, 2]));
        Assert.Throws<PartException>(() => new RangeBar(Role.SetCurve, 1, 5, 4));
        Assert.Throws<PartException>(() => new Points(Role.Measured, [1], [1], lower: [0.5]));
        Assert.Throws<PartException>(() => new Curve(Role.SetCurve, default, default));
    }

    [Theory]
    [InlineData(Role.AsModelled)]
    [InlineData(Role.IdealBoost)]
    [InlineData(Role.CurrentLimited)]
    public void A_modelled_torque_never_stands_without_its_bound(Role role)
    {
        var torque = new Axis("torque", "N m");
        Mark modelled = new Curve(role, [1, 2], [3, 4]);
        var fault = Assert.Throws<PartException>(() => new Figure("f", "t", Hz, torque, [modelled]));
        Assert.Contains("together with its bound", fault.Message, StringComparison.Ordinal);
        Assert.Equal(2, new Figure(
            "f", "t", Hz, torque, [modelled, new Curve(Role.Bound, [1, 2], [9, 9])]).Marks.Length);
        Assert.Single(new Figure("f", "t", Hz, Volts, [modelled]).Marks);
    }

    [Fact]
    public void The_bound_is_asked_for_in_every_frame()
    {
        var torque = new Axis("torque", "lbf in");
        var frames = new FrameSet("boost", "%", [new(0, [new Curve(Role.AsModelled, [1, 2], [3, 4])])], 0);
        Assert.Throws<PartException>(() => new Figure("f", "t", Hz, torque, [], frames));
    }

    [Fact]
    public void Frames_hold_the_same_marks_and_each_value_once()
    {
        Frame at0 = new(0, [Line]), at2 = new(2, [Line, Line]), again = new(0, [Line]);
        Assert.Contains("every frame", Assert.Throws<PartException>(
            () => new FrameSet("boost", "%", [at0, at2], 0)).Message, StringComparison.Ordinal);
        Assert.Contains("twice", Assert.Throws<PartException>(
            () => new FrameSet("boost", "%", [at0, again], 0)).Message, StringComparison.Ordinal);
        Assert.Contains("index 1", Assert.Throws<PartException>(() => new FrameSet("boost", "%", [at0], 1)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_still_form_shows_the_steady_marks_and_one_frame()
    {
        var figure = Specimens.VoltsPerHertz();
        Assert.Equal(figure.Marks.Length + 1, figure.StillMarks.Length);
        Assert.Equal(4, figure.Frames!.Shown.Value);
        Assert.Equal("4 %", figure.Frames.NameOf(figure.Frames.Shown));
    }

    [Fact]
    public void Adding_a_mark_makes_a_new_figure_with_new_words()
    {
        var figure = Make(Line);
        var more = figure.Adding(new Rule(Role.Limit, RuleDirection.Level, 222, "ceiling 222 V"));
        Assert.Single(figure.Marks);
        Assert.Contains("ceiling 222 V", more.AltText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_given_alternative_text_is_kept() =>
        Assert.Equal("Mine.", new Figure("f", "t", Hz, Volts, [Line], altText: "Mine.").AltText);

    [Fact]
    public void A_figure_survives_the_way_through_json()
    {
        foreach (var figure in Specimens.All)
        {
            var json = FigureJson.Write(figure);
            var back = FigureJson.ReadFigure(json);
            Assert.Equal(json, FigureJson.Write(back));
            Assert.Equal(Svg.SvgWriter.Write(figure), Svg.SvgWriter.Write(back));
            Assert.DoesNotContain("NaN", json, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"id\":\"a\",\"title\":\"t\",\"marks\":[{\"kind\":\"teapot\"}]}")]
    public void What_is_no_figure_is_refused_with_a_message(string json)
    {
        var fault = Record.Exception(() => FigureJson.ReadFigure(json));
        Assert.True(fault is FormatException or PartException, fault?.GetType().Name ?? "no fault");
    }
}
