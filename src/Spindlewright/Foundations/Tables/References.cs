using System.Text.Json;

namespace Spindlewright.Foundations.Tables;

/// <summary>How a work was read.</summary>
public enum HowRead
{
    /// <summary>A stored copy of the work itself.</summary>
    Seen,

    /// <summary>Somebody else's transcription of it.</summary>
    SecondHand,

    /// <summary>Recalled.</summary>
    FromMemory,

    /// <summary>Not a work: a fact of the trade or our own choice.</summary>
    NotApplicable,
}

/// <summary>One entry of the bibliography.</summary>
/// <param name="Key">Citation key: lower-case letters, digits, points and hyphens.</param>
/// <param name="Kind">Book, standard, law, paper, web page and the like.</param>
/// <param name="Author">Authors or issuing body; may be empty.</param>
/// <param name="Title">Title, or what the work is where its title is not known.</param>
/// <param name="Edition">Edition; may be empty.</param>
/// <param name="Year">Year; may be empty.</param>
/// <param name="Part">Example, table, section or page; may be empty.</param>
/// <param name="Licence">Licence of the data, or on what terms facts were taken; may be empty.</param>
/// <param name="Read">How it was read.</param>
/// <param name="ReadIn">Where it was read; may be empty.</param>
public sealed record Reference(
    string Key, string Kind, string Author, string Title, string Edition, string Year, string Part, string Licence,
    HowRead Read, string ReadIn)
{
    /// <summary>One line for a list of sources.</summary>
    /// <returns>Author, title, edition, year and part, as far as they are known.</returns>
    public override string ToString()
    {
        string[] parts = [Author, Title, Edition.Length > 0 ? $"{Edition} edition" : "", Year, Part];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }
}

/// <summary>The bibliography: every figure and formula cites one of its keys. Immutable.</summary>
public sealed class References
{
    private const string EmbeddedFile = "data/references.json";

    private static readonly string[] Fields =
        ["kind", "author", "title", "edition", "year", "part", "licence", "read", "read_in"];

    private readonly Dictionary<string, Reference> entries;

    private References(Dictionary<string, Reference> entries)
    {
        this.entries = entries;
        All = [.. entries.Values.OrderBy(entry => entry.Key, StringComparer.Ordinal)];
    }

    /// <summary>All entries, by key.</summary>
    public IReadOnlyList<Reference> All { get; }

    /// <summary>The entry of a key.</summary>
    /// <param name="key">Citation key.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="UnknownRowException">No such key; the message suggests the nearest.</exception>
    public Reference this[string key] =>
        entries.TryGetValue(key, out var entry) ? entry : throw new UnknownRowException("references", key, Keys);

    private string[] Keys => [.. All.Select(entry => entry.Key)];

    /// <summary>Whether a key is known.</summary>
    /// <param name="key">Citation key.</param>
    /// <returns>True where it is.</returns>
    public bool Contains(string key) => entries.ContainsKey(key);

    /// <summary>Reads the library's own bibliography.</summary>
    /// <returns>The bibliography.</returns>
    public static References FromEmbedded() => Parse(EmbeddedFile, EmbeddedTables.Read(EmbeddedFile));

    /// <summary>Reads a bibliography.</summary>
    /// <param name="file">File name for messages.</param>
    /// <param name="json">One object; each member is a citation key with its fields.</param>
    /// <returns>The bibliography.</returns>
    /// <exception cref="TableException">Not JSON, a field missing or unknown, or a key in a wrong form.</exception>
    public static References Parse(string file, string json)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
        }
        catch (JsonException error)
        {
            throw new TableException(file, (int)(error.LineNumber ?? 0) + 1, "", $"this is no JSON: {error.Message}");
        }
        using (document)
        {
            if (document.RootElement.ValueKind != JsonValueKind.Object)
                throw new TableException(file, 1, "", "expected one object with a member for each citation key");
            return new(document.RootElement.EnumerateObject().ToDictionary(
                member => member.Name, member => Entry(file, member), StringComparer.Ordinal));
        }
    }

    private static Reference Entry(string file, JsonProperty member)
    {
        var key = member.Name;
        if (key.Length == 0 || !key.All(IsAllowed))
            throw new TableException(
                file, 0, key, "a citation key has lower-case letters, digits, points and hyphens only");
        if (member.Value.ValueKind != JsonValueKind.Object)
            throw new TableException(file, 0, key, $"expected an object with {string.Join(", ", Fields)}");
        foreach (var field in member.Value.EnumerateObject())
            if (!Fields.Contains(field.Name))
                throw new TableException(
                    file, 0, key, $"unknown field '{field.Name}'; {NearestName.Suggest(field.Name, Fields)}");
        var texts = Fields.Select(field => Text(file, key, member.Value, field)).ToArray();
        if (texts[2].Length == 0) throw new TableException(file, 0, key, "the title is empty");
        return new(
            key, texts[0], texts[1], texts[2], texts[3], texts[4], texts[5], texts[6], HowReadOf(file, key, texts[7]),
            texts[8]);
    }

    private static bool IsAllowed(char letter) =>
        char.IsAsciiLetterLower(letter) || char.IsAsciiDigit(letter) || letter is '-' or '.';

    private static string Text(string file, string key, JsonElement entry, string field) =>
        entry.TryGetProperty(field, out var value) && value.ValueKind == JsonValueKind.String
            ? value.GetString()!
            : throw new TableException(file, 0, key, $"the field '{field}' is missing or no text");

    private static HowRead HowReadOf(string file, string key, string words) => words switch
    {
        "seen" => HowRead.Seen,
        "second hand" => HowRead.SecondHand,
        "from memory" => HowRead.FromMemory,
        "not applicable" => HowRead.NotApplicable,
        _ => throw new TableException(
            file, 0, key, $"'{words}' is no way of reading; accepted: seen, second hand, from memory, not applicable"),
    };
}
