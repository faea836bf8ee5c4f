using Spindlewright.Foundations;

namespace Spindlewright.Machines.Text;

/// <summary>A key that a section may hold: the one declaration that reader, reference page and template share.</summary>
/// <param name="Name">The key: lower-case words joined by underscores.</param>
/// <param name="Meaning">What it is, one sentence without the full stop.</param>
/// <param name="Example">A value as it stands in a file, quotes included.</param>
public abstract record KeySpec(string Name, string Meaning, string Example)
{
    /// <summary>True where the section cannot do without it.</summary>
    public bool Required { get; init; }

    /// <summary>True where a template shows it ready to be filled in, although it may be left out.</summary>
    public bool ShownInTemplate { get; init; }

    /// <summary>What holds where it is left out, in words; empty for required keys and plain options.</summary>
    public string DefaultInWords { get; init; } = "";

    /// <summary>The name that a part's error uses for it; the key with spaces unless said otherwise.</summary>
    public string Quantity { get; init; } = Name.Replace('_', ' ');

    /// <summary>How its value is written.</summary>
    public abstract ValueForm AnyForm { get; }

    /// <summary>The default as text for both sides with its provenance; null where there is none.</summary>
    public abstract DefaultText? DefaultText { get; }
}

/// <summary>A default as it is shown: the value for each side and where it came from.</summary>
/// <param name="Capability">Serves "will it drill".</param>
/// <param name="Hazard">Serves "what could a hand meet".</param>
/// <param name="Provenance">How it reached us.</param>
/// <param name="Source">Key into <c>data/references.json</c>; may be empty.</param>
/// <param name="Note">What the reader must know; may be empty.</param>
public sealed record DefaultText(string Capability, string Hazard, Provenance Provenance, string Source, string Note);

/// <summary>A key whose value is of one type.</summary>
/// <typeparam name="T">The value's type.</typeparam>
/// <param name="Name">The key.</param>
/// <param name="Form">How its value is written.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Example">A value as it stands in a file.</param>
public sealed record KeySpec<T>(string Name, ValueForm<T> Form, string Meaning, string Example)
    : KeySpec(Name, Meaning, Example)
    where T : notnull
{
    /// <summary>The pair that holds where the key is left out; null where there is none.</summary>
    public Sourced<Sided<T>>? Default { get; init; }

    /// <inheritdoc/>
    public override ValueForm AnyForm => Form;

    /// <inheritdoc/>
    public override DefaultText? DefaultText => Default is null ? null : new(
        Form.Write(Default.Value.Capability), Form.Write(Default.Value.Hazard),
        Default.Provenance, Default.Source, Default.Note);
}

/// <summary>Ways to declare a key.</summary>
public static class Key
{
    /// <summary>A key that the section cannot do without.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="name">The key.</param>
    /// <param name="form">How its value is written.</param>
    /// <param name="meaning">What it is.</param>
    /// <param name="example">A value as it stands in a file.</param>
    /// <returns>The declaration.</returns>
    public static KeySpec<T> Required<T>(string name, ValueForm<T> form, string meaning, string example)
        where T : notnull => new(name, form, meaning, example) { Required = true };

    /// <summary>A key that may be left out.</summary>
    /// <inheritdoc cref="Required{T}(string, ValueForm{T}, string, string)"/>
    public static KeySpec<T> Optional<T>(
        string name, ValueForm<T> form, string meaning, string example, string defaultInWords = "")
        where T : notnull => new(name, form, meaning, example) { DefaultInWords = defaultInWords };

    /// <summary>A key with a default: a pair of values with their provenance.</summary>
    /// <typeparam name="T">The value's type.</typeparam>
    /// <param name="name">The key.</param>
    /// <param name="form">How its value is written.</param>
    /// <param name="meaning">What it is.</param>
    /// <param name="example">A value as it stands in a file.</param>
    /// <param name="fallback">The pair that holds where the key is left out.</param>
    /// <returns>The declaration.</returns>
    public static KeySpec<T> WithDefault<T>(
        string name, ValueForm<T> form, string meaning, string example, Sourced<Sided<T>> fallback)
        where T : notnull => new(name, form, meaning, example) { Default = fallback };
}
