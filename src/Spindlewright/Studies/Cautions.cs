using System.Text;

namespace Spindlewright.Studies;

/// <summary>One section of the cautions.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Lines">Its points, one sentence or more each.</param>
public sealed record CautionSection(string Title, IReadOnlyList<string> Lines);

/// <summary>The cautions, from their one source: <c>docs/safety.md</c>, of which the library carries a copy.</summary>
public static class Cautions
{
    private const string Resource = "docs/safety.md";

    /// <summary>The page as it stands.</summary>
    public static string Page { get; } = Read();

    /// <summary>The paragraph at the head.</summary>
    public static string Opening { get; } = string.Join(
        " ", Page.Split('\n').Skip(1).SkipWhile(line => line.Length == 0).TakeWhile(line => line.Length > 0));

    /// <summary>The sections in order: before anything else, at the machine, what the figures mean.</summary>
    public static IReadOnlyList<CautionSection> Sections { get; } = [.. Page.Split("\n## ").Skip(1).Select(Section)];

    private static CautionSection Section(string text)
    {
        var lines = text.Split('\n');
        return new(lines[0].Trim(), [.. lines.Where(line => line.StartsWith("- ", StringComparison.Ordinal)).Select(line => line[2..].Trim())]);
    }

    private static string Read()
    {
        using var stream = typeof(Cautions).Assembly.GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"The library was built without {Resource}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
