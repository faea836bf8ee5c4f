using System.Text.RegularExpressions;
using Spindlewright.Figures.Wording;
using Spindlewright.Foundations;

namespace Spindlewright.Figures.Tests;

public partial class WordingTests
{
    [Fact]
    public void The_words_say_axes_and_ranges_and_the_bound_before_the_model()
    {
        var text = Specimens.LockedRotor().AltText;
        Assert.Contains("torque at the motor shaft (N m) against frequency (Hz).", text, StringComparison.Ordinal);
        Assert.Contains("Bound: 28 N m over 7 to 80 Hz.", text, StringComparison.Ordinal);
        Assert.True(text.IndexOf("Bound:", StringComparison.Ordinal) < text.IndexOf(
            "As modelled", StringComparison.Ordinal));
        Assert.Contains("Measured: 3 points, 4.2 to 8 N m.", text, StringComparison.Ordinal);
        Assert.Contains("Marked at 13 Hz, 21 N m: here boost matters most.", text, StringComparison.Ordinal);
        Assert.Contains("Limit: base frequency 50 Hz.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Frames_say_which_is_drawn() => Assert.Contains(
        "Drawn at boost 4 %; also computed at 0 %, 2 %, 6 % and 8 %.", Specimens.VoltsPerHertz().AltText,
            StringComparison.Ordinal);

    [Fact]
    public void Bars_are_told_by_name() => Assert.Contains(
        "As set: belt position 1 55.4 to 633 r/min; belt position 2 90.7 to 1036 r/min",
            Specimens.SpeedBands().AltText, StringComparison.Ordinal);

    [Fact]
    public void Many_series_are_summed_up()
    {
        var figure = FigureRecordTests.Make(
            [.. Enumerable.Range(1, 9).Select(i => (Mark)new Curve(Role.SetCurve, [1, 2], [i, i * 2], $"s{i}"))]);
        Assert.Contains("As set: 9 of them, 1 to 18 V.", figure.AltText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, 4, 4, "highest from 2 to 3 Hz")]
    [InlineData(3, 4, 3.9, "highest at 2 Hz")]
    // The last bits of a computed level top are anybody's.
    [InlineData(3, 4, 4.000000000000001, "highest from 2 to 3 Hz")]
    [InlineData(4, 4, 3, "highest from 1 to 2 Hz")]
    // Two tops are not a level one.
    [InlineData(4, 3, 4, "highest at 1 Hz")]
    public void A_level_top_is_told_from_end_to_end(double first, double second, double third, string told) =>
        Assert.Contains(
            told, FigureRecordTests.Make(new Curve(Role.SetCurve, [1, 2, 3], [first, second, third])).AltText,
            StringComparison.Ordinal);

    [Fact]
    public void Gaps_are_mentioned() => Assert.Contains(
        "with gaps", FigureRecordTests.Make(new Curve(Role.SetCurve, [1, 2, 3], [1, double.NaN, 3])).AltText,
            StringComparison.Ordinal);

    [Fact]
    public void Plain_text_carries_notes_cautions_and_sources()
    {
        var lines = FigureText.Plain(Specimens.TorqueAgainstSpeed()).Split('\n');
        Assert.Contains(lines, l => l.StartsWith("Caution: ", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("Note: ", StringComparison.Ordinal));
        Assert.Contains("Source: Invented numbers of a bench drill (own arithmetic)", lines);
    }

    [Fact]
    public void No_role_claims_more_than_a_comparison_can_show()
    {
        var words = Enum.GetValues<Role>()
            .SelectMany(r => new Side?[] { null, Side.Capability, Side.Hazard }.Select(s => r.InWords(s))).ToList();
        Assert.All(words, w => Assert.DoesNotMatch(Forbidden(), w));
        Assert.Distinct(words);
        Assert.DoesNotMatch(Forbidden(), Html.UpgradeScript.Source());
    }

    [GeneratedRegex(@"\b(safe|harmless|acceptable|OK|low risk)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Forbidden();
}
