using System.Diagnostics;
using System.Text;
using Spindlewright.Foundations;
using Spindlewright.Machines.Text;
using UnitsNet;

namespace Spindlewright.Tests.MachineText;

/// <summary>Reading a text against declared sections.</summary>
public class MachineTextReaderTests
{
    [Theory]
    [InlineData("\n", "")]
    [InlineData("\r\n", "")]
    [InlineData("\n", "\uFEFF")]
    [InlineData("\r\n", "\uFEFF")]
    public void A_sound_text_gives_its_values_with_any_line_ends_and_with_a_byte_order_mark(string lineEnd, string mark)
    {
        var read = BenchSpec.Read(mark + BenchSpec.Sound.Replace("\n", lineEnd, StringComparison.Ordinal));
        Assert.Empty(read.Faults.Lines());
        Assert.Equal("bench", read.Root.Get(BenchSpec.Title));
        var motor = read.Root.Only(BenchSpec.Motor)!;
        Assert.Equal(750m, motor.Get(BenchSpec.RatedPower)!.Value.Watts);
        Assert.Equal(4, motor.Get(BenchSpec.Poles));
        Assert.Equal(0.78, motor.Get(BenchSpec.Efficiency)!.Value.DecimalFractions);
        Assert.True(motor.Get(BenchSpec.Fan));
        Assert.Equal('D', motor.Get(BenchSpec.Connection));
        Assert.Equal(9.5, motor.Only(BenchSpec.Circuit)!.Get(BenchSpec.R1)!.Value.Ohms);
        var belts = read.Root.Each(BenchSpec.Belt);
        Assert.Equal(["belt[1]", "belt[2]"], belts.Select(belt => belt.Path));
        Assert.Equal([60, 63.5], belts[0].Get(BenchSpec.Steps)!.Select(step => step.Millimeters));
        Assert.True(read.Root.IsSound);
    }

    [Theory]
    [InlineData("title = 'b'\nmotor.rated_power = '1 hp'\nmotor.poles = 2\nmotor.circuit.r1 = '1 ohm'\n")]
    [InlineData("title = 'b'\nmotor = { rated_power = '1 hp', poles = 2, circuit = { r1 = '1 ohm' } }\n")]
    [InlineData("title = 'b'\n[motor]\nrated_power = '1 hp'\npoles = 2\ncircuit.r1 = '1 ohm'\n")]
    [InlineData("title = 'b'\n['motor']\n\"rated_power\" = '1 hp'\npoles = 2\n[motor.circuit]\nr1 = '1 ohm'\n")]
    public void Every_way_to_write_a_section_gives_the_same_values(string text)
    {
        var read = BenchSpec.Read(text);
        Assert.Empty(read.Faults.Lines());
        Assert.Equal(1, read.Root.Only(BenchSpec.Motor)!.Only(BenchSpec.Circuit)!.Get(BenchSpec.R1)!.Value.Ohms);
    }

