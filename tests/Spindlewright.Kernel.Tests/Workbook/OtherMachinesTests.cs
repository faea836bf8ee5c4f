using System.Text;
using Spindlewright.Kernel.Report;
using Spindlewright.Kernel.Tests.Commands;

namespace Spindlewright.Kernel.Tests.Workbook;

public class OtherMachinesTests
{
    [Theory]
    [InlineData("school-workshop")]
    [InlineData("measured-six-pole-bench")]
    public async Task The_whole_workbook_runs_to_its_end_on_every_demo_machine_approves_nothing_and_keeps_the_bound(string machine)
    {
        using var folder = new TemporaryFolder();
        var text = DemoMachines.Text(machine);
        folder.File("machine.toml", text);
        var results = await WarmRun.OfAsync(WorkbookRuns.Workbook, folder.Path);
        Assert.All(results, result => Assert.Null(result.Fault));
        var title = text.Split('\n').First(line => line.StartsWith("title", StringComparison.Ordinal)).Split('"')[1];
        var pages = WorkbookFiles.Of(results).Pages;
        Assert.Equal(WorkbookRuns.Workbook.Count, pages.Length);
        var held = pages.Sum(page =>
        {
            var html = Encoding.UTF8.GetString([.. page.Bytes]);
            Assert.Contains(title, html, StringComparison.Ordinal);
            return ReadersWords.HoldOnPage(page.Name, html);
        });
        Assert.True(held >= 50, $"{held} pieces with a modelled torque");
    }
}
