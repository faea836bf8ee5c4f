namespace Spindlewright.TestSupport;

/// <summary>The checkout that the tests run from.</summary>
internal static class Repository
{
    /// <summary>The nearest folder above the test binary that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The full path of a file of the checkout.</summary>
    public static string File(string relativePath) => Path.Combine(Root, relativePath);

    /// <summary>
    /// Holds that a committed page equals what is generated; writes it instead where SPINDLEWRIGHT_WRITE_DOCS is set.
    /// </summary>
    public static void PageIsCurrent(string relativePath, string generated)
    {
        var path = Path.Combine(Root, relativePath);
        if (Environment.GetEnvironmentVariable("SPINDLEWRIGHT_WRITE_DOCS") is { Length: > 0 })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            System.IO.File.WriteAllText(path, generated);
        }
        Assert.True(System.IO.File.Exists(path), $"{relativePath} is missing: run the tests with SPINDLEWRIGHT_WRITE_DOCS=1");
        Assert.Equal(generated, System.IO.File.ReadAllText(path));
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "Spindlewright.slnx")))
                return folder.FullName;
        throw new DirectoryNotFoundException("No folder above the tests holds Spindlewright.slnx.");
    }
}
