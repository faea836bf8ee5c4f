namespace Spindlewright.Notebooks.Format;

/// <summary>Writes whole files: under a temporary name, flushed to the disk, then moved into place.</summary>
/// <remarks>
/// Whoever looks, at whatever moment the program ends, finds the complete old file or the complete new one. The
/// temporary name is fixed, so that what an interrupted run left behind is overwritten by the next.
/// </remarks>
public static class AtomicFile
{
    /// <summary>Writes a file, with the folders above it where they are missing.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">Its whole content.</param>
    /// <exception cref="IOException">The file cannot be written; the old one is untouched.</exception>
    /// <exception cref="UnauthorizedAccessException">Writing there is not permitted; the old one is untouched.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var full = Path.GetFullPath(path);
        var folder = Path.GetDirectoryName(full)!;
        Directory.CreateDirectory(folder);
        var temporary = Path.Combine(folder, $".{Path.GetFileName(full)}.part");
        using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
        {
            stream.Write(bytes);
            stream.Flush(flushToDisk: true);
        }

        File.Move(temporary, full, overwrite: true);
    }
}
