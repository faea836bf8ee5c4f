using Spindlewright.Cutting;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies;
using Spindlewright.Studies.Sheets;
using Spindlewright.Tests.Studies;
using UnitsNet;

namespace Spindlewright.Tests.Sheets;

/// <summary>What stands on the sheets for the wall.</summary>
public sealed class SheetDataTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();
    private static readonly IReadOnlyList<StudyResults> All = [.. Presses.Demo.Select(press => StudyResults.Of(press, Handbook))];

    /// <summary>The drill before a metric tap is the nominal diameter less the pitch (ISO 2306, from memory; common practice).</summary>
    [Fact]
    public void The_drill_before_a_metric_tap_is_the_diameter_less_the_pitch_to_a_tenth() =>
        Assert.All(Handbook.Threads.Where(row => row.Name.StartsWith('M')), row =>
            Assert.InRange((row.Major - row.Pitch - row.TapDrill).Millimeters, -0.1, 0.1));

    /// <summary>Number and letter drills beside metric tap drills as shop tables print them (common practice, no source).</summary>
    [Theory]
    [InlineData("M5", "number 19")]
    [InlineData("M6", "number 9")]
    [InlineData("M8", "letter H")]
    [InlineData("M10", null)]
    public void The_near_drill_of_the_inch_series_is_the_one_that_shop_tables_print(string thread, string? near) =>
        Assert.Equal(near, ThreadTable.Of(All[0], Handbook).Entries.Single(entry => entry.Thread.Name == thread).OtherDrill?.InWords);

    [Fact]
    public void Clearance_holes_clear_the_thread_and_grow_from_fine_to_coarse() =>
        Assert.All(Handbook.ClearanceHoles, row =>
            Assert.True(row.Major < row.Fine && row.Fine < row.Medium && row.Medium < row.Coarse, row.Key));

    /// <summary>A 10 mm drill of high-speed steel in grey iron is charted near 800 r/min (common practice, no source).</summary>
    [Fact]
    public void The_wall_chart_has_a_ten_millimetre_drill_in_grey_iron_near_800()
    {
        var chart = WallChart.Of(All[0], CuttingMaterial.Of("grey-iron", Handbook), Handbook);
        var drilling = chart.Lines.Single(line => line.Words.StartsWith("drilling", StringComparison.Ordinal));
        Assert.InRange(drilling.At(Length.FromMillimeters(10)).RevolutionsPerMinute, 700, 900);
        Assert.True(chart.Lines.Single(line => line.IsOwn).CuttingSpeed < drilling.CuttingSpeed);
    }

    /// <summary>Two diameters on one line turn at speeds in inverse proportion: n = v/(π d).</summary>
    [Fact]
    public void A_line_of_the_wall_chart_halves_its_speed_at_twice_the_diameter() => Assert.All(
        WallChart.Of(All[0], CuttingMaterial.Of("mild-steel", Handbook), Handbook).Lines, line => Assert.Equal(
            2, line.At(Length.FromMillimeters(5)) / line.At(Length.FromMillimeters(10)), 1e-9));

    [Fact]
    public void The_plate_marks_what_passes_the_spindles_limit_and_a_load_only_slows() => Assert.All(All, results =>
        Assert.All(SpeedPlate.Of(results).Rows, row => Assert.All(row.Speeds.Zip(SpeedPlate.Of(results).Frequencies), each =>
        {
            Assert.Equal(each.First.Unloaded > results.Press.Spindle.HighestSpeed, each.First.PassesLimit);
            Assert.True(each.First.Loaded is not { } loaded || loaded < each.First.Unloaded);
            Assert.True(each.First.PassesLimit || row.HighestPermitted is null || each.Second <= row.HighestPermitted);
            Assert.True(row.Bound > row.StatedTorque);
        })));

    [Fact]
    public void The_plate_keeps_the_ends_and_the_base_frequency_and_no_two_are_alike() => Assert.All(All, results =>
    {
        var hertz = SpeedPlate.Of(results).Frequencies.Select(each => each.Hertz).ToList();
        var inverter = results.Press.Inverter;
        Assert.Equal(inverter.LowestFrequency.Hertz, hertz[0]);
        Assert.Equal(inverter.HighestFrequency.Hertz, hertz[^1]);
        Assert.Contains(inverter.Curve.BaseFrequency.Hertz, hertz);
        Assert.All(hertz.Zip(hertz.Skip(1)), pair => Assert.True(pair.Second > 1.1 * pair.First));
    });

    [Fact]
    public void Every_setting_of_the_card_is_within_what_arm_belt_heat_and_spindle_allow() => Assert.All(All, results =>
    {
        var card = DrillCard.Of(results, Handbook);
        Assert.Contains(card.Entries, entry => entry.Setting is not null);
        Assert.All(card.Entries, entry =>
        {
            if (entry.Setting is not { } setting)
            {
                Assert.NotEqual("", entry.Reason);
                return;
            }
            var (forEver, seconds) = results.Heat.Spindle.Single(each => each.Belt.Name == setting.Belt.Name).At(setting.Frequency);
            Assert.True(entry.Feed.Load!.Torque <= (setting.IsShortTime ? seconds : forEver));
            Assert.True(entry.Feed.Load.Thrust.Newtons <= results.Press.Quill.SustainedThrust.Newtons * (1 + 1e-6));
            Assert.False(results.Press.Spindle.HighestSpeed < setting.Speed);
            Assert.True(setting.Bound > entry.Feed.Load.Torque);
        });
    });

    [Theory]
    [InlineData("materials = [\"grey-irn\"]", "grey-iron")]
    [InlineData("threads = [\"M7\"]", "M6")]
    [InlineData("plate_width = \"10 mm\"", "60")]
    [InlineData("drills = [\"90 mm\"]", "76")]
    [InlineData("drills = []", "1 to 9")]
    public void A_wish_that_cannot_be_is_told_with_what_is_accepted(string line, string accepted)
    {
        var text = File.ReadAllText(TestSupport.Repository.File("data/machines/school-workshop.toml")) + $"\n[sheets]\n{line}\n";
        var read = MachineFile.Read(System.Text.Encoding.UTF8.GetBytes(text), "bench.toml", Handbook);
        Assert.Null(read.Press);
        Assert.Contains(accepted, Assert.Single(read.Faults.InOrder).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Wishes_choose_what_is_printed()
    {
        var text = File.ReadAllText(TestSupport.Repository.File("data/machines/school-workshop.toml"))
            + "\n[sheets]\nmaterials = [\"bronze\"]\nthreads = [\"1/4-20 UNC\"]\ndrills = [\"12 mm\", \"7 mm\"]\n";
        var press = MachineFile.Read(System.Text.Encoding.UTF8.GetBytes(text), "bench.toml", Handbook).Press!;
        Assert.Equal(["bronze"], SheetChoice.Materials(press, Handbook).Select(material => material.Id));
        Assert.Equal(["1/4-20 UNC"], SheetChoice.Threads(press, Handbook).Select(thread => thread.Name));
        Assert.Equal([7, 12], SheetChoice.Drills(press).Select(drill => (double)drill.Millimeters));
    }
}
