using System.Text.Json.Nodes;

namespace Spindlewright.Jupyter.Tests;

/// <summary>The workbook, executed by Jupyter's own converter on the installed kernel.</summary>
public sealed class NotebookTests(JupyterFolder jupyter) : IClassFixture<JupyterFolder>
{
    [Fact]
    public async Task Every_notebook_runs_and_gives_what_the_workbooks_own_runner_gave()
    {
        var python = Installed.Python();
        var notebooks = Directory.GetFiles(Repository.File("notebooks"), "*.ipynb").Order(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(notebooks);
        var target = Path.Combine(jupyter.Path, "executed");
        // The converter takes one notebook after the other; two of them keep two cores busy.
        var converted = await Task.WhenAll(notebooks.Index().GroupBy(each => each.Index % 2, each => each.Item).Select(half => Task.Run(() => Installed.Run(
            python, ["-m", "nbconvert", "--to", "notebook", "--execute", "--output-dir", target, .. half], jupyter.Path))));
        Assert.All(converted, ended => Assert.True(ended.ExitCode == 0, ended.Errors));
        foreach (var notebook in notebooks)
            Assert.Equal(Outputs(notebook), Outputs(Path.Combine(target, Path.GetFileName(notebook))));
    }

    /// <summary>What each code cell wrote and showed, in words; pictures as the count of their bytes.</summary>
    private static List<string> Outputs(string file)
    {
        var cells = JsonNode.Parse(File.ReadAllText(file))!["cells"]!.AsArray();
        return
        [
            .. cells.Where(cell => cell!["cell_type"]!.GetValue<string>() == "code").Select((cell, index) =>
                $"{index + 1}: {string.Join('|', cell!["outputs"]!.AsArray().Select(output => Told(output!)))}"),
        ];
    }

    private static string Told(JsonNode output) =>
        output["output_type"]!.GetValue<string>() == "stream"
            ? Text(output["text"]!)
            : string.Join(' ', output["data"]!.AsObject().OrderBy(each => each.Key, StringComparer.Ordinal)
                .Where(each => each.Key != "text/html")
                .Select(each => each.Key == "text/plain" ? Text(each.Value!) : $"{each.Key} {Text(each.Value!).Length}"));

    private static string Text(JsonNode node) =>
        node is JsonArray lines ? string.Concat(lines.Select(line => line!.GetValue<string>())) : node.GetValue<string>();
}
