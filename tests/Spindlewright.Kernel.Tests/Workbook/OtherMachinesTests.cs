using Spindlewright.Kernel.Tests.Commands;

namespace Spindlewright.Kernel.Tests.Workbook;

public class OtherMachinesTests
{
    [Theory]
    [InlineData("school-workshop")]
    [InlineData("measured-six-pole-bench")]
    public void The_whole_workbook_runs_to_its_end_on_every_demo_machine(string machine)
    {
        using var folder = new TemporaryFolder();
        var ended = Commands.Program.Run(
            "run", "--content", Repository.Root, "--machine", Repository.File($"data/machines/{machine}.toml"), "--out",
            Path.Combine(folder.Path, "out"));
        Assert.True(ended.ExitCode == 0, ended.Errors);
    }
}
