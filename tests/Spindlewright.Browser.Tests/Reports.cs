using Spindlewright.Kernel.Tests.Commands;

namespace Spindlewright.Browser.Tests;

/// <summary>Reports of the demo machines and of a hostile machine file, made once by running the program.</summary>
public sealed class Reports : IDisposable
{
    public const string Boatyard = "boatyard-fittings-bench";
    public const string School = "school-workshop";
    public const string SixPole = "measured-six-pole-bench";

    private readonly TemporaryFolder folder = new();
    private readonly Dictionary<string, Lazy<string>> made = [];

    public Reports()
    {
        foreach (var machine in new[] { Boatyard, School, SixPole })
            made[machine] = new(() => Run(machine, Repository.File($"data/machines/{machine}.toml")));
        made[HostileMachine.Name] = new(() => Run(
            HostileMachine.Name, folder.File("hostile.toml", HostileMachine.Text())));
    }

    public static TheoryData<string> Machines => [Boatyard, School, SixPole];

    /// <summary>The folder that the program wrote for a machine.</summary>
    public string Folder(string machine) => made[machine].Value;

    public string Index(string machine) => Path.Combine(Folder(machine), "index.html");

    public void Dispose() => folder.Dispose();

    private string Run(string machine, string file)
    {
        var output = Path.Combine(folder.Path, machine);
        Directory.CreateDirectory(Path.Combine(folder.Path, "notebooks"));
        // A content folder without notebooks: the report is looked at here, not the workbook.
        var ended = Program.Run("run", "--machine", file, "--out", output, "--content", folder.Path);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        return output;
    }
}