    [Theory]
    [InlineData("rated_power", "rated_power = \"1,5 kW\"",
        "bench.toml:4:17 motor.rated_power: \"1,5 kW\": the decimal mark is a point; write 1.5; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "rated_power = \"5 mm\"",
        "bench.toml:4:18 motor.rated_power: \"5 mm\": mm is a length; a power is wanted; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "rated_power = 0.75",
        "bench.toml:4:15 motor.rated_power: 0.75 has no unit; write it with one and in quotes, \"0.75 W\" or \"0.75 kW\"; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "rated_power = nan",
        "bench.toml:4:15 motor.rated_power: nan has no unit; write it with one and in quotes, \"nan W\" or \"nan kW\"; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "rated_power = true",
        "bench.toml:4:15 motor.rated_power: true cannot stand here; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "rated_power = [1]",
        "bench.toml:4:15 motor.rated_power: a list cannot stand here; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("rated_power", "# left out",
        "bench.toml:3:1 motor.rated_power: the key is missing; write rated_power = \"0.75 kW\"; "
        + "accepted: a power in W, kW, hp, PS, in quotes")]
    [InlineData("efficiency", "efficiency = inf",
        "bench.toml:6:14 motor.efficiency: inf: a finite number is wanted; "
        + "accepted: a ratio as a plain number or in %, pu")]
    [InlineData("efficiency", "efficiency = \"0,78\"",
        "bench.toml:6:16 motor.efficiency: \"0,78\": the decimal mark is a point; write 0.78; "
        + "accepted: a ratio as a plain number or in %, pu")]
    [InlineData("poles", "poles = 3000000000000",
        "bench.toml:5:9 motor.poles: 3000000000000 lies outside 2 to 12; "
        + "accepted: a whole number from 2 to 12, without quotes")]
    [InlineData("poles", "poles = \"4\"",
        "bench.toml:5:9 motor.poles: \"4\" cannot stand here; "
        + "accepted: a whole number from 2 to 12, without quotes")]
    [InlineData("own_fan", "own_fan = \"yes\"",
        "bench.toml:7:11 motor.own_fan: \"yes\" cannot stand here; "
        + "accepted: true or false, without quotes")]
    [InlineData("connection", "connection = \"dleta\"",
        "bench.toml:8:14 motor.connection: \"dleta\" is not one of the words; did you mean \"delta\"?; "
        + "accepted: \"star\" or \"delta\"")]
    [InlineData("title", "title = \"\"",
        "bench.toml:1:9 title: the text is empty; accepted: a line of text of 1 to 40 characters, in quotes")]
    [InlineData("title", "title = \"a\\nb\"",
        "bench.toml:1:9 title: the text has line ends or control characters; "
        + "accepted: a line of text of 1 to 40 characters, in quotes")]
    [InlineData("steps", "steps = []",
        "bench.toml:14:9 belt[1].steps: the list has 0 values; "
        + "accepted: 1 to 6 values in square brackets, each a length in mm, cm, m, µm, in, ft, thou, in quotes")]
    [InlineData("steps", "steps = [\"60 mm\", \"90 nm\"]",
        "bench.toml:14:23 belt[1].steps: \"90 nm\": 'nm' is no unit of a length; did you mean mm?; "
        + "accepted: a length in mm, cm, m, µm, in, ft, thou, in quotes")]
    [InlineData("efficiency", "eficiency = 0.78",
        "bench.toml:6:1 motor.eficiency: the key eficiency is not known in [motor]; did you mean efficiency?; "
        + "accepted: rated_power, poles, efficiency, own_fan, connection, friction, circuit")]
    [InlineData("efficiency", "r1 = \"9 ohm\"",
        "bench.toml:6:1 motor.r1: the key r1 is not known in [motor]; it belongs in [motor.circuit]; "
        + "accepted: rated_power, poles, efficiency, own_fan, connection, friction, circuit")]
    [InlineData("[motor.circuit]", "[motor.circit]",
        "bench.toml:10:1 motor.circit: the section circit is not known in [motor]; did you mean circuit?; "
        + "accepted: rated_power, poles, efficiency, own_fan, connection, friction, circuit")]
    [InlineData("efficiency", "poles = 6", "bench.toml:6:1: motor.poles is given twice; it stands first on line 5")]
    [InlineData("[motor.circuit]", "[motor]\n[motor.circuit]", "bench.toml:10:1: motor is given twice; it stands first on line 3")]
    public void A_fault_names_place_key_and_what_is_accepted(string line, string replacement, string wanted)
    {
        var read = BenchSpec.Read(BenchSpec.With(line, replacement));
        Assert.Equal([wanted], read.Faults.Lines());
        Assert.False(read.Root.IsSound);
    }

