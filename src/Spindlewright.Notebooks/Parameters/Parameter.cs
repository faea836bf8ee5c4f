namespace Spindlewright.Notebooks.Parameters;

/// <summary>What a parameter holds.</summary>
public enum ParameterKind
{
    /// <summary>A number with a decimal point.</summary>
    Number,

    /// <summary>A whole number.</summary>
    WholeNumber,

    /// <summary>True or false.</summary>
    TrueOrFalse,

    /// <summary>Text.</summary>
    Text,

    /// <summary>A quantity with a unit.</summary>
    Quantity,

    /// <summary>Something else, which cannot be set from outside.</summary>
    Other,
}

/// <summary>One declaration in a notebook's parameters cell.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Type">Its C# type as written, or as its value shows; the quantity's type for a quantity, if known.</param>
/// <param name="Start">Where its value begins in the cell's text, UTF-16 units.</param>
/// <param name="Value">Its value as written.</param>
/// <param name="Example">The quantity as text, where the value is read from text such as <c>Read("0.75 kW")</c>.</param>
public sealed record Parameter(
    string Name, ParameterKind Kind, string Type, int Start, string Value, string? Example = null)
{
    /// <summary>Says what the parameter holds, for people.</summary>
    /// <returns>Such as <c>boost (a number)</c>.</returns>
    public string Describe() => $"{Name} ({Accepted()})";

    internal string Accepted() => Kind switch
    {
        ParameterKind.Number => "a number such as 1.5",
        ParameterKind.WholeNumber => "a whole number such as 3",
        ParameterKind.TrueOrFalse => "true or false",
        ParameterKind.Text => "text",
        ParameterKind.Quantity when Example is not null => $"a quantity with its unit such as {Example}",
        ParameterKind.Quantity => $"{Type} with its unit",
        _ => "cannot be set from outside",
    };
}

/// <summary>A value given from outside for a parameter.</summary>
/// <param name="Name">The parameter's name.</param>
/// <param name="Text">The value as typed.</param>
public sealed record ParameterSetting(string Name, string Text)
{
    /// <summary>Reads <c>name=value</c>.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The setting.</returns>
    /// <exception cref="ParameterException">There is no name or no equals sign.</exception>
    public static ParameterSetting Parse(string text)
    {
        var at = text.IndexOf('=');
        var name = at < 0 ? "" : text[..at].Trim();
        if (name.Length == 0 || !(char.IsLetter(name[0]) || name[0] == '_') || !name.All(c => char.IsLetterOrDigit(c) || c == '_'))
            throw new ParameterException([$"\"{text}\" sets nothing; accepted: NAME=VALUE, such as boost=2.5."]);
        return new ParameterSetting(name, text[(at + 1)..].Trim());
    }
}

/// <summary>Raised when parameters cannot be set as asked; all faults at once.</summary>
/// <param name="faults">The faults, a sentence each.</param>
public sealed class ParameterException(IReadOnlyList<string> faults) : Exception(string.Join('\n', faults))
{
    /// <summary>The faults, a sentence each.</summary>
    public IReadOnlyList<string> Faults { get; } = faults;
}

/// <summary>Reads quantities with units as people type them; the program binds it to the library's own reader.</summary>
public interface IQuantityReader
{
    /// <summary>Reads a quantity.</summary>
    /// <param name="quantity">The C# type, such as <c>Power</c>; null when the notebook does not say.</param>
    /// <param name="example">The quantity that stands in the notebook as text; null when it stands there as code.</param>
    /// <param name="text">What was typed.</param>
    /// <returns>The quantity as a C# expression, or what is accepted.</returns>
    QuantityReading Read(string? quantity, string? example, string text);
}

/// <summary>What came of reading a quantity.</summary>
/// <param name="Expression">A C# expression of the same type; null when the text was refused.</param>
/// <param name="Fault">Why it was refused and what is accepted, a clause; null when it was read.</param>
public sealed record QuantityReading(string? Expression, string? Fault)
{
    /// <summary>The text was read.</summary>
    /// <param name="expression">A C# expression, such as <c>UnitsNet.Power.FromKilowatts(1.1)</c>.</param>
    /// <returns>The reading.</returns>
    public static QuantityReading As(string expression) => new(expression, null);

    /// <summary>The text was refused.</summary>
    /// <param name="fault">Why, and what is accepted.</param>
    /// <returns>The reading.</returns>
    public static QuantityReading Refused(string fault) => new(null, fault);
}
