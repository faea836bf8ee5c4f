using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace Spindlewright.Kernel.Printing;

/// <summary>Prints pages to PDF by a Chromium that is present on the machine.</summary>
/// <param name="program">The browser's program.</param>
internal sealed class PagePrinter(string program)
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "chrome"];
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>The printer of the first Chromium on the search path; null where there is none.</summary>
    /// <param name="searchPath">Folders as PATH writes them.</param>
    internal static PagePrinter? Find(string? searchPath)
    {
        var folders = (searchPath ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        var ending = OperatingSystem.IsWindows() ? ".exe" : "";
        var found = Names.SelectMany(name => folders.Select(folder => Path.Combine(folder, name + ending))).FirstOrDefault(File.Exists);
        return found is null ? null : new(found);
    }

    /// <summary>Prints a page at the size that it asks for.</summary>
    /// <param name="html">The page; it needs nothing beside it.</param>
    /// <param name="cancellation">Ends the browser.</param>
    /// <returns>The PDF.</returns>
    /// <exception cref="IOException">The browser does not start, takes too long or prints nothing.</exception>
    internal async Task<byte[]> PrintAsync(string html, CancellationToken cancellation)
    {
        // A folder of its own: nothing of the user's browser is read or left behind.
        var folder = Directory.CreateTempSubdirectory("spindlewright-print-");
        try
        {
            var (page, pdf) = (Path.Combine(folder.FullName, "sheet.html"), Path.Combine(folder.FullName, "sheet.pdf"));
            await File.WriteAllTextAsync(page, html, new UTF8Encoding(false), cancellation).ConfigureAwait(false);
            var said = await RunAsync(page, pdf, folder.FullName, cancellation).ConfigureAwait(false);
            return File.Exists(pdf)
                ? await File.ReadAllBytesAsync(pdf, cancellation).ConfigureAwait(false)
                : throw new IOException($"{program} printed nothing: {LastLine(said)}");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private async Task<string> RunAsync(string page, string pdf, string folder, CancellationToken cancellation)
    {
        using var limited = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limited.CancelAfter(Patience);
        using var process = Started(page, pdf, folder);
        try
        {
            var (words, rest) = (process.StandardError.ReadToEndAsync(limited.Token), process.StandardOutput.ReadToEndAsync(limited.Token));
            await process.WaitForExitAsync(limited.Token).ConfigureAwait(false);
            await rest.ConfigureAwait(false);
            return await words.ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync(CancellationToken.None).ConfigureAwait(false);
            cancellation.ThrowIfCancellationRequested();
            throw new IOException(FormattableString.Invariant($"{program} took longer than {Patience.TotalSeconds:0} s to print a sheet"));
        }
    }

    private Process Started(string page, string pdf, string folder)
    {
        var start = new ProcessStartInfo(program)
        {
            RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false,
            ArgumentList =
            {
                "--headless", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-sync", "--disable-extensions",
                $"--user-data-dir={Path.Combine(folder, "profile")}", "--no-pdf-header-footer", $"--print-to-pdf={pdf}",
            },
        };
        // Chromium refuses its own sandbox to the superuser; the page is ours and holds no script.
        if (Environment.IsPrivilegedProcess && !OperatingSystem.IsWindows()) start.ArgumentList.Add("--no-sandbox");
        start.ArgumentList.Add(new Uri(page).AbsoluteUri);
        try
        {
            return Process.Start(start) ?? throw new IOException($"{program} does not start");
        }
        catch (Win32Exception error)
        {
            throw new IOException($"{program} does not start: {error.Message}", error);
        }
    }

    private static string LastLine(string text) =>
        text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "it said nothing";
}
