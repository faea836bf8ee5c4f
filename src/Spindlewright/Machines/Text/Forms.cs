using Spindlewright.Foundations.Reading;

namespace Spindlewright.Machines.Text;

/// <summary>The forms in which values are written.</summary>
public static class Forms
{
    /// <summary>true or false.</summary>
    public static ValueForm<bool> TrueOrFalse { get; } = new TrueOrFalseForm();

    /// <summary>A value with its unit, in quotes; a plain number where the kind takes one.</summary>
    /// <typeparam name="T">The quantity's type.</typeparam>
    /// <param name="kind">Its kind.</param>
    /// <returns>The form.</returns>
    public static ValueForm<T> Quantity<T>(QuantityKind<T> kind) where T : struct => new QuantityForm<T>(kind);

    /// <summary>A whole number without quotes.</summary>
    /// <param name="least">The least accepted.</param>
    /// <param name="most">The most accepted.</param>
    /// <returns>The form.</returns>
    public static ValueForm<int> WholeNumber(int least, int most) => new WholeNumberForm(least, most);

    /// <summary>A line of text in quotes.</summary>
    /// <param name="longest">Most characters.</param>
    /// <returns>The form.</returns>
    public static ValueForm<string> Text(int longest = 200) => new TextForm(longest);

    /// <summary>One of a few words, in quotes.</summary>
    /// <typeparam name="T">What the words stand for.</typeparam>
    /// <param name="words">Each word with its meaning.</param>
    /// <returns>The form.</returns>
    public static ValueForm<T> Choice<T>(params (string Word, T Value)[] words) where T : notnull =>
        new ChoiceForm<T>(words);

    /// <summary>Several values in square brackets.</summary>
    /// <typeparam name="T">The type of each.</typeparam>
    /// <param name="each">The form of each.</param>
    /// <param name="least">Fewest values.</param>
    /// <param name="most">Most values.</param>
    /// <returns>The form.</returns>
    public static ValueForm<IReadOnlyList<T>> List<T>(ValueForm<T> each, int least, int most) where T : notnull =>
        new ListForm<T>(each, least, most);
}
