namespace Spindlewright.Jupyter.Tests;

/// <summary>The general suite for Jupyter kernels (Debian's python3-jupyter-kernel-test), with samples for every part it has.</summary>
public sealed class SuiteTests(JupyterFolder jupyter) : IClassFixture<JupyterFolder>
{
    [Fact]
    public void The_general_suite_passes_and_skips_no_part()
    {
        var suite = Path.Combine(AppContext.BaseDirectory, "kernel_suite.py");
        var ended = Installed.Run(Installed.Python(), [suite], jupyter.Path);
        Assert.True(ended.ExitCode == 0, ended.Errors);
        Assert.Contains("Ran 12 tests", ended.Errors);
        Assert.DoesNotContain("skipped", ended.Errors);
    }
}
