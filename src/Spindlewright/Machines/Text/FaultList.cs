using System.Globalization;
using Spindlewright.Foundations.Reading;

namespace Spindlewright.Machines.Text;

/// <summary>All faults of one text, in the order of the text.</summary>
/// <remarks>Keeps the first <see cref="MostKept"/> and counts the rest, so that noise costs no memory.</remarks>
public sealed class FaultList
{
    /// <summary>Most faults shown to a person at once.</summary>
    public const int MostShown = 20;

    /// <summary>Most faults kept.</summary>
    public const int MostKept = 1000;

    private readonly List<TextFault> _faults = [];

    /// <summary>Makes an empty list.</summary>
    /// <param name="file">The file as its user named it.</param>
    public FaultList(string file) => File = Printable.Of(file);

    /// <summary>The file as its user named it, made printable.</summary>
    public string File { get; }

    /// <summary>How many faults there are, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>The faults kept, in the order of the text.</summary>
    public IReadOnlyList<TextFault> InOrder =>
        [.. _faults.OrderBy(fault => fault.Line).ThenBy(fault => fault.Column)];

    /// <summary>A remark that follows the faults, such as what has not been looked at yet; may be empty.</summary>
    public string Remark { get; internal set; } = "";

    /// <summary>Adds a fault.</summary>
    /// <param name="place">Where.</param>
    /// <param name="key">Path of the key; may be empty.</param>
    /// <param name="found">What stands there; made printable here.</param>
    /// <param name="accepted">What is accepted.</param>
    /// <param name="message">What is wrong.</param>
    public void Add(TextPlace place, string key, string found, string accepted, string message)
    {
        Count++;
        if (_faults.Count < MostKept)
            _faults.Add(new(File, place.Line, place.Column, key, Printable.Of(found), accepted, message));
    }

    /// <summary>The lines to show: at most <see cref="MostShown"/> faults, then how many more, then the remark.</summary>
    /// <returns>Lines without line ends.</returns>
    public IEnumerable<string> Lines()
    {
        foreach (var fault in InOrder.Take(MostShown)) yield return fault.ToString();
        if (Count > MostShown)
            yield return string.Create(CultureInfo.InvariantCulture, $"{File}: and {Count - MostShown} more");
        if (Remark.Length > 0) yield return $"{File}: {Remark}";
    }
}
