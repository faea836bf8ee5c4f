namespace Spindlewright.Foundations;

/// <summary>Words on their way into a sentence.</summary>
public static class Words
{
    /// <summary>The words with a capital first letter.</summary>
    /// <param name="words">At least one letter.</param>
    public static string WithCapital(this string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}";
}
