using Spindlewright.Foundations.Tables;
using Spindlewright.Kernel.Showing;
using Spindlewright.Machines;
using Spindlewright.Machines.Text;

namespace Spindlewright.Kernel.Commands;

/// <summary>The machine that a command works on: a file of the user's, or the boatyard bench that comes with us.</summary>
/// <param name="Name">Name without a path.</param>
/// <param name="Bytes">The file's content.</param>
/// <param name="Reading">The machine, or its faults.</param>
internal sealed record MachineInput(string Name, byte[] Bytes, MachineReading Reading)
{
    private const string DemoName = $"{Workbook.DemoMachine}.toml";

    /// <summary>Reads the machine.</summary>
    /// <param name="path">The file; null for the demo.</param>
    /// <param name="handbook">Tables.</param>
    internal static MachineInput Read(string? path, Handbook handbook)
    {
        var bytes = path is null ? Workbook.DemoBytes() : FileBytes(path);
        var reading = bytes is null
            ? MachineFile.ReadFile(path!, handbook)
            : MachineFile.Read(bytes, path ?? DemoName, handbook);
        return new(path is null ? DemoName : Path.GetFileName(path), bytes ?? [], reading);
    }

    /// <summary>Says every fault on the error stream.</summary>
    internal void Complain(Voice voice)
    {
        foreach (var line in Reading.Faults.Lines()) voice.Complain(line);
    }

    /// <summary>The bytes, so that what is hashed is what was read; null where the file is too large or cannot be read.</summary>
    private static byte[]? FileBytes(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists && file.Length <= MachineTextReader.MostBytes ? File.ReadAllBytes(path) : null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }
}
