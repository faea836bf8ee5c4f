using System.Diagnostics;

namespace Spindlewright.Jupyter.Tests;

/// <summary>What a run of a program left behind.</summary>
internal sealed record Ended(int ExitCode, string Output, string Errors);

/// <summary>The programs that the tests run, each in a process of its own.</summary>
internal static class Installed
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);
    private static readonly string[] Pythons = ["python3", "/usr/bin/python3"];
    private static readonly string[] Imports = ["-c", "import notebook, nbconvert, jupyter_kernel_test, ipykernel"];
    private static readonly string[] NotOfTheTest = ["VIRTUAL_ENV", "CONDA_PREFIX", "JUPYTER_PATH"];
    private static readonly Lazy<string?> PythonFound = new(FindPython);

    /// <summary>The program under test.</summary>
    public static string ProgramFile { get; } = Path.Combine(AppContext.BaseDirectory, "Spindlewright.Kernel.dll");

    /// <summary>The Python that has Jupyter's packages; skips the test where there is none.</summary>
    public static string Python()
    {
        Tool.Need("jupyter", PythonFound.Value is not null, "no Python that imports notebook, nbconvert and jupyter_kernel_test");
        return PythonFound.Value!;
    }

    public static Ended RunProgram(string jupyterData, params string[] arguments) =>
        Run("dotnet", [ProgramFile, .. arguments], jupyterData);

    /// <summary>Runs a program to its end, with Jupyter's own folders in a folder of the test.</summary>
    public static Ended Run(string program, IEnumerable<string> arguments, string jupyterData, string? directory = null)
    {
        using var process = Process.Start(Describe(program, arguments, jupyterData, directory))!;
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        Assert.True(process.WaitForExit(Patience), $"{program} did not end.");
        return new Ended(process.ExitCode, output.Result, errors.Result);
    }

    public static ProcessStartInfo Describe(
        string program, IEnumerable<string> arguments, string jupyterData, string? directory = null)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = directory ?? jupyterData,
        };
        start.Environment["JUPYTER_DATA_DIR"] = jupyterData;
        start.Environment["JUPYTER_CONFIG_DIR"] = Path.Combine(jupyterData, "config");
        start.Environment["JUPYTER_RUNTIME_DIR"] = Path.Combine(jupyterData, "runtime");
        start.Environment["IPYTHONDIR"] = Path.Combine(jupyterData, "ipython");
        foreach (var name in NotOfTheTest)
            start.Environment.Remove(name);
        return start;
    }

    private static string? FindPython() =>
        Pythons.FirstOrDefault(each =>
        {
            try
            {
                return Run(each, Imports, Path.GetTempPath()).ExitCode == 0;
            }
            catch (System.ComponentModel.Win32Exception)
            {
                return false;
            }
        });
}

/// <summary>A folder for Jupyter's data that goes with the test, in which the kernel is installed.</summary>
public sealed class JupyterFolder : IDisposable
{
    public JupyterFolder()
    {
        Path = Directory.CreateTempSubdirectory("spindlewright-jupyter-").FullName;
        Assert.Equal(0, Installed.RunProgram(Path, "jupyter", "install", "--user").ExitCode);
    }

    internal string Path { get; }

    internal string Kernel => System.IO.Path.Combine(Path, "kernels", "spindlewright");

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
