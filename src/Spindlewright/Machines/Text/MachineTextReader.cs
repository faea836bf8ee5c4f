using System.Text;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Spindlewright.Machines.Text;

/// <summary>Reads a TOML text against declared sections and collects every fault with its place.</summary>
/// <remarks>
/// Never throws on what the text holds. Refuses more than <see cref="MostBytes"/> before parsing. A text that is no TOML
/// gives its syntax faults (the first of each line) and the faults of the values on its sound lines; missing, unknown
/// and doubled keys are looked for once the syntax is clean, and the list says so.
/// </remarks>
public static class MachineTextReader
{
    /// <summary>Most bytes of a text: 1 MiB.</summary>
    public const int MostBytes = 1 << 20;

    /// <summary>Most lines of a text. Keeps the answer to noise within a second.</summary>
    public const int MostLines = 10_000;

    private const string NotLookedFurther =
        "the lines behind the open quote, and missing, unknown and doubled keys, are looked at once it is closed";

    private const string NotLookedFor =
        "missing, unknown and doubled keys are looked for once these lines are mended";

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file as its user named it.</param>
    /// <param name="spec">The declared sections.</param>
    /// <returns>What was read, with its faults.</returns>
    public static MachineText ReadFile(string path, SectionSpec spec)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            if (Directory.Exists(path)) return Refused(path, spec, "this is a folder; a file is wanted");
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            var bytes = new byte[MostBytes + 1];
            var count = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return Read(bytes.AsMemory(0, count), path, spec);
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refused(path, spec, "there is no such file");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException
            or NotSupportedException)
        {
            return Refused(path, spec, "the file cannot be opened for reading");
        }
    }

    /// <summary>Reads the bytes of a file.</summary>
    /// <param name="bytes">UTF-8, with or without a byte order mark.</param>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="spec">The declared sections.</param>
    /// <returns>What was read, with its faults.</returns>
    public static MachineText Read(ReadOnlyMemory<byte> bytes, string file, SectionSpec spec)
    {
        if (bytes.Length > MostBytes)
            return Refused(file, spec, "the file has more than 1 MiB; a machine file has a few pages");
        var span = bytes.Span;
        if (span.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || span.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Refused(file, spec, "the file is UTF-16; save it as UTF-8");
        if (span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) span = span[3..];
        return Utf8Check.FirstFault(span) is { } fault
            ? Refused(file, spec, fault.Message, fault.Place)
            : Parse(Encoding.UTF8.GetString(span), file, spec);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="spec">The declared sections.</param>
    /// <returns>What was read, with its faults.</returns>
    public static MachineText Read(string text, string file, SectionSpec spec)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Read(Encoding.UTF8.GetBytes(text), file, spec);
    }

    private static MachineText Parse(string text, string file, SectionSpec spec)
    {
        if (text.AsSpan().Count('\n') > MostLines)
            return Refused(file, spec, $"the file has more than {MostLines} lines; a machine file has a few pages");
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, file, validate: true);
        }
        catch (TomlException)
        {
            return Refused(file, spec, "brackets or braces are nested more than 64 deep");
        }
        catch (ArgumentException)
        {
            // Thrown while the parser words its own message about an escape that is no character.
            return Refused(file, spec, "a backslash stands before a character that it cannot escape; write \\\\ for one");
        }
        var (faults, broken) = SyntaxFaults.Of(document, text);
        var clean = faults.All(fault => fault.IsDoubled);
        var table = TomlTree.Build(document, text, broken);
        var read = new MachineText(file, spec, table, clean);
        foreach (var fault in faults) read.Faults.Add(fault.Place, "", fault.Found, fault.Accepted, fault.Message);
        if (faults.Count > 0) read.Root.MarkFaulty();
        if (!clean) read.Faults.Remark = broken.From == int.MaxValue ? NotLookedFor : NotLookedFurther;
        SpecCheck.Fill(read, table);
        return read;
    }

    private static MachineText Refused(string file, SectionSpec spec, string message, TextPlace place = default)
    {
        var read = new MachineText(file, spec, new TableNode(TextPlace.WholeFile), syntaxIsClean: false);
        read.Root.MarkFaulty();
        read.Faults.Add(place, "", "", "", message);
        return read;
    }
}
