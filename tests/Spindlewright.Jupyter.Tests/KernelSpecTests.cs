using System.Text.Json.Nodes;

namespace Spindlewright.Jupyter.Tests;

/// <summary>The kernel's folder is written, found and removed.</summary>
public sealed class KernelSpecTests(JupyterFolder jupyter) : IClassFixture<JupyterFolder>
{
    private static readonly string[] Files = ["kernel.js", "kernel.json", "plotly.min.js", "plotly.min.js.LICENSE.txt"];

    [Fact]
    public void The_folder_holds_all_that_figures_need_without_a_network()
    {
        Assert.Equal(Files, Names(jupyter.Kernel));
        var spec = JsonNode.Parse(File.ReadAllText(Path.Combine(jupyter.Kernel, "kernel.json")))!;
        Assert.Equal("message", spec["interrupt_mode"]!.GetValue<string>());
        Assert.Equal("{connection_file}", spec["argv"]!.AsArray()[^1]!.GetValue<string>());
        Assert.True(File.Exists(spec["argv"]![0]!.GetValue<string>()));
        Assert.Contains("MIT", File.ReadAllText(Path.Combine(jupyter.Kernel, "plotly.min.js.LICENSE.txt")));
        var script = File.ReadAllText(Path.Combine(jupyter.Kernel, "kernel.js"));
        Assert.DoesNotContain("/*CSS*/", script);
        Assert.DoesNotContain("/*UPGRADE*/", script);
        Assert.DoesNotContain("http", script);
    }

    [Fact]
    public void The_kernel_goes_below_the_folder_that_is_named_and_is_removed_again()
    {
        var prefix = Path.Combine(jupyter.Path, "prefix");
        var folder = Path.Combine(prefix, "share", "jupyter", "kernels", "spindlewright");
        Assert.Equal(0, Installed.RunProgram(jupyter.Path, "jupyter", "install", "--prefix", prefix).ExitCode);
        Assert.Equal(0, Installed.RunProgram(jupyter.Path, "jupyter", "install", "--prefix", prefix).ExitCode);
        Assert.Equal(Files, Names(folder));
        Assert.Equal(0, Installed.RunProgram(jupyter.Path, "jupyter", "uninstall", "--prefix", prefix).ExitCode);
        Assert.False(Directory.Exists(folder));
        var again = Installed.RunProgram(jupyter.Path, "jupyter", "uninstall", "--prefix", prefix);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("nothing was removed", again.Errors);
    }

    [Fact]
    public void Removing_leaves_what_somebody_else_put_there()
    {
        var prefix = Path.Combine(jupyter.Path, "shared");
        var folder = Path.Combine(prefix, "share", "jupyter", "kernels", "spindlewright");
        Installed.RunProgram(jupyter.Path, "jupyter", "install", "--prefix", prefix);
        File.WriteAllText(Path.Combine(folder, "notes.txt"), "mine");
        Assert.Equal(0, Installed.RunProgram(jupyter.Path, "jupyter", "uninstall", "--prefix", prefix).ExitCode);
        Assert.Equal(["notes.txt"], Names(folder));
    }

    [Theory]
    [InlineData(64, "one can stand at a time", "--user", "--sys-prefix")]
    [InlineData(2, "No Python environment is active", "--sys-prefix")]
    [InlineData(3, "Cannot change", "--prefix", "/proc")]
    public void What_cannot_be_done_is_said(int exitCode, string reason, params string[] options)
    {
        var ended = Installed.RunProgram(jupyter.Path, ["jupyter", "install", .. options]);
        Assert.Equal(exitCode, ended.ExitCode);
        Assert.Contains(reason, ended.Errors);
    }

    private static IEnumerable<string?> Names(string folder) =>
        Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal);
}
