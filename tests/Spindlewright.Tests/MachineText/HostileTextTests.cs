using System.Diagnostics;
using System.Text;
using CsCheck;
using Spindlewright.Machines.Text;

namespace Spindlewright.Tests.MachineText;

/// <summary>Texts that are broken, hostile or no text at all.</summary>
public class HostileTextTests
{
    // Catches a reader that hangs or goes with the square of the length, not a slow machine: unloaded these take 0.7 to 1.3 s.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x5B, 0x00 }, "UTF-16")]
    [InlineData(new byte[] { 0xFE, 0xFF, 0x00, 0x5B }, "UTF-16")]
    public void Another_encoding_is_named(byte[] bytes, string says) =>
        Assert.Contains(says, OnlyLine(bytes), StringComparison.Ordinal);

    [Fact]
    public void A_byte_that_is_no_utf8_is_told_with_its_place()
    {
        byte[] bytes = [.. "[motor]\nr = \"é"u8, 0xE9, .. "\"\n"u8];
        Assert.Equal("bench.toml:2:7: the byte 0xE9 is no UTF-8; save the file as UTF-8", OnlyLine(bytes));
    }

    [Theory]
    [InlineData("a=")]
    [InlineData("a={b=")]
    public void A_thousand_brackets_deep_is_told(string opening)
    {
        var text = opening[..2] + string.Concat(Enumerable.Repeat(opening.Length == 2 ? "[" : "{b=", 1000));
        Assert.Contains("nested more than 64 deep", Quickly(text).Faults.Lines().First(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_name_of_a_thousand_parts_is_told_and_does_not_overflow()
    {
        var read = Quickly($"title = \"b\"\n[{string.Join('.', Enumerable.Repeat("a", 1000))}]\nb = 1\n");
        Assert.Contains(read.Faults.InOrder, fault => fault.Key == "a");
    }

    [Fact]
    public void More_than_a_mebibyte_is_refused_before_parsing()
    {
        var watch = Stopwatch.StartNew();
        var line = OnlyLine(Encoding.UTF8.GetBytes(new string('=', 10_000_000)));
        Assert.Contains("more than 1 MiB", line, StringComparison.Ordinal);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(1), $"took {watch.Elapsed}");
    }

    [Fact]
    public void A_mebibyte_to_the_byte_is_read()
    {
        var text = BenchSpec.Sound + "#" + new string('x', MachineTextReader.MostBytes - BenchSpec.Sound.Length - 1);
        Assert.Empty(BenchSpec.Read(text).Faults.Lines());
        Assert.NotEmpty(BenchSpec.Read(text + "x").Faults.Lines());
    }

    public static TheoryData<string, string> Noise => new()
    {
        { "equals signs", new string('=', 200_000) },
        { "equals signs to the limit", new string('=', MachineTextReader.MostBytes) },
        { "brackets", new string('[', 1_000_000) },
        { "bare words", Repeated("a\n", 9_999) },
        { "more bare words", Repeated("a\n", 500_000) },
        { "quotes", new string('"', 1_000_000) },
        { "the same key", Repeated("k=1\n", 9_999) },
        { "the same section", Repeated("[[belt]]\n", 9_999) },
        { "unknown keys", string.Concat(Enumerable.Range(0, 9_999).Select(i => $"k{i}=1\n")) },
        { "one long list", "k=[" + Repeated("1,", 400_000) + "]" },
        { "NUL", new string('\0', 1_000_000) },
        { "one long line", "title = " + new string('a', 1_000_000) },
    };

    [Theory]
    [MemberData(nameof(Noise))]
    public void Noise_is_answered_within_a_person_s_patience(string what, string text)
    {
        Assert.NotEmpty(what);
        var read = Quickly(text);
        var lines = read.Faults.Lines().ToList();
        Assert.InRange(lines.Count, 1, FaultList.MostShown + 2);
        Assert.All(lines, line => Assert.True(line.Length < 1000, line));
    }

    [Fact]
    public void A_missing_file_a_folder_and_a_big_file_are_told()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var missing = Path.Combine(folder.FullName, "none.toml");
            Assert.Contains("there is no such file", Assert.Single(
                MachineTextReader.ReadFile(missing, BenchSpec.Root).Faults.Lines()), StringComparison.Ordinal);
            Assert.Contains("this is a folder", Assert.Single(
                MachineTextReader.ReadFile(folder.FullName, BenchSpec.Root).Faults.Lines()), StringComparison.Ordinal);
            var big = Path.Combine(folder.FullName, "big.toml");
            File.WriteAllBytes(big, new byte[10_000_000]);
            Assert.Contains("more than 1 MiB", Assert.Single(
                MachineTextReader.ReadFile(big, BenchSpec.Root).Faults.Lines()), StringComparison.Ordinal);
            File.WriteAllText(big, BenchSpec.Sound);
            Assert.Empty(MachineTextReader.ReadFile(big, BenchSpec.Root).Faults.Lines());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Random_bytes_give_faults_and_never_crash() =>
        Gen.Byte.Array[0, 300].Sample(
            bytes => IsAnswered(MachineTextReader.Read(bytes, "bench.toml", BenchSpec.Root)), iter: 10_000, threads: 1);

    [Fact]
    public void A_sound_text_with_random_edits_gives_faults_and_never_crashes()
    {
        var pieces = "[ ] [[ ]] { } = \" ' \"\"\" ''' , . # \n \r \t \0 \\ \\u é 😀 - 0x 1e nan motor belt steps 1979-05-27 : \uFEFF"
            .Split(' ');
        var edits = Gen.Select(
            Gen.Int[0, BenchSpec.Sound.Length - 1], Gen.Int[0, 12], Gen.Int[0, pieces.Length - 1], Gen.Bool).Array[1, 6];
        edits.Sample(list =>
        {
            var text = BenchSpec.Sound;
            foreach (var (at, length, piece, isCopy) in list)
            {
                var from = Math.Min(at, text.Length);
                var cut = Math.Min(length, text.Length - from);
                text = text[..from] + (isCopy ? string.Concat(Enumerable.Repeat(text[from..(from + cut)], 2)) : pieces[piece])
                    + text[(from + cut)..];
            }
            return IsAnswered(BenchSpec.Read(text));
        }, iter: 15_000, threads: 1);
    }

    /// <summary>Every fault is one printable line, and a text without faults gives its required parts.</summary>
    private static bool IsAnswered(Spindlewright.Machines.Text.MachineText read) =>
        read.Faults.Lines().All(line => line.Length is > 0 and < 1000 && !line.Any(char.IsControl))
        && (read.Faults.Count > 0 || read.Root.Only(BenchSpec.Motor)?.Get(BenchSpec.RatedPower) is not null)
        && read.Root.IsSound == (read.Faults.Count == 0);

    private static Spindlewright.Machines.Text.MachineText Quickly(string text)
    {
        var watch = Stopwatch.StartNew();
        var read = BenchSpec.Read(text);
        Assert.True(watch.Elapsed < Patience, $"took {watch.Elapsed}");
        return read;
    }

    private static string OnlyLine(byte[] bytes) =>
        Assert.Single(MachineTextReader.Read(bytes, "bench.toml", BenchSpec.Root).Faults.Lines());

    private static string Repeated(string text, int times) => new StringBuilder().Insert(0, text, times).ToString();
}
