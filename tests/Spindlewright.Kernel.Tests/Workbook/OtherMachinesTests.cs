using Spindlewright.Kernel.Tests.Commands;

namespace Spindlewright.Kernel.Tests.Workbook;

public class OtherMachinesTests
{
    [Theory]
    [InlineData("school-workshop")]
    [InlineData("measured-six-pole-bench")]
    public void The_whole_workbook_runs_to_its_end_on_every_demo_machine_approves_nothing_and_keeps_the_bound(string machine)
    {
        using var folder = new TemporaryFolder();
        var output = Path.Combine(folder.Path, "out");
        var ended = Commands.Program.Run(
            "run", "--content", Repository.Root, "--machine", Repository.File($"data/machines/{machine}.toml"), "--out", output);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        ReadersWords.ApproveNothing("console", ended.Output);
        ReadersWords.KeepTheBound("console", ended.Output.Split('\n'));
        var pages = Directory.GetFiles(output, "*.html", SearchOption.AllDirectories);
        Assert.True(pages.Length > WorkbookRuns.Workbook.Count, "a page for each notebook and the report");
        Assert.All(pages, page => ReadersWords.HoldOnPage(Path.GetFileName(page), File.ReadAllText(page)));
    }
}
