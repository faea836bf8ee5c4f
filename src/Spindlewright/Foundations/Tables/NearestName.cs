namespace Spindlewright.Foundations.Tables;

/// <summary>Finds the known name that a mistyped one most likely meant.</summary>
public static class NearestName
{
    /// <summary>The known name with the fewest edits from a given one.</summary>
    /// <param name="given">The name that is not known.</param>
    /// <param name="known">The known names.</param>
    /// <returns>The nearest; null where none is nearer than half the letters of the longer name.</returns>
    public static string? To(string given, IEnumerable<string> known)
    {
        string? best = null;
        var fewest = int.MaxValue;
        foreach (var name in known)
        {
            var edits = Edits(given.ToUpperInvariant(), name.ToUpperInvariant());
            if (edits >= fewest || edits * 2 > Math.Max(given.Length, name.Length)) continue;
            (best, fewest) = (name, edits);
        }
        return best;
    }

    /// <summary>A clause that suggests the nearest name, or lists the known ones where none is near.</summary>
    /// <param name="given">The name that is not known.</param>
    /// <param name="known">The known names, shown in their order.</param>
    /// <returns>Such as "did you mean 'brass'?" or "known: brass, bronze".</returns>
    public static string Suggest(string given, IReadOnlyCollection<string> known)
    {
        const int most = 12;
        if (To(given, known) is { } near) return $"did you mean '{near}'?";
        var rest = known.Count > most ? $" and {known.Count - most} more" : "";
        return $"known: {string.Join(", ", known.Take(most))}{rest}";
    }

    /// <summary>Levenshtein's distance: letters to insert, delete or replace to turn one word into the other.</summary>
    private static int Edits(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replace = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replace, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.Length];
    }
}
