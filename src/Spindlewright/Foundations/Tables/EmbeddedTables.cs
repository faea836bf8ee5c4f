namespace Spindlewright.Foundations.Tables;

/// <summary>The library's own copies of the files in <c>data/</c>, so that it needs no folder beside it.</summary>
public static class EmbeddedTables
{
    /// <summary>The text of one file.</summary>
    /// <param name="file">Name as in the repository, such as "data/kienzle.csv".</param>
    /// <returns>The whole text.</returns>
    /// <exception cref="TableException">No such file is embedded.</exception>
    public static string Read(string file)
    {
        var assembly = typeof(EmbeddedTables).Assembly;
        using var stream = assembly.GetManifestResourceStream(file)
            ?? throw new TableException(
                file, 0, "",
                $"no such file in the library; {NearestName.Suggest(file, assembly.GetManifestResourceNames())}");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
