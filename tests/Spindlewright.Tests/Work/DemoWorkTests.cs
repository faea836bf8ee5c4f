using System.Text;
using Spindlewright.Cutting;
using Spindlewright.Foundations;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;
using Spindlewright.Studies;
using UnitsNet;
using Repository = Spindlewright.Tests.Tables.Repository;

namespace Spindlewright.Tests.Work;

/// <summary>The studies of cutting on the demo machines, and facts of the trade.</summary>
public sealed class DemoWorkTests
{
    private static readonly Handbook Handbook = Handbook.FromEmbedded();
    private static readonly Dictionary<string, StudyResults> Results = new(StringComparer.Ordinal);

    public static TheoryData<string> Machines { get; } =
        ["boatyard-fittings-bench", "measured-six-pole-bench", "school-workshop"];

    private static string Text(string machine) => Repository.Read($"data/machines/{machine}.toml");

    private static DrillPress Read(string text)
    {
        var reading = MachineFile.Read(Encoding.UTF8.GetBytes(text), "machine.toml", Handbook);
        return reading.Press ?? throw new InvalidOperationException(string.Join("\n", reading.Faults.Lines()));
    }

    private static StudyResults Of(string machine)
    {
        lock (Results)
            return Results.TryGetValue(machine, out var found) ? found : Results[machine] = StudyResults.Of(Read(Text(machine)), Handbook);
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Frequencies_stay_within_the_settings_and_loaded_speeds_below_unloaded(string machine)
    {
        var results = Of(machine);
        var inverter = results.Press.Inverter;
        Assert.All(results.Chart.Lines.SelectMany(line => line.Points), at => Assert.True(at.Loaded is null || at.Loaded <= at.Unloaded));
        Assert.All(results.Chart.Choices.SelectMany(each => each.Choices), choice =>
            Assert.InRange(choice.Frequency.Hertz, inverter.LowestFrequency.Hertz, inverter.HighestFrequency.Hertz + 1e-9));
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Every_torque_that_can_be_had_stays_at_or_below_its_bound(string machine)
    {
        var results = Of(machine);
        foreach (var at in results.Work.Items.SelectMany(item => item.Belts).Where(at => at.Frequency is not null))
        {
            Assert.True(at.Available <= at.Bound && at.Continuous <= at.Bound && at.Stall <= at.Bound, at.Belt.Name);
            Assert.True(at.Continuous!.Value.NewtonMeters <= at.Available!.Value.NewtonMeters * 1.01 + 1e-6, at.Belt.Name);
        }
        foreach (var choice in results.Chart.Choices.SelectMany(each => each.Choices))
            Assert.True(choice.Continuous <= choice.Bound && choice.ShortTime <= choice.Bound);
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void A_frequency_that_is_given_turns_the_loaded_spindle_at_the_wanted_speed(string machine)
    {
        // Seen from the other side: the loaded line of the chart, read at that frequency.
        var results = Of(machine);
        foreach (var choices in results.Chart.Choices)
            foreach (var choice in choices.Choices)
            {
                var line = results.Chart.Lines.Single(each => each.Belt == choice.Belt).Points;
                var after = line.Index().First(each => each.Item.Frequency.Hertz >= choice.Frequency.Hertz - 1e-9).Index;
                Assert.True(line[after].Loaded >= choices.Speed * 0.999, $"{choices.Speed} on {choice.Belt.Name}");
                Assert.True(after == 0 || line[after - 1].Loaded is null || line[after - 1].Loaded <= choices.Speed * 1.021, $"{choices.Speed} on {choice.Belt.Name}");
            }
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void The_position_with_most_torque_and_the_one_with_least_bound_are_opposite_for_some_speed(string machine)
    {
        var choices = Of(machine).Chart.Choices.Where(each => each.Choices.Count > 1).ToList();
        Assert.Contains(choices, each => each.AreOpposed);
        Assert.All(choices, each => Assert.True(each.LeastBound!.Bound <= each.MostContinuous!.Bound));
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void A_largest_drill_within_the_continuous_envelope_is_never_larger_than_within_the_short_time_one(string machine)
    {
        foreach (var row in Of(machine).LargestDrills.Materials)
        {
            Assert.All(row.Belts, at => Assert.True(at.Continuous is null || at.Continuous.Diameter <= at.ShortTime!.Diameter, row.Material.Id));
            Assert.True(row.ByArm is null || row.ByArm <= row.ByArmWithPilot, row.Material.Id);
        }
    }

    // Common practice, no source: a 0.55 kW six-pole motor geared low takes a piloted 25 mm drill through mild steel plate, and the
    // arm and the column give out before the motor does. Shown on the six-pole demo bench, whose slow position is 4.4 to 1.
    [Fact]
    public void A_piloted_25_mm_drill_goes_through_mild_steel_and_without_the_pilot_the_arm_gives_out_first()
    {
        var piloted = Of("measured-six-pole-bench").Work.Items.Single(item => item.Item.Diameter.Millimeters is > 24.9 and < 25.1
            && item.Item.Operation.Hole is not null);
        Assert.True(piloted.Best!.Margin >= 1, piloted.Words);
        Assert.All(piloted.ArmLimits, limit => Assert.True(limit.Use < 1, limit.Name));
        Assert.InRange(piloted.Torque.NewtonMeters, 13.5, 14.5);
        Assert.InRange(piloted.Thrust!.Value.Newtons, 780, 830);

        var item = piloted.Item;
        var solid = TwistDrillLoad.Of(
            new TabulatedFactors(Handbook.Drilling), item.Material, item.Diameter, item.FeedPerRevolution, item.Condition);
        Assert.InRange(solid.Thrust.Newtons, 5000, 5200);
        Assert.InRange(solid.Thrust / Of("measured-six-pole-bench").Press.Quill.SustainedThrust, 3, 4);
        Assert.True(solid.Torque < piloted.Torque * 1.6);
        Assert.True(piloted.Best.Available / solid.Torque > 1 / (solid.Thrust / Of("measured-six-pole-bench").Press.Quill.SustainedThrust));
    }

    // Common practice, no source: an inverter range of about 7 to 100 Hz turns 245 r/min at 50 Hz into roughly 35 to 490.
    [Fact]
    public void Seven_to_a_hundred_hertz_turn_245_into_35_to_490()
    {
        var facts = Handbook.CuttingFacts;
        var (low, high) = (facts["inverter-span-low"].Required().Value, facts["inverter-span-high"].Required().Value);
        var text = Text("boatyard-fittings-bench")
            .Replace("motor_pulley = \"50 mm\"", "motor_pulley = \"24.5 mm\"", StringComparison.Ordinal)
            .Replace("spindle_pulley = \"170 mm\"", "spindle_pulley = \"150 mm\"", StringComparison.Ordinal);
        var belt = Spindlewright.Studies.Speeds.SpeedStudy.Of(Read(text)).Belts[0];
        Assert.Equal(245, belt.AtBase.Synchronous.RevolutionsPerMinute, 1e-9);
        Assert.Equal(low, belt.AtLowest.Frequency.Hertz);
        Assert.Equal(high, belt.AtHighest.Frequency.Hertz);
        Assert.Equal(35, belt.AtLowest.Synchronous.RevolutionsPerMinute, 1.0);
        Assert.Equal(490, belt.AtHighest.Synchronous.RevolutionsPerMinute, 1e-9);
    }

    // Common practice, no source: bench drills' slowest fixed speed of some 380 r/min is too fast for large cutters in iron and steel.
    [Fact]
    public void The_slowest_fixed_speed_is_too_fast_for_large_drills_and_the_converted_machine_is_not()
    {
        var study = Of("measured-six-pole-bench").CuttingSpeeds;
        foreach (var id in new[] { "mild-steel", "grey-iron", "tool-steel-d2", "stainless-316" })
        {
            var row = study.Materials.Single(each => each.Material.Id == id);
            Assert.InRange(row.TooFastFromFixed.Millimeters, 5, 40);
            Assert.True(row.TooFastFrom.Millimeters > 60, id);
        }
    }

    [Fact]
    public void A_material_of_ones_own_is_used_and_shown()
    {
        var press = Read(Text("boatyard-fittings-bench").Replace("[[work]]\nname = \"cleat bolt", """
            [[material]]
            id = "old-cleats"
            like = "bronze"
            torque_factor = 10000
            slowest_speed = "20 m/min"
            fastest_speed = "30 m/min"

            [[work]]
            name = "cleat bolt
            """.TrimEnd(), StringComparison.Ordinal).Replace("material = \"bronze\"\ndiameter = \"10.5 mm\"", "material = \"old-cleats\"\ndiameter = \"10.5 mm\"", StringComparison.Ordinal));
        var own = Assert.Single(press.OwnMaterials);
        Assert.Equal(Provenance.Yours, own.TorqueFactor.Provenance);
        Assert.Equal(Provenance.FromMemory, own.ThrustFactor.Provenance);
        Assert.Equal("old-cleats", press.Work[0].Material.Id);
    }

    [Theory]
    [InlineData("material = \"grey-iron\"\ndiameter = \"10 mm\"", "material = \"gray-iron\"\ndiameter = \"10 mm\"", "did you mean grey-iron?")]
    [InlineData("material = \"grey-iron\"\ndiameter = \"18 mm\"\nfeed", "material = \"grey-iron\"\nhardness = \"400 HB\"\ndiameter = \"18 mm\"\nfeed", "the nearest known material is grey-iron-hard")]
    [InlineData("material = \"grey-iron\"\ndiameter = \"18 mm\"\nfeed", "material = \"grey-iron\"\nhardness = \"240 HB\"\ndiameter = \"18 mm\"\nfeed", "the material of that hardness is grey-iron-hard")]
    [InlineData("thread = \"M8\"", "thread = \"M8x2\"", "no such thread")]
    [InlineData("profile = \"A\"", "profile = \"Q\"", "no such section")]
    [InlineData("diameter = \"18 mm\"\nfeed", "diameter = \"200 mm\"\nfeed", "1.6 mm to 76 mm")]
    [InlineData("centre_distance = \"420 mm\"", "centre_distance = \"90 mm\"", "do not touch")]
    public void A_fault_says_what_is_wrong_and_what_is_accepted(string right, string wrong, string words)
    {
        var text = Text("boatyard-fittings-bench");
        Assert.Contains(right, text, StringComparison.Ordinal);
        var reading = MachineFile.Read(
            Encoding.UTF8.GetBytes(text.Replace(right, wrong, StringComparison.Ordinal)), "machine.toml", Handbook);
        Assert.Null(reading.Press);
        Assert.Contains(words, string.Join("\n", reading.Faults.Lines()), StringComparison.Ordinal);
    }
}
