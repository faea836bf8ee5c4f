namespace Spindlewright.Tests.Tables;

/// <summary>Files of the repository that the tests hold against each other.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string[] DataFiles { get; } =
        [.. Directory.GetFiles(Path.Combine(Root, "data"), "*.csv").Order(StringComparer.Ordinal)];

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    // The build maps source paths away, so the folder of the test's binaries is the start, not the source file.
    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Spindlewright.slnx")))
                return folder.FullName;
        throw new InvalidOperationException($"no Spindlewright.slnx above {AppContext.BaseDirectory}");
    }
}
