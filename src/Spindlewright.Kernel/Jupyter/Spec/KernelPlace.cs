namespace Spindlewright.Kernel.Jupyter.Spec;

/// <summary>Where Jupyter looks for kernels.</summary>
internal static class KernelPlace
{
    private static readonly string[] PythonRoots = ["VIRTUAL_ENV", "CONDA_PREFIX"];

    /// <summary>The folder of this kernel for one user.</summary>
    internal static string OfUser() => Folder(DataFolder());

    /// <summary>The folder of this kernel below the root of an installation.</summary>
    internal static string Below(string prefix) => Folder(Path.Combine(Path.GetFullPath(prefix), "share", "jupyter"));

    /// <summary>The folder of this kernel in the Python environment that is active; null when none is.</summary>
    internal static string? OfActivePython() =>
        PythonRoots.Select(Environment.GetEnvironmentVariable).FirstOrDefault(root => root is { Length: > 0 }) is { } root
            ? Below(root)
            : null;

    private static string Folder(string dataFolder) => Path.Combine(dataFolder, "kernels", KernelSpec.Name);

    /// <summary>Jupyter's own rule.</summary>
    private static string DataFolder()
    {
        if (Environment.GetEnvironmentVariable("JUPYTER_DATA_DIR") is { Length: > 0 } told)
            return told;
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        if (OperatingSystem.IsWindows())
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter");
        if (OperatingSystem.IsMacOS())
            return Path.Combine(home, "Library", "Jupyter");
        return Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } data
            ? Path.Combine(data, "jupyter")
            : Path.Combine(home, ".local", "share", "jupyter");
    }
}
