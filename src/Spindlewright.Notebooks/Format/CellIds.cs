using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace Spindlewright.Notebooks.Format;

/// <summary>Identifiers of cells: which are valid, and one for each cell that has none.</summary>
/// <remarks>
/// A missing identifier is derived from the cell's kind and text, with a counter where two cells are alike, so that
/// reading the same notebook twice gives the same identifiers and moving a cell does not change its own.
/// </remarks>
internal static class CellIds
{
    internal const string Accepted = "1 to 64 letters, digits, \"-\" or \"_\"";

    internal static bool IsValid(string id) =>
        id.Length is >= 1 and <= 64 && id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_');

    internal static void GiveMissing(JsonArray cells)
    {
        var taken = cells.Select(cell => cell!["id"]?.GetValue<string>()).OfType<string>().ToHashSet();
        foreach (var cell in cells.Select(cell => cell!.AsObject()).Where(cell => !cell.ContainsKey("id")))
            cell["id"] = Derive(cell, taken);
    }

    private static string Derive(JsonObject cell, HashSet<string> taken)
    {
        var kind = cell["cell_type"]!.GetValue<string>();
        var digest = SHA256.HashData(Encoding.UTF8.GetBytes($"{kind}\n{MultilineText.Join(cell["source"])}"));
        var stem = Convert.ToHexStringLower(digest, 0, 6);
        var id = stem;
        for (var copy = 2; !taken.Add(id); copy++)
            id = string.Create(CultureInfo.InvariantCulture, $"{stem}-{copy}");
        return id;
    }
}
