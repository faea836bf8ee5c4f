using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Spindlewright.Foundations;

namespace Spindlewright.Machines.Text;

/// <summary>A section of a text that was read, with typed access to the keys that its declaration names.</summary>
/// <remarks>
/// Values were read and their faults collected before; access has no side effect save that <see cref="Sided{T}"/>
/// notes which defaults stand in for the user's own figures.
/// </remarks>
public sealed class Section
{
    private readonly MachineText _text;
    private readonly TableNode _table;
    private readonly Dictionary<string, object> _values = new(StringComparer.Ordinal);
    private readonly List<Section> _sections = [];
    private bool _faulty;

    internal Section(MachineText text, SectionSpec spec, Section? parent, TableNode table, int number = 0)
    {
        (_text, Spec, _table) = (text, spec, table);
        SpecPath = spec.PathIn(parent?.SpecPath ?? "");
        Path = spec.PathIn(parent?.Path ?? "");
        if (number > 0) Path = string.Create(CultureInfo.InvariantCulture, $"{Path}[{number}]");
    }

    /// <summary>Its declaration.</summary>
    public SectionSpec Spec { get; }

    /// <summary>Its path, such as "motor" or "belt[2]"; empty for the text as a whole.</summary>
    public string Path { get; }

    /// <summary>Its path as headers write it, without numbers.</summary>
    internal string SpecPath { get; }

    /// <summary>Where its header stands.</summary>
    public TextPlace Place => _table.Place;

    /// <summary>True where no fault was found in it or in the sections within it.</summary>
    public bool IsSound => !_faulty && _sections.All(section => section.IsSound);

    /// <summary>True where the text gives the key, readable or not.</summary>
    /// <param name="key">One of the declared keys.</param>
    /// <returns>Whether it stands in the text.</returns>
    public bool Has(KeySpec key) => _table.Find(Declared(key).Name) is not null;

    /// <summary>The value of a key; null where it is left out or could not be read.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="key">One of the declared keys.</param>
    /// <returns>The value.</returns>
    public T? Get<T>(KeySpec<T> key) where T : struct => TryGet(key, out var value) ? value : null;

    /// <summary>The text of a key; null where it is left out or could not be read.</summary>
    /// <param name="key">One of the declared keys.</param>
    /// <returns>The text.</returns>
    public string? Get(KeySpec<string> key) => TryGet(key, out var value) ? value : null;

    /// <summary>The values of a key; null where it is left out or could not be read.</summary>
    /// <typeparam name="T">The type of each.</typeparam>
    /// <param name="key">One of the declared keys.</param>
    /// <returns>The values.</returns>
    public IReadOnlyList<T>? Get<T>(KeySpec<IReadOnlyList<T>> key) => TryGet(key, out var value) ? value : null;

    /// <summary>Asks for the value of a key.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="key">One of the declared keys.</param>
    /// <param name="value">The value.</param>
    /// <returns>True where the text gives it and it could be read.</returns>
    public bool TryGet<T>(KeySpec<T> key, [NotNullWhen(true)] out T? value)
        where T : notnull
    {
        var found = _values.TryGetValue(Declared(key).Name, out var boxed);
        value = found ? (T)boxed! : default;
        return found;
    }

    /// <summary>The user's figure on both sides, or the declared default, which is noted as used.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="key">One of the declared keys that have a default.</param>
    /// <returns>The pair with its provenance.</returns>
    /// <exception cref="InvalidOperationException">The key has no default.</exception>
    public Sourced<Sided<T>> Sided<T>(KeySpec<T> key) where T : notnull
    {
        if (TryGet(key, out var given)) return new(Foundations.Sided.Same(given), Provenance.Yours, "");
        if (key.Default is null) throw new InvalidOperationException($"The key {key.Name} has no default.");
        if (!Has(key)) _text.Note(new(PathOf(key), key.DefaultText!));
        return key.Default;
    }

    /// <summary>The section of a kind that may stand once; null where it is left out.</summary>
    /// <param name="spec">One of the declared sections.</param>
    /// <returns>The section.</returns>
    public Section? Only(SectionSpec spec) => _sections.Find(section => section.Spec == spec);

    /// <summary>The sections of a kind, in the order of the text.</summary>
    /// <param name="spec">One of the declared sections.</param>
    /// <returns>The sections; none where it is left out.</returns>
    public IReadOnlyList<Section> Each(SectionSpec spec) => [.. _sections.Where(section => section.Spec == spec)];

    /// <summary>Reports a fault that only the meaning of the values shows.</summary>
    /// <param name="key">The key to mend; null for the section as a whole.</param>
    /// <param name="message">What is wrong, one clause.</param>
    /// <param name="accepted">What is accepted; may be empty.</param>
    public void Fault(KeySpec? key, string message, string accepted = "")
    {
        _faulty = true;
        var entry = key is null ? null : _table.Find(key.Name);
        var path = key is null ? Path : PathOf(key);
        _text.Faults.Add(entry?.Value.Place ?? Place, path, entry?.Value.Described ?? "", accepted, message);
    }

    /// <summary>Makes a part, turning its refusal into a fault at the key that holds the refused quantity.</summary>
    /// <typeparam name="T">The part.</typeparam>
    /// <param name="make">Makes it from values of this section; called only while the section is sound.</param>
    /// <returns>The part; null where the section has faults.</returns>
    public T? Make<T>(Func<T> make) where T : class
    {
        ArgumentNullException.ThrowIfNull(make);
        if (!IsSound) return null;
        try
        {
            return make();
        }
        catch (PartException refusal)
        {
            Fault(refusal);
            return null;
        }
    }

    internal void Keep(KeySpec key, object? value)
    {
        if (value is null) _faulty = true;
        else _values[key.Name] = value;
    }

    internal void Keep(Section section) => _sections.Add(section);

    internal void MarkFaulty() => _faulty = true;

    private void Fault(PartException refusal)
    {
        var key = Spec.Keys.FirstOrDefault(
            spec => string.Equals(spec.Quantity, refusal.Quantity, StringComparison.OrdinalIgnoreCase));
        var why = refusal.Why.Length == 0 ? "" : $" ({refusal.Why})";
        var whose = key is not null && !Has(key) ? ", which is no figure of yours but follows from others" : "";
        Fault(key, $"{refusal.Part}: {refusal.Quantity} is {refusal.Found}{whose}{why}", refusal.Accepted);
    }

    private string PathOf(KeySpec key) => Path.Length == 0 ? key.Name : $"{Path}.{key.Name}";

    private KeySpec Declared(KeySpec key) => Spec.Keys.Contains(key) ? key
        : throw new InvalidOperationException($"The key {key.Name} is not declared in the section {Spec.Name}.");
}