    [Theory]
    [InlineData("poles", "poles = 4 poles", "write poles = \"4 poles\"")]
    [InlineData("rated_power", "rated_power = 0.75 kW # plate", "write rated_power = \"0.75 kW\"")]
    [InlineData("rated_power", "rated_power = 1,5", "write rated_power = \"1,5\"")]
    [InlineData("rated_power", "rated_power = “0.75 kW”", "quotes are the straight ones")]
    [InlineData("rated_power", "rated power = \"0.75 kW\"", "write rated_power")]
    [InlineData("rated_power", "rated_power: \"0.75 kW\"", "write rated_power = …")]
    [InlineData("rated_power", "rated_power =", "a value is missing after rated_power =")]
    [InlineData("rated_power", "rated_power = \"0.75 kW", "not closed")]
    [InlineData("connection", "connection = delta", "write connection = \"delta\"")]
    [InlineData("[motor]", "[motor", "write [motor]")]
    [InlineData("[motor]", "motor]", "write [motor]")]
    [InlineData("poles", "poles", "write [poles]")]
    public void Broken_syntax_says_what_to_write_and_what_is_not_looked_for_yet(
        string line, string replacement, string says)
    {
        var lines = BenchSpec.Read(BenchSpec.With(line, replacement)).Faults.Lines().ToList();
        Assert.Equal(2, lines.Count);
        Assert.Contains(says, lines[0], StringComparison.Ordinal);
        var number = 1 + BenchSpec.Sound.Split('\n').ToList().FindIndex(
            text => text.StartsWith(line, StringComparison.Ordinal));
        Assert.StartsWith($"bench.toml:{number}:", lines[0], StringComparison.Ordinal);
        Assert.Contains("missing, unknown and doubled keys", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_are_told_at_once_in_the_order_of_the_text()
    {
        var read = BenchSpec.Read("""
            titel = "bench"
            [motor]
            rated_power = "1,5 kW"
            poles = 5.5
            conection = "delta"
            [bellt]
            steps = 3
            """);
        Assert.Equal(
            ["title", "titel", "motor.rated_power", "motor.poles", "motor.conection", "bellt"],
            read.Faults.InOrder.Select(fault => fault.Key));
    }

    [Fact]
    public void Values_on_sound_lines_are_judged_even_where_the_syntax_is_broken()
    {
        var read = BenchSpec.Read("[motor]\nrated_power = \"1,5 kW\"\npoles = 4 p\nefficiency = \"x\"\n");
        Assert.Equal([2, 3, 4], read.Faults.InOrder.Select(fault => fault.Line));
    }

    [Fact]
    public void At_most_twenty_faults_are_shown_and_the_rest_counted()
    {
        var text = string.Concat(Enumerable.Range(0, FaultList.MostKept - 1).Select(i => $"unknown_{i} = 1\n"));
        var read = BenchSpec.Read(BenchSpec.Sound.Replace("[motor]", "[motor]\n" + text, StringComparison.Ordinal));
        Assert.All(read.Faults.InOrder, fault => Assert.StartsWith("motor.unknown_", fault.Key, StringComparison.Ordinal));
        Assert.Equal(FaultList.MostKept - 1, read.Faults.Count);
        var lines = read.Faults.Lines().ToList();
        Assert.Equal(21, lines.Count);
        Assert.Equal($"bench.toml: and {FaultList.MostKept - 21} more", lines[^1]);
    }

    /// <summary>The TOML library compares names by their hash codes, which differ from run to run.</summary>
    [Fact]
    public void Two_names_of_one_hash_code_are_two_names()
    {
        var byHash = new Dictionary<int, string>();
        var (one, other) = ("", "");
        for (var i = 0; one.Length == 0; i++)
        {
            other = $"unknown_{i}";
            if (byHash.TryGetValue(other.GetHashCode(), out var earlier)) one = earlier;
            else byHash.Add(other.GetHashCode(), other);
        }
        var text = BenchSpec.Sound.Replace("[motor]", $"[motor]\n{one} = 1\n{other} = 1", StringComparison.Ordinal);
        Assert.Equal([$"motor.{one}", $"motor.{other}"], BenchSpec.Read(text).Faults.InOrder.Select(fault => fault.Key));
    }

    [Theory]
    [InlineData("a = 1\na = 2\n", 2)]
    [InlineData("\"a\" = 1\na = 2\n", 2)]
    [InlineData("a.b = 1\na = 2\n", 2)]
    [InlineData("m = 1\n[m]\ny = 2\n", 2)]
    [InlineData("[m]\na.b = 1\na.b = 2\n", 3)]
    [InlineData("[m]\nx = 1\n[m]\ny = 2\n", 3)]
    [InlineData("[m]\nx = 1\n[m.x]\ny = 2\n", 3)]
    [InlineData("[a]\nb.c = 1\n[a.b]\nd = 1\n", 3)]
    [InlineData("[[m]]\n[m]\n", 2)]
    [InlineData("[m]\n[[m]]\n", 2)]
    [InlineData("t = { a = 1, a = 2 }\n", 1)]
    public void A_name_given_twice_is_told_whatever_way_it_is_spelt(string text, int line) =>
        Assert.Contains(BenchSpec.Read(text).Faults.InOrder, fault =>
            fault.Line == line && fault.Message.Contains("is given twice", StringComparison.Ordinal));

    [Theory]
    [InlineData("title = 'b'\n[[motor]]\npoles = 4\n", "this section stands once; write it as [motor]")]
    [InlineData("title = 'b'\nmotor = 3\n", "this section stands once; write it as [motor]")]
    [InlineData(
        "title = 'b'\n[motor]\nrated_power = '1 hp'\npoles = 2\n[belt]\nsteps = ['1 in']\n",
        "this section may stand several times; write it as [[belt]]")]
    [InlineData("title = 'b'\n", "the section [motor] is missing")]
    public void A_section_of_the_wrong_sort_or_missing_is_told(string text, string says) =>
        Assert.Contains(says, Assert.Single(BenchSpec.Read(text).Faults.Lines()), StringComparison.Ordinal);

    [Fact]
    public void A_default_stands_on_both_sides_and_is_noted_as_used()
    {
        var read = BenchSpec.Read(BenchSpec.Sound);
        var friction = read.Root.Only(BenchSpec.Motor)!.Sided(BenchSpec.Friction);
        Assert.Equal(0.2, friction.Value.Capability.NewtonMeters);
        Assert.Equal(0, friction.Value.Hazard.NewtonMeters);
        var used = Assert.Single(read.DefaultsUsed);
        Assert.Equal("motor.friction", used.Key);
        Assert.Equal("\"0.2 N·m\"", used.Value.Capability);
        Assert.Equal(Provenance.OwnChoice, used.Value.Provenance);
    }

    [Fact]
    public void A_figure_of_the_user_stands_on_both_sides_and_is_theirs()
    {
        var read = BenchSpec.Read(BenchSpec.With("own_fan", "friction = \"0.1 N m\""));
        var friction = read.Root.Only(BenchSpec.Motor)!.Sided(BenchSpec.Friction);
        Assert.Equal(friction.Value.Capability, friction.Value.Hazard);
        Assert.Equal(Provenance.Yours, friction.Provenance);
        Assert.Empty(read.DefaultsUsed);
    }

    [Fact]
    public void A_refusal_of_a_part_becomes_a_fault_at_its_key()
    {
        var read = BenchSpec.Read(BenchSpec.With("rated_power", "rated_power = \"-0.75 kW\""));
        var motor = read.Root.Only(BenchSpec.Motor)!;
        Assert.True(motor.IsSound);
        var part = motor.Make(() => new Part(motor.Get(BenchSpec.RatedPower)!.Value));
        Assert.Null(part);
        Assert.False(motor.IsSound);
        Assert.Equal(
            ["bench.toml:4:15 motor.rated_power: motor: rated power is -0.75 kW; accepted: a finite value above 0"],
            read.Faults.Lines());
    }

    [Fact]
    public void A_refusal_of_a_quantity_that_no_key_holds_becomes_a_fault_of_the_section()
    {
        var read = BenchSpec.Read(BenchSpec.Sound);
        var motor = read.Root.Only(BenchSpec.Motor)!;
        Assert.Null(motor.Make<Part>(() => throw new PartException("motor", "slip", "1.2", "0 to 1", "so")));
        var fault = Assert.Single(read.Faults.InOrder);
        Assert.Equal((3, "motor", "motor: slip is 1.2 (so)"), (fault.Line, fault.Key, fault.Message));
    }

    [Fact]
    public void A_part_is_not_made_of_a_section_with_faults()
    {
        var read = BenchSpec.Read(BenchSpec.With("rated_power", "rated_power = \"5 mm\""));
        Assert.Null(read.Root.Only(BenchSpec.Motor)!.Make<Part>(() => throw new InvalidOperationException("made")));
    }

    [Fact]
    public void A_key_that_the_section_does_not_declare_is_a_mistake_of_the_program() =>
        Assert.Throws<InvalidOperationException>(() => BenchSpec.Read(BenchSpec.Sound).Root.Get(BenchSpec.Poles));

    [Fact]
    public void Columns_count_characters_as_a_reader_does()
    {
        var read = BenchSpec.Read("title = \"😀é\"\n[motor]\nrated_power = \"1 hp\"\npoles = 2\nmärz = 1\n");
        Assert.Equal((5, 2), (read.Faults.InOrder[0].Line, read.Faults.InOrder[0].Column));
        read = BenchSpec.Read("title = \"b\"\nmotor = { efficiency = \"é\", rated_power = \"😀\", poles = 2 }\n");
        Assert.Equal([(2, 25), (2, 44)], read.Faults.InOrder.Select(fault => (fault.Line, fault.Column)));
    }

    private sealed class Part(Power power)
    {
        public Power Power { get; } = Guard.Positive(power, "motor", "rated power");
    }
}
