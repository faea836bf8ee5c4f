namespace Spindlewright.Kernel.Commands;

/// <summary>Where notebooks and data lie: the nearest folder upwards that holds both, or the packed copy.</summary>
internal static class ContentRoot
{
    /// <summary>Finds it.</summary>
    /// <param name="from">Where to begin looking.</param>
    /// <returns>A folder that holds <c>notebooks/</c>.</returns>
    internal static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
            if (Holds(folder.FullName))
                return folder.FullName;
        return AppContext.BaseDirectory;
    }

    private static bool Holds(string folder) =>
        Directory.Exists(Path.Combine(folder, "notebooks")) && Directory.Exists(Path.Combine(folder, "data"));
}
