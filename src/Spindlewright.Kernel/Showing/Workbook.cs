using System.Text;
using Spindlewright.Foundations.Tables;
using Spindlewright.Machines;

namespace Spindlewright.Kernel.Showing;

/// <summary>What the cells of the workbook start from; imported into every session.</summary>
public static class Workbook
{
    /// <summary>Name of the machine file that a run lays into the folder in which cells run.</summary>
    public const string MachineFileName = "machine.toml";

    /// <summary>Name of the machine that comes with this project and stands in where no file is given.</summary>
    public const string DemoMachine = "boatyard-fittings-bench";

    /// <summary>The machine of this run: the one in the current folder, or else the boatyard bench.</summary>
    /// <param name="handbook">Tables.</param>
    /// <returns>The machine.</returns>
    /// <exception cref="InvalidDataException">The machine file has faults; the message lists them.</exception>
    public static DrillPress ThisMachine(Handbook handbook)
    {
        var reading = File.Exists(MachineFileName)
            ? MachineFile.ReadFile(MachineFileName, handbook)
            : MachineFile.Read(DemoBytes(), $"{DemoMachine}.toml", handbook);
        return reading.Press ?? throw new InvalidDataException(string.Join('\n', reading.Faults.Lines()));
    }

    /// <summary>One of the machines that come with this project.</summary>
    /// <param name="name">Such as "school-workshop"; the file's name without its ending.</param>
    /// <param name="handbook">Tables.</param>
    /// <returns>The machine.</returns>
    /// <exception cref="TableException">No such machine; the message suggests the nearest.</exception>
    public static DrillPress Demo(string name, Handbook handbook) =>
        MachineFile.Read(DemoBytes(name), $"{name}.toml", handbook).Press!;

    /// <summary>Holds that a statement of the notebook is true, and says so; the notebook stops where it is not.</summary>
    /// <param name="condition">The statement.</param>
    /// <param name="statement">The same in words.</param>
    /// <exception cref="InvalidOperationException">It does not hold.</exception>
    public static void Hold(bool condition, string statement)
    {
        if (!condition) throw new InvalidOperationException($"Does not hold: {statement}");
        Console.WriteLine($"Holds: {statement}");
    }

    internal static byte[] DemoBytes(string name = DemoMachine) =>
        Encoding.UTF8.GetBytes(EmbeddedTables.Read($"data/machines/{name}.toml"));
}
