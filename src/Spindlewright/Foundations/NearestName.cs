namespace Spindlewright.Foundations;

/// <summary>Finds the known name that a mistyped one was probably meant to be.</summary>
/// <remarks>
/// Optimal string alignment (Damerau–Levenshtein with adjacent transpositions, no substring edited twice), letter case
/// ignored first. A name is near when at most one edit in three letters separates them, and one for names of one to
/// three letters.
/// </remarks>
public static class NearestName
{
    private const int LongestCompared = 64;

    /// <summary>The nearest of the known names.</summary>
    /// <param name="typed">What stands in the text.</param>
    /// <param name="known">The names that are accepted; the first wins a tie.</param>
    /// <returns>The nearest name; null where none is near.</returns>
    public static string? Of(string typed, IEnumerable<string> known)
    {
        if (typed.Length is 0 or > LongestCompared) return null;
        var allowed = Math.Max(1, typed.Length / 3);
        string? nearest = null;
        foreach (var name in known)
        {
            if (Math.Abs(name.Length - typed.Length) > allowed) continue;
            var distance = Distance(typed.ToUpperInvariant(), name.ToUpperInvariant());
            if (distance > allowed || distance >= Math.Max(name.Length, typed.Length)) continue;
            if (distance == 0) return name;
            (nearest, allowed) = (name, distance - 1);
        }
        return nearest;
    }

    /// <summary>A clause that suggests the nearest name, or lists the known ones where none is near.</summary>
    /// <param name="typed">The name that is not known.</param>
    /// <param name="known">The known names, shown in their order.</param>
    /// <returns>Such as "did you mean 'brass'?" or "known: brass, bronze".</returns>
    public static string Suggest(string typed, IReadOnlyCollection<string> known)
    {
        const int Most = 12;
        if (Of(typed, known) is { } near) return $"did you mean '{near}'?";
        var rest = known.Count > Most ? $" and {known.Count - Most} more" : "";
        return $"known: {string.Join(", ", known.Take(Most))}{rest}";
    }

    /// <summary>Edits (insert, delete, replace, swap neighbours) between two names.</summary>
    /// <param name="left">One name.</param>
    /// <param name="right">The other.</param>
    /// <returns>The number of edits, 0 for equal names.</returns>
    public static int Distance(string left, string right)
    {
        var (before, last, row) = (new int[right.Length + 1], new int[right.Length + 1], new int[right.Length + 1]);
        for (var j = 0; j <= right.Length; j++) last[j] = j;
        for (var i = 1; i <= left.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var replace = last[j - 1] + (left[i - 1] == right[j - 1] ? 0 : 1);
                row[j] = Math.Min(replace, Math.Min(last[j], row[j - 1]) + 1);
                var swapped = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
                if (swapped) row[j] = Math.Min(row[j], before[j - 2] + 1);
            }
            (before, last, row) = (last, row, before);
        }
        return last[right.Length];
    }
}
