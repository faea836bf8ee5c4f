using System.Security.Cryptography;

namespace Spindlewright.Kernel.Tests.Commands;

public class BadInputTests
{
    // Catches a program that hangs, not a slow machine: unloaded an answer takes about a second.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public static TheoryData<string, string, string[]> ChangedLines => new()
    {
        { "power = \"0.75 kW\"", "powr = \"0.75 kW\"", ["motor.powr", "power"] },
        { "power = \"0.75 kW\"", "power = \"0.75 mm\"", ["motor.power", "length", "kW"] },
        { "power = \"0.75 kW\"", "power = \"1,5 kW\"", ["motor.power", "write 1.5"] },
        { "power = \"0.75 kW\"", "power = \"-0.75 kW\"", ["motor.power", "10"] },
        { "power = \"0.75 kW\"", "power = \"NaN kW\"", ["motor.power"] },
        { "power = \"0.75 kW\"", "power = nan", ["motor.power"] },
        { "speed = \"1430 r/min\"", "speed = \"1510 r/min\"", ["motor.speed", "1500 r/min synchronous"] },
        { "motor_pulley = \"50 mm\"", "motor_pulley = \"0 mm\"", ["belt[1].motor_pulley", "10"] },
        { "poles = 4", "poles = 5", ["motor.poles", "even"] },
        { "material = \"bronze\"", "material = \"bronce\"", ["work[1].material", "did you mean bronze"] },
        { "highest_frequency = \"100 Hz\"", "highest_frequency = \"5 Hz\"", ["inverter.highest_frequency", "lowest"] },
        { "connection = \"delta\"", "connection = \"delat\"", ["motor.connection", "delta"] },
        { "chuck_diameter = \"53 mm\"", "", ["spindle", "chuck_diameter"] },
    };

    [Theory]
    [MemberData(nameof(ChangedLines))]
    public void A_wrong_line_is_told_with_file_line_key_and_what_is_accepted(string replace, string with, string[] told)
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("mine.toml", DemoMachines.Boatyard(replace, with));
        var ended = Program.Run("check", file);
        Refused(ended, told);
        Assert.Matches(@"mine\.toml:\d+:\d+ ", ended.Errors);
    }

    [Fact]
    public void All_faults_are_told_together()
    {
        using var folder = new TemporaryFolder();
        var text = DemoMachines.Boatyard("poles = 4", "poles = 5").Replace("feed = \"0.10 mm/rev\"", "feed = \"0,1 mm\"", StringComparison.Ordinal);
        Refused(Program.Run("check", folder.File("mine.toml", text)), ["motor.poles", "work[1].feed", "work[3].feed"]);
    }

    [Fact]
    public void A_missing_file_is_told() => Refused(Program.Study("--machine", "/nowhere/mine.toml"), ["/nowhere/mine.toml", "no such file"]);

    [Fact]
    public void A_folder_in_place_of_a_file_is_told() => Refused(Program.Run("check", Path.GetTempPath()), ["folder"]);

    [Fact]
    public void Broken_syntax_is_told_with_its_line()
    {
        using var folder = new TemporaryFolder();
        Refused(Program.Run("check", folder.File("mine.toml", "title = \"x\n[supply\nvoltage = \"230 V\"\n")), ["mine.toml:1"]);
    }

    [Fact]
    public void Random_bytes_ten_megabytes_and_deep_nesting_are_told()
    {
        using var folder = new TemporaryFolder();
        var noise = Path.Combine(folder.Path, "noise.toml");
        var bytes = new byte[5000];
        new Random(1).NextBytes(bytes);
        File.WriteAllBytes(noise, bytes);
        Refused(Program.Run("check", noise), ["noise.toml"]);
        Refused(Program.Run("check", folder.File("large.toml", new string('#', 10 << 20))), ["1 MiB"]);
        Refused(Program.Run("check", folder.File("deep.toml", "x = " + new string('[', 1000) + new string(']', 1000))), ["nested"]);
    }

    [Fact]
    public void The_output_folder_keeps_its_old_content_whole_when_the_input_is_wrong()
    {
        using var folder = new TemporaryFolder();
        var output = Directory.CreateDirectory(Path.Combine(folder.Path, "out", "notebooks")).Parent!.FullName;
        string[] old = ["index.html", "results.json", "machine.toml", "notebooks/a.html"];
        foreach (var name in old) File.WriteAllText(Path.Combine(output, name), "old");
        var before = Hashes(output);
        var file = folder.File("mine.toml", DemoMachines.Boatyard("poles = 4", "poles = 0"));
        Refused(Program.Study("--machine", file, "--out", output), ["motor.poles"]);
        Assert.Equal(before, Hashes(output));
    }

    [Fact]
    public void A_star_motor_on_a_single_phase_inverter_is_computed_and_the_warning_comes_first()
    {
        using var folder = new TemporaryFolder();
        var text = DemoMachines.Boatyard("connection = \"delta\"", "connection = \"star\"");
        var ended = Program.Study("--machine", folder.File("mine.toml", text), "--out", Path.Combine(folder.Path, "out"));
        Assert.Equal(0, ended.ExitCode);
        Assert.StartsWith("First: The motor gets too few volts", ended.Output, StringComparison.Ordinal);
        // A third of the torque: star in place of delta; common practice, no source. The link's sag takes a little more.
        Assert.Contains("0.30 of its torque", ended.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_connection_that_overfluxes_the_motor_is_refused_with_the_reason()
    {
        using var folder = new TemporaryFolder();
        var text = DemoMachines.Boatyard("voltage = \"230 V\"\nfrequency = \"50 Hz\"\nphases = 1", "voltage = \"400 V\"\nfrequency = \"50 Hz\"\nphases = 3")
            .Replace("base_voltage = \"230 V\"", "base_voltage = \"400 V\"", StringComparison.Ordinal);
        Refused(Program.Run("check", folder.File("mine.toml", text)), ["motor.connection", "saturates", "star"]);
    }

    [Theory]
    [InlineData("walk")]
    [InlineData("run", "--nonsense")]
    [InlineData("run", "--seed", "minus one")]
    public void A_wrong_command_line_has_its_own_exit_code(params string[] arguments)
    {
        var ended = Program.Run(arguments);
        Assert.Equal(64, ended.ExitCode);
        Assert.DoesNotContain("   at ", ended.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_has_its_own_exit_code()
    {
        using var folder = new TemporaryFolder();
        var ended = Program.Study("--out", Path.Combine(folder.File("a-file", ""), "out"));
        Assert.Equal(3, ended.ExitCode);
        Assert.Contains("Cannot write", ended.Errors, StringComparison.Ordinal);
    }

    private static void Refused(Ended ended, string[] told)
    {
        Assert.Equal(2, ended.ExitCode);
        Assert.All(told, words => Assert.Contains(words, ended.Errors, StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", ended.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", ended.Errors, StringComparison.Ordinal);
        Assert.True(ended.Took < Patience, $"took {ended.Took}");
    }

    private static string Hashes(string folder) => string.Join('\n', Directory
        .EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .Select(file => $"{file} {Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))}"));
}
